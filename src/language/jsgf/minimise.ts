import type { Dfa } from "./determinise.ts";

/**
 * Merges states that accept the same continuations (Moore's refinement). The start stays state 0.
 * Expects that every state can reach a final one, as grammars without <VOID> guarantee.
 */
export function minimise(dfa: Dfa): Dfa {
  let group = dfa.isFinal.map((isFinal) => Number(isFinal));
  let groups = new Set(group).size;
  for (;;) {
    const numbers = new Map<string, number>();
    const finer = dfa.arcs.map((arcs, state) => {
      const key = `${group[state]}:${arcs.map(([word, to]) => `${word},${group[to]}`).join(";")}`;
      const known = numbers.get(key) ?? numbers.size;
      numbers.set(key, known);
      return known;
    });
    group = finer;
    if (numbers.size === groups) break;
    groups = numbers.size;
  }
  // Groups were numbered in the order of their first state, so the start's group is 0.
  const arcs: (readonly (readonly [number, number])[])[] = [];
  const isFinal: boolean[] = [];
  dfa.arcs.forEach((own, state) => {
    if (group[state] !== arcs.length) return;
    arcs.push(own.map(([word, to]) => [word, group[to] ?? 0] as const));
    isFinal.push(dfa.isFinal[state] === true);
  });
  return { arcs, isFinal };
}
