import { describe, expect, it } from "vitest";
import { compileGrammar } from "../../../src/language/jsgf/compileGrammar.ts";
import { vocabulary } from "../../../src/language/jsgf/vocabulary.ts";
import { toWordGraph } from "../../../src/language/jsgf/wordGraph.ts";
import { parseDictionary } from "../../../src/listener/dictionary.ts";
import { buildPhoneGraph, type PhoneGraph } from "../../../src/listener/phoneGraph.ts";
import { PHONE_NUMBERS } from "../../../src/listener/phones.ts";
import { DICTIONARY_TEXT } from "../../phrases/caseGrammars.ts";
import { pairKey } from "./pairKey.ts";
import { phonesApart } from "./phoneDistance.ts";
import { rivalsFrom } from "./rivals.ts";

function graphOf(expansion: string): PhoneGraph {
  const grammar = compileGrammar(
    { g: `#JSGF V1.0; grammar g; public <top> = ${expansion};` },
    { grammar: "g", rule: "top" },
  );
  const dictionary = parseDictionary(DICTIONARY_TEXT);
  if (!grammar.ok || !dictionary.ok) throw new Error("no grammar");
  const graph = buildPhoneGraph(toWordGraph(grammar.value), dictionary.value, vocabulary(grammar.value));
  if (!graph.ok) throw new Error(graph.error.message);
  return graph.value;
}

const phones = (names: string): readonly number[] => names.split(" ").map((name) => PHONE_NUMBERS.get(name)!);

describe("phonesApart", () => {
  it("is nothing for equal sounds and the same both ways", () => {
    expect(phonesApart(phones("S IH K S"), phones("S IH K S"))).toBe(0);
    expect(phonesApart(phones("EY T"), phones("S IH K S"))).toBe(phonesApart(phones("S IH K S"), phones("EY T")));
  });

  it.each([
    ["R EY T", "W EY T", "R EY T", "G EY T"],
    ["F IH F T IY N", "F IH F T IY", "F IH F T IY N", "S IH K S T IY N"],
    ["N AY N", "F AY V", "N AY N", "T UW"],
    ["B EY", "P EY", "B EY", "S EY"],
  ])("%s is nearer to %s than %s to %s", (a, b, c, d) => {
    expect(phonesApart(phones(a), phones(b))).toBeLessThan(phonesApart(phones(c), phones(d)));
  });
});

describe("rivalsFrom", () => {
  const pairs = (expansion: string, budget: number): readonly string[] => {
    const graph = graphOf(expansion);
    return rivalsFrom(graph, graph.start, budget)
      .map(({ differ }) => pairKey(...differ))
      .sort();
  };

  it("finds words that sound alike in the same place", () => {
    expect(pairs("(fifteen | fifty | two) over", 0.7)).toEqual(["fifteen | fifty"]);
  });

  it("finds sequences of other lengths, and leaves out what both end with", () => {
    expect(pairs("age eight one | aged one | two", 0.7)).toEqual(["age eight | aged"]);
  });

  it("finds nothing further apart than the budget", () => {
    expect(pairs("(fifteen | fifty | two) over", 0.5)).toEqual([]);
  });

  it("prices a pair as the distance of its phones", () => {
    const graph = graphOf("rate | weight");
    const [found] = rivalsFrom(graph, graph.start, 1);
    expect(found?.cost).toBeCloseTo(phonesApart(phones("R EY T"), phones("W EY T")), 9);
  });
});
