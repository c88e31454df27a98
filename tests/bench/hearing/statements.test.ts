import { expect, it } from "vitest";
import { loadContext } from "../../../src/cli/loadContext.ts";
import { readGrammarSources } from "../../../src/cli/readGrammars.ts";
import { understand } from "../../../src/language/understand/understand.ts";
import { createRandom } from "../random.ts";
import { FAMILIES, familyOf } from "./families.ts";
import { makeStatements } from "./statements.ts";
import { isOutside, makeTalk, nearTheLanguage } from "./talkTexts.ts";
import { createGrammarWalk } from "./walkGrammar.ts";

const loaded = await loadContext({});
if (!loaded.ok) throw new Error(loaded.error);
const { grammars } = loaded.value;
const walk = createGrammarWalk(readGrammarSources(), "case");
const made = (seed: number) => makeStatements(loaded.value, walk, 60, createRandom(seed));

it("makes statements of every family, each with one meaning of its family", { timeout: 120_000 }, () => {
  const statements = made(1);
  expect(new Set(statements.map((s) => s.family))).toEqual(new Set(FAMILIES.map((f) => f.name)));
  for (const { words, state, family } of statements) {
    const meaning = understand(grammars.of(state), words.split(" "));
    expect([words, meaning.kind === "one" && familyOf(meaning.intent)]).toEqual([words, family]);
  }
});

it("makes the same statements from the same seed, and others from another", { timeout: 120_000 }, () => {
  const words = (seed: number) => made(seed).map((s) => s.words);
  const first = words(3);
  expect(words(3)).toEqual(first);
  expect(words(4)).not.toEqual(first);
});

it("makes talk that the language does not hold, each sentence once", () => {
  const isTalk = (words: string) => isOutside({ context: loaded.value }, words);
  const talk = makeTalk(300, isTalk, createRandom(1));
  expect(new Set(talk).size).toBe(300);
  for (const words of [...talk, ...nearTheLanguage(isTalk)]) expect([words, isTalk(words)]).toEqual([words, true]);
});
