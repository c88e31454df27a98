import type { CompiledGrammar } from "./compiledGrammar.ts";

/** A deterministic automaton; state 0 is the start. Arcs of each state are sorted by the word they spell. */
export type Dfa = {
  readonly arcs: readonly (readonly (readonly [word: number, to: number])[])[];
  readonly isFinal: readonly boolean[];
};

/** Subset construction over the grammar's automaton; tags are dropped. */
export function determinise(grammar: CompiledGrammar): Dfa {
  const alphabetical = grammar.words
    .map((_, i) => i)
    .sort((a, b) => (wordAt(grammar, a) < wordAt(grammar, b) ? -1 : 1));
  const place = new Int32Array(grammar.words.length);
  alphabetical.forEach((word, i) => (place[word] = i));

  const close = createClosure(grammar);
  const numbers = new Map<string, number>();
  const subsets: (readonly number[])[] = [];
  const numberOf = (nodes: readonly number[]): number => {
    const subset = close(nodes);
    const key = subset.join(",");
    const known = numbers.get(key);
    if (known !== undefined) return known;
    numbers.set(key, subsets.length);
    return subsets.push(subset) - 1;
  };

  numberOf([grammar.startNode]);
  const arcs: [number, number][][] = [];
  const isFinal: boolean[] = [];
  for (let state = 0; state < subsets.length; state++) {
    const targets = new Map<number, number[]>();
    for (const node of subsets[state] ?? []) {
      for (let a = grammar.word.start[node] ?? 0; a < (grammar.word.start[node + 1] ?? 0); a++) {
        const word = grammar.word.word[a] ?? 0;
        const to = grammar.word.to[a] ?? 0;
        const known = targets.get(word);
        if (known === undefined) targets.set(word, [to]);
        else known.push(to);
      }
    }
    const sorted = [...targets].sort(([a], [b]) => (place[a] ?? 0) - (place[b] ?? 0));
    arcs.push(sorted.map(([word, nodes]) => [word, numberOf(nodes)]));
    isFinal.push(subsets[state]?.includes(grammar.finalNode) === true);
  }
  return { arcs, isFinal };
}

const wordAt = (grammar: CompiledGrammar, i: number): string => grammar.words[i] ?? "";

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
      if (node === finalNode || (word.start[node] ?? 0) < (word.start[node + 1] ?? 0)) kept.push(node);
      for (let a = silent.start[node] ?? 0; a < (silent.start[node + 1] ?? 0); a++) waiting.push(silent.to[a] ?? 0);
    }
    return kept.sort((a, b) => a - b);
  };
}
