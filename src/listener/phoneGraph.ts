import { fail, ok, type Result } from "../core/result.ts";
import type { GrammarError, GrammarPlace, WordGraph } from "../language/jsgf/grammarTypes.ts";
import type { Dictionary } from "./dictionary.ts";

/**
 * A word graph whose arcs are pronunciations. Arcs are sorted by the state they leave: those of state s are
 * `firstArc[s]` to one before `firstArc[s + 1]`; the phones of arc a are `firstPhone[a]` to one before
 * `firstPhone[a + 1]`. Plain data: it may cross to a worker.
 */
export type PhoneGraph = {
  readonly states: number;
  readonly start: number;
  readonly finals: Int32Array;
  readonly firstArc: Int32Array;
  readonly arcTo: Int32Array;
  /** Index into `words`. */
  readonly arcWord: Int32Array;
  readonly firstPhone: Int32Array;
  readonly phones: Uint8Array;
  readonly words: readonly string[];
};

/**
 * Spells every word of the graph with every pronunciation that the dictionary has.
 *
 * @param vocabulary the grammar's words with their places, from `vocabulary(grammar)`.
 * Errors: `unknown-word` at the first word without a pronunciation; the message names all of them.
 */
export function buildPhoneGraph(
  graph: WordGraph,
  dictionary: Dictionary,
  vocabulary: readonly { readonly word: string; readonly place: GrammarPlace }[],
): Result<PhoneGraph, GrammarError> {
  const missing = vocabulary.filter(({ word }) => !dictionary.has(word));
  const [first] = missing;
  if (first !== undefined) {
    const message = `no pronunciation in the dictionary for: ${missing.map(({ word }) => word).join(", ")}`;
    return fail({ code: "unknown-word", message, place: first.place });
  }

  const words = [...new Set(graph.arcs.map((arc) => arc.word))].sort();
  const spelt = new Map(words.map((word, number) => [word, { number, ways: dictionary.get(word) ?? [] }] as const));
  const firstArc = new Int32Array(graph.states + 1);
  const arcTo: number[] = [];
  const arcWord: number[] = [];
  const firstPhone = [0];
  const phones: number[] = [];
  for (const arc of [...graph.arcs].sort((a, b) => a.from - b.from)) {
    const { number, ways } = spelt.get(arc.word)!;
    for (const pronunciation of ways) {
      arcTo.push(arc.to);
      arcWord.push(number);
      for (const phone of pronunciation) phones.push(phone);
      firstPhone.push(phones.length);
    }
    firstArc[arc.from + 1]! += ways.length;
  }
  for (let state = 0; state < graph.states; state++) firstArc[state + 1]! += firstArc[state]!;
  return ok({
    states: graph.states,
    start: graph.start,
    finals: Int32Array.from(graph.finals),
    firstArc,
    arcTo: Int32Array.from(arcTo),
    arcWord: Int32Array.from(arcWord),
    firstPhone: Int32Array.from(firstPhone),
    phones: Uint8Array.from(phones),
    words,
  });
}
