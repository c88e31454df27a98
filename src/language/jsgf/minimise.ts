import type { Dfa } from "./determinise.ts";
import { createListNumbers } from "./listNumbers.ts";

/**
 * Merges states that accept the same continuations (Moore's refinement).
 * Expects that every state can reach a final one, as grammars without <VOID> guarantee.
 */
export function minimise(dfa: Dfa): Dfa {
  let group: readonly number[] = dfa.isFinal.map(Number);
  let groups = new Set(group).size;
  for (;;) {
    const numbers = createListNumbers();
    const coarse = group;
    group = dfa.arcs.map((arcs, state) => numbers.numberOf([coarse[state]!, ...regrouped(arcs, coarse)]));
    if (numbers.size === groups) break;
    groups = numbers.size;
  }
  // Groups are numbered in the order of their first state, which stands for the group.
  const arcs: (readonly number[])[] = [];
  const isFinal: boolean[] = [];
  dfa.arcs.forEach((own, state) => {
    if (group[state] !== arcs.length) return;
    arcs.push(regrouped(own, group));
    isFinal.push(dfa.isFinal[state] === true);
  });
  return { starts: dfa.starts.map((state) => group[state]!), arcs, isFinal };
}

/** The arcs of a state with the group of every target in its place. */
const regrouped = (arcs: readonly number[], group: readonly number[]): number[] =>
  arcs.map((value, i) => (i % 2 === 0 ? value : group[value]!));
