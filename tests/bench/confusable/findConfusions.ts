import type { AppContext } from "../../../src/app/context.ts";
import { readGrammarSources } from "../../../src/cli/readGrammars.ts";
import { compileGrammar } from "../../../src/language/jsgf/compileGrammar.ts";
import { vocabulary } from "../../../src/language/jsgf/vocabulary.ts";
import { toWordGraph } from "../../../src/language/jsgf/wordGraph.ts";
import type { Dictionary } from "../../../src/listener/dictionary.ts";
import { buildPhoneGraph, type PhoneGraph } from "../../../src/listener/phoneGraph.ts";
import { pairKey } from "./pairKey.ts";
import { phonesApart } from "./phoneDistance.ts";
import { differentStates, surroundingsOf } from "./places.ts";
import { rivalsFrom, type Rivals } from "./rivals.ts";
import { slipOf, worseOf, type Slip } from "./slip.ts";

/** Of phone distance; a greater difference is not looked for. */
export const BUDGET = 0.9;
/** Places looked at for each pair: what a slip comes to depends on where it happens. */
const PLACES = 8;
/** Shorter words than this are measured as if they had so many phones. */
const MIN_PHONES = 3;

export type Confusion = {
  readonly pair: string;
  /** By the phone of the longer one. */
  readonly distance: number;
  /** Kinds of place in the language where both can be said. */
  readonly places: number;
  /** What hearing one for the other comes to, in the worst of the places looked at. */
  readonly worst: Slip;
  readonly example: string;
};

/** Pairs of different meaning anywhere in what can be said while a question waits, which is everything; nearest first. */
export function findConfusions(
  context: AppContext,
  dictionary: Dictionary,
  progress: (text: string) => void,
): readonly Confusion[] {
  const graph = phoneGraph(dictionary);
  const { before, after } = surroundingsOf(graph);
  const states = differentStates(graph);
  const byPair = new Map<string, Rivals[]>();
  for (const [i, state] of states.entries()) {
    if (i % 50 === 0) progress(`${i} of ${states.length} places`);
    for (const rivals of rivalsFrom(graph, state, BUDGET)) {
      const pair = pairKey(...rivals.differ);
      byPair.set(pair, [...(byPair.get(pair) ?? []), rivals]);
    }
  }
  progress(`${byPair.size} pairs`);
  const sentences = ({ ways, from, to }: Rivals): readonly string[] =>
    ways.map((way) => [...before(from), ...way, ...(to === undefined ? [] : after(to))].join(" "));
  const confusions = [...byPair].flatMap(([pair, rivals]): readonly Confusion[] => {
    const seen = rivals.slice(0, PLACES).map((r) => {
      const [one = "", other = ""] = sentences(r);
      return { slip: slipOf(context, one, other), example: `${one} / ${other}` };
    });
    const { slip: worst, example } = seen.reduce((a, b) => (worseOf(a.slip, b.slip) === a.slip ? a : b));
    const distance = perPhone(dictionary, pair);
    if (worst === "same" || worst === "nothing" || distance === undefined) return [];
    return [{ pair, distance, places: rivals.length, worst, example }];
  });
  return confusions.sort((a, b) => a.distance - b.distance);
}

function phoneGraph(dictionary: Dictionary): PhoneGraph {
  const grammar = compileGrammar(readGrammarSources(), { grammar: "case", rule: "asked" });
  if (!grammar.ok) throw new Error(grammar.error.message);
  const graph = buildPhoneGraph(toWordGraph(grammar.value), dictionary, vocabulary(grammar.value));
  if (!graph.ok) throw new Error(graph.error.message);
  return graph.value;
}

/** The least distance of any two of their pronunciations; nothing where a word has none. */
export function perPhone(dictionary: Dictionary, pair: string): number | undefined {
  const ways = (words: string): readonly (readonly number[])[] => {
    let all: readonly (readonly number[])[] = [[]];
    for (const word of words.split(" "))
      all = all.flatMap((start) => (dictionary.get(word) ?? []).map((way) => [...start, ...way]));
    return all;
  };
  const [one = "", other = ""] = pair.split(" | ");
  const distances = ways(one).flatMap((a) =>
    ways(other).map((b) => phonesApart(a, b) / Math.max(MIN_PHONES, a.length, b.length)),
  );
  return distances.length === 0 ? undefined : Math.min(...distances);
}
