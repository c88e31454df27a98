import type { CompiledGrammar } from "./compiledGrammar.ts";

/**
 * Which nodes can be reached from the start by the first n words: `at[n]`, in rising order. Ends early, with fewer
 * entries, when no node is left. Words are numbers of the grammar; an unknown word is any other number.
 */
export function reachableNodes(
  grammar: CompiledGrammar,
  words: readonly number[],
): { readonly at: readonly Int32Array[]; readonly steps: number } {
  const { silent, word } = grammar;
  const seenAt = new Int32Array(grammar.nodes).fill(-1);
  const at: Int32Array[] = [];
  let steps = 0;
  let waiting = [grammar.startNode];
  for (let position = 0; waiting.length > 0; position++) {
    const wanted = words[position];
    const reached: number[] = [];
    const next: number[] = [];
    for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
      if (seenAt[node] === position) continue;
      seenAt[node] = position;
      reached.push(node);
      const silentEnd = silent.start[node + 1] ?? 0;
      for (let a = silent.start[node] ?? 0; a < silentEnd; a++) waiting.push(silent.to[a] ?? 0);
      const wordEnd = word.start[node + 1] ?? 0;
      for (let a = word.start[node] ?? 0; a < wordEnd; a++) if (word.word[a] === wanted) next.push(word.to[a] ?? 0);
      steps += silentEnd - (silent.start[node] ?? 0) + wordEnd - (word.start[node] ?? 0);
    }
    at.push(Int32Array.from(reached).sort());
    waiting = next;
  }
  return { at, steps };
}
