import type { CompiledGrammar } from "./compiledGrammar.ts";
import { createListNumbers } from "./listNumbers.ts";

/** A deterministic automaton with one start or several. */
export type Dfa = {
  readonly starts: readonly number[];
  /** Of each state: word, where it leads, the next word, where it leads …, in the alphabetical order of the words. */
  readonly arcs: readonly (readonly number[])[];
  readonly isFinal: readonly boolean[];
};

/**
 * Subset construction over the grammar's automaton, from each of these nodes; tags are dropped. The same nodes are
 * reached again and again, so the state of every set of nodes is remembered before silent arcs are followed from it.
 */
export function determinise(grammar: CompiledGrammar, startNodes: readonly number[]): Dfa {
  const { word, words, finalNode } = grammar;
  const alphabetical = words.map((_, i) => i).sort((a, b) => ((words[a] ?? "") < (words[b] ?? "") ? -1 : 1));
  const place = new Int32Array(words.length);
  alphabetical.forEach((number, i) => (place[number] = i));

  const close = createClosure(grammar);
  const closed = createListNumbers();
  const reached = createListNumbers();
  const stateOf: number[] = [];
  const subsets: (readonly number[])[] = [];
  /** The state of the nodes that are reached from these, sorted ones. */
  const numberOf = (nodes: readonly number[]): number => {
    const set = reached.numberOf(nodes);
    const known = stateOf[set];
    if (known !== undefined) return known;
    const subset = close(nodes);
    const state = closed.numberOf(subset);
    if (state === subsets.length) subsets.push(subset);
    stateOf[set] = state;
    return state;
  };

  const starts = startNodes.map((node) => numberOf([node]));
  const arcs: number[][] = [];
  const isFinal: boolean[] = [];
  const targets: number[][] = words.map(() => []);
  for (let state = 0; state < subsets.length; state++) {
    const subset = subsets[state]!;
    const spelt: number[] = [];
    for (const node of subset) {
      for (let a = word.start[node]!; a < word.start[node + 1]!; a++) {
        const nodes = targets[word.word[a]!]!;
        if (nodes.length === 0) spelt.push(word.word[a]!);
        if (!nodes.includes(word.to[a]!)) nodes.push(word.to[a]!);
      }
    }
    const own: number[] = [];
    for (const number of spelt.sort((a, b) => place[a]! - place[b]!)) {
      own.push(number, numberOf(targets[number]!.sort((a, b) => a - b)));
      targets[number] = [];
    }
    arcs.push(own);
    isFinal.push(subset.includes(finalNode));
  }
  return { starts, arcs, isFinal };
}

/** All nodes reached by silent arcs, sorted, without those that only pass silence on. */
function createClosure({ nodes, silent, word, finalNode }: CompiledGrammar) {
  const seenIn = new Int32Array(nodes);
  let round = 0;
  return (from: readonly number[]): readonly number[] => {
    round++;
    const waiting = [...from];
    const kept: number[] = [];
    for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
      if (seenIn[node] === round) continue;
      seenIn[node] = round;
      if (node === finalNode || word.start[node]! < word.start[node + 1]!) kept.push(node);
      for (let a = silent.start[node]!; a < silent.start[node + 1]!; a++) waiting.push(silent.to[a]!);
    }
    return kept.sort((a, b) => a - b);
  };
}
