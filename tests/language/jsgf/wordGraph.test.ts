import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compileGrammar, compileRules } from "../../../src/language/jsgf/compileGrammar.ts";
import type { WordGraph } from "../../../src/language/jsgf/grammarTypes.ts";
import { toWordGraph, toWordGraphs } from "../../../src/language/jsgf/wordGraph.ts";
import { grammarOf, madeExpansion, waysThrough, type Made } from "./randomGrammar.ts";

function graphOf(sources: Record<string, string>, grammar: string): WordGraph {
  const result = compileGrammar(sources, { grammar, rule: "top" });
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return toWordGraph(result.value);
}

const rules = (text: string): WordGraph => graphOf({ g: `#JSGF V1.0; grammar g; ${text}` }, "g");

function accepts(graph: WordGraph, words: readonly string[]): boolean {
  let state = graph.start;
  for (const word of words) {
    const arc = graph.arcs.find((a) => a.from === state && a.word === word);
    if (arc === undefined) return false;
    state = arc.to;
  }
  return graph.finals.includes(state);
}

describe("toWordGraph", () => {
  // Source: what the listener's reference graph builder (graph.py) prints for its two test grammars.
  it.each([
    { name: "num", states: 8, arcs: 140 },
    { name: "full", states: 196, arcs: 1705 },
  ])("$name.jsgf has $states states and $arcs arcs, as the reference has", ({ name, states, arcs }) => {
    const text = readFileSync(new URL(`../../listener/vectors/${name}.jsgf`, import.meta.url), "utf8");
    const graph = graphOf({ [name]: text }, name);
    expect([graph.states, graph.arcs.length]).toEqual([states, arcs]);
  });

  it("writes a small graph out in full", () => {
    expect(rules("public <top> = (one | two) {x} [ten];")).toEqual({
      states: 3,
      start: 0,
      finals: [1, 2],
      arcs: [
        { from: 0, to: 1, word: "one" },
        { from: 0, to: 1, word: "two" },
        { from: 1, to: 2, word: "ten" },
      ],
    });
  });

  it.each([
    ["(one | two) ten", "one ten | two ten"],
    ["one+", "one one*"],
    ["[one [two]]", "[one] | one two"],
    ["(one two)* one", "one (two one)*"],
  ])("gives %s and %s, one language, the same graph", (one, other) => {
    expect(rules(`public <top> = ${one};`)).toEqual(rules(`public <top> = ${other};`));
  });

  it("accepts exactly the sentences of the grammar, with one arc for a word at a state", () => {
    const words = fc.array(fc.constantFrom("one", "two", "ten"), { maxLength: 5 });
    const isIn = (made: Made, utterance: readonly string[]) =>
      waysThrough(made, utterance, 0).some((way) => way.to === utterance.length);
    fc.assert(
      fc.property(madeExpansion, fc.array(words, { minLength: 5, maxLength: 5 }), (made, utterances) => {
        const graph = graphOf(grammarOf(made), "made");
        for (const utterance of utterances) expect(accepts(graph, utterance)).toBe(isIn(made, utterance));
        const keys = graph.arcs.map((arc) => `${arc.from} ${arc.word}`);
        expect(new Set(keys).size).toBe(keys.length);
      }),
      { numRuns: 200 },
    );
  });

  it("gives grammars that were compiled together the graphs that each has alone", () => {
    fc.assert(
      fc.property(madeExpansion, madeExpansion, (one, other) => {
        const [first = "", second = ""] = [one, other].map((made) => grammarOf(made)["made"]?.split("= ")[1] ?? "");
        const both = `#JSGF V1.0; grammar g; public <a> = ${first} public <b> = ${second} public <c> = <a> | <b> ten;`;
        const together = compileRules({ g: both }, "g", ["a", "b", "c"]);
        if (!together.ok) throw new Error(JSON.stringify(together.error));
        const alone = ["a", "b", "c"].map((rule) => {
          const grammar = compileGrammar({ g: both }, { grammar: "g", rule });
          if (!grammar.ok) throw new Error(JSON.stringify(grammar.error));
          return toWordGraph(grammar.value);
        });
        expect(toWordGraphs(together.value)).toEqual(alone);
      }),
    );
  });

  it("has no two states with the same continuations", () => {
    fc.assert(
      fc.property(madeExpansion, (made) => {
        const graph = graphOf(grammarOf(made), "made");
        expect(distinguishable(graph)).toBe((graph.states * (graph.states - 1)) / 2);
      }),
      { numRuns: 100 },
    );
  });
});

/** Counts the pairs of states that some sentence tells apart: the table-filling method, independent of ours. */
function distinguishable(graph: WordGraph): number {
  const words = [...new Set(graph.arcs.map((arc) => arc.word))];
  const target = (state: number, word: string) => graph.arcs.find((a) => a.from === state && a.word === word)?.to ?? -1;
  const apart = new Set<string>();
  const key = (a: number, b: number) => (a < b ? `${a} ${b}` : `${b} ${a}`);
  const states = [-1, ...Array.from({ length: graph.states }, (_, i) => i)];
  const pairs = states.flatMap((a) => states.filter((b) => b > a).map((b) => [a, b] as const));
  for (const [a, b] of pairs) if (graph.finals.includes(a) !== graph.finals.includes(b)) apart.add(key(a, b));
  for (let before = -1; before !== apart.size;) {
    before = apart.size;
    for (const [a, b] of pairs) {
      if (words.some((word) => apart.has(key(target(a, word), target(b, word))))) apart.add(key(a, b));
    }
  }
  return pairs.filter(([a, b]) => a >= 0 && apart.has(key(a, b))).length;
}
