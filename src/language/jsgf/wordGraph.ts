import type { CompiledGrammar } from "./compiledGrammar.ts";
import { determinise, type Dfa } from "./determinise.ts";
import type { WordGraph } from "./grammarTypes.ts";
import { minimise } from "./minimise.ts";

/**
 * The smallest deterministic word graph of the grammar's language. States are numbered in the order in which they
 * are first met from the start, words in alphabetical order: equal languages give equal graphs.
 */
export function toWordGraph(grammar: CompiledGrammar): WordGraph {
  return toWordGraphs([grammar])[0]!;
}

/** The same for grammars that were compiled together (compileRules), in little more than the time of the largest. */
export function toWordGraphs(grammars: readonly CompiledGrammar[]): readonly WordGraph[] {
  const [grammar] = grammars;
  if (grammar === undefined) return [];
  const smallest = minimise(
    determinise(
      grammar,
      grammars.map(({ startNode }) => startNode),
    ),
  );
  return smallest.starts.map((start) => graphFrom(start, smallest, grammar.words));
}

function graphFrom(start: number, { arcs, isFinal }: Dfa, words: readonly string[]): WordGraph {
  const numbers = new Map([[start, 0]]);
  const order = [start];
  const numbered: { from: number; to: number; word: string }[] = [];
  for (let from = 0; from < order.length; from++) {
    const own = arcs[order[from]!]!;
    for (let i = 0; i < own.length; i += 2) {
      const target = own[i + 1]!;
      let to = numbers.get(target);
      if (to === undefined) {
        to = order.push(target) - 1;
        numbers.set(target, to);
      }
      numbered.push({ from, to, word: words[own[i]!]! });
    }
  }
  const finals = order.flatMap((old, i) => (isFinal[old] === true ? [i] : []));
  return { states: order.length, start: 0, finals, arcs: numbered };
}
