import type { CompiledGrammar } from "./compiledGrammar.ts";
import { determinise } from "./determinise.ts";
import type { WordGraph } from "./grammarTypes.ts";
import { minimise } from "./minimise.ts";

/**
 * The smallest deterministic word graph of the grammar's language. States are numbered in the order in which they
 * are first met from the start, words in alphabetical order: equal languages give equal graphs.
 */
export function toWordGraph(grammar: CompiledGrammar): WordGraph {
  const { arcs, isFinal } = minimise(determinise(grammar));
  const numbers = new Map([[0, 0]]);
  const order = [0];
  const numbered: { from: number; to: number; word: string }[] = [];
  for (let from = 0; from < order.length; from++) {
    for (const [word, target] of arcs[order[from] ?? 0] ?? []) {
      let to = numbers.get(target);
      if (to === undefined) {
        to = order.push(target) - 1;
        numbers.set(target, to);
      }
      numbered.push({ from, to, word: grammar.words[word] ?? "" });
    }
  }
  const finals = order.flatMap((old, i) => (isFinal[old] === true ? [i] : []));
  return { states: order.length, start: 0, finals, arcs: numbered };
}
