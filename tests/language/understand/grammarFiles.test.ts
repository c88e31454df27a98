import { describe, expect, it } from "vitest";
import { parseJsgf } from "../../../src/language/jsgf/parseJsgf.ts";
import type { Expansion } from "../../../src/language/jsgf/grammarTree.ts";
import { parseDictionary } from "../../../src/listener/dictionary.ts";
import { isKnownTag } from "../../../src/language/understand/tagValues.ts";
import { defaultProtocol } from "../../../src/protocol/defaultProtocol.ts";
import { compiled, DICTIONARY_TEXT, GRAMMAR_SOURCES } from "../../phrases/caseGrammars.ts";

type Found = { readonly words: readonly string[]; readonly tags: readonly string[] };

function found(expansion: Expansion): Found {
  switch (expansion.kind) {
    case "word":
      return { words: [expansion.word], tags: [] };
    case "rule":
      return { words: [], tags: [] };
    case "sequence":
      return joined(expansion.parts.map(found));
    case "choice":
      return joined(expansion.options.map(found));
    case "optional":
    case "repeat":
      return found(expansion.body);
    case "tagged":
      return joined([found(expansion.body), { words: [], tags: expansion.tags }]);
  }
}

const joined = (all: readonly Found[]): Found => ({
  words: all.flatMap(({ words }) => words),
  tags: all.flatMap(({ tags }) => tags),
});

function fileContents(name: string): Found {
  const file = parseJsgf(GRAMMAR_SOURCES[name] ?? "", `${name}.jsgf`);
  if (!file.ok) throw new Error(JSON.stringify(file.error));
  return joined(file.value.rules.map(({ body }) => found(body)));
}

const names = Object.keys(GRAMMAR_SOURCES);
const everything = joined(names.map(fileContents));

describe("grammar files", () => {
  it.each([
    ["case", "open"],
    ["case", "asked"],
    ["vitals", "statement"],
    ["control", "command"],
    ["preparation", "answer"],
    ["numbers", "number"],
    ["restart", "restart"],
    ["drugs", "drug"],
    ["drugs", "doseQuestion"],
    ["drugs", "whyQuestion"],
    ["talk", "talk"],
  ])("%s <%s> compiles", (grammar, rule) => {
    expect(() => compiled(grammar, rule)).not.toThrow();
  });

  it("use only tags that understanding reads", () => {
    expect(everything.tags.length).toBeGreaterThan(100);
    expect(everything.tags.filter((tag) => !isKnownTag(tag))).toEqual([]);
  });

  it("name every step of the preparation, and no step that the protocol does not have", () => {
    const idsOf = (groups: typeof defaultProtocol.groups) => groups.flatMap(({ steps }) => steps.map(({ id }) => id));
    const inGrammar = everything.tags.filter((tag) => tag.startsWith("step=")).map((tag) => tag.slice("step=".length));
    expect(inGrammar).toEqual(
      expect.arrayContaining(idsOf(defaultProtocol.groups.filter(({ phase }) => phase === "prepare"))),
    );
    expect(idsOf(defaultProtocol.groups)).toEqual(expect.arrayContaining(inGrammar));
  });

  it("name only groups and fluids of the protocol", () => {
    const idsOf = (name: string) =>
      everything.tags.filter((tag) => tag.startsWith(`${name}=`)).map((tag) => tag.slice(name.length + 1));
    expect(defaultProtocol.groups.map(({ id }) => id)).toEqual(expect.arrayContaining(idsOf("group")));
    expect(defaultProtocol.fluids.map(({ id }) => id).sort()).toEqual(idsOf("fluid").sort());
  });
});

describe("words.dict", () => {
  const lines = DICTIONARY_TEXT.split("\n").filter((line) => line !== "" && !line.startsWith("#"));

  it("reads as a dictionary", () => {
    expect(parseDictionary(DICTIONARY_TEXT)).toMatchObject({ ok: true });
  });

  it("pronounces every word of every grammar, and no other", () => {
    const pronounced = new Set(lines.map((line) => line.split(" ")[0]));
    expect([...pronounced].sort()).toEqual([...new Set(everything.words)].sort());
  });

  it("says nothing twice", () => {
    expect(lines.length).toBe(new Set(lines).size);
  });

  it("is sorted within its sections", () => {
    for (const section of DICTIONARY_TEXT.split(/\n\n/)) {
      const entries = section.split("\n").filter((line) => line !== "" && !line.startsWith("#"));
      expect(entries).toEqual([...entries].sort());
    }
  });
});
