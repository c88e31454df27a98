import type { PhoneGraph } from "./phoneGraph.ts";

/**
 * The words that may follow these in a grammar; none when the words lead out of it, or there are none.
 *
 * @param graph its arcs are deterministic by word, but for several pronunciations of one.
 */
export function wordsAfter(graph: PhoneGraph, words: string | undefined): ReadonlySet<string> {
  if (words === undefined) return new Set();
  let state: number | undefined = graph.start;
  for (const word of words.split(" ")) {
    if (state === undefined) return new Set();
    state = arcsOf(graph, state).find((arc) => arc.word === word)?.to;
  }
  return new Set(state === undefined ? [] : arcsOf(graph, state).map((arc) => arc.word));
}

function arcsOf({ firstArc, arcTo, arcWord, words }: PhoneGraph, state: number) {
  const arcs: { readonly word: string; readonly to: number }[] = [];
  for (let arc = firstArc[state]!; arc < firstArc[state + 1]!; arc++)
    arcs.push({ word: words[arcWord[arc]!]!, to: arcTo[arc]! });
  return arcs;
}
