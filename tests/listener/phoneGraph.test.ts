import { describe, expect, it } from "vitest";
import type { WordGraph } from "../../src/language/jsgf/grammarTypes.ts";
import { buildPhoneGraph } from "../../src/listener/phoneGraph.ts";
import { phoneGraphOf } from "./vectors.ts";

const GRAPH: WordGraph = {
  states: 3,
  start: 0,
  finals: [2],
  arcs: [
    { from: 0, to: 1, word: "two" },
    { from: 0, to: 2, word: "a" },
    { from: 1, to: 2, word: "two" },
  ],
};
const place = (line: number, column: number) => ({ file: "g.jsgf", line, column });
const VOCABULARY = [
  { word: "a", place: place(3, 5) },
  { word: "two", place: place(3, 9) },
];

describe("buildPhoneGraph", () => {
  it("lays out every pronunciation of every arc", () => {
    const dictionary = new Map([
      ["a", [[3], [13]]],
      ["two", [[31, 34]]],
    ]);
    expect(buildPhoneGraph(GRAPH, dictionary, VOCABULARY)).toEqual({
      ok: true,
      value: {
        states: 3,
        start: 0,
        finals: Int32Array.of(2),
        firstArc: Int32Array.of(0, 3, 4, 4),
        arcTo: Int32Array.of(1, 2, 2, 2),
        arcWord: Int32Array.of(1, 0, 0, 1),
        firstPhone: Int32Array.of(0, 2, 3, 4, 6),
        phones: Uint8Array.of(31, 34, 3, 13, 31, 34),
        words: ["a", "two"],
      },
    });
  });

  it("points at the first word without a pronunciation and names them all", () => {
    const result = buildPhoneGraph(GRAPH, new Map(), VOCABULARY);
    expect(result).toMatchObject({ ok: false, error: { code: "unknown-word", place: place(3, 5) } });
    expect(!result.ok && result.error.message).toContain("a, two");
  });

  // Source: what the listener's reference graph builder (graph.py) prints for its two test grammars.
  it.each([
    { name: "num", pronunciations: 166, phones: 740, words: 33 },
    { name: "full", pronunciations: 1979, phones: 8810, words: 221 },
  ])("agrees with the reference on $name.jsgf", ({ name, pronunciations, phones, words }) => {
    const graph = phoneGraphOf(name);
    expect([graph.arcTo.length, graph.phones.length, graph.words.length]).toEqual([pronunciations, phones, words]);
  });
});
