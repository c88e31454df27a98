import type { PhoneGraph } from "../../../src/listener/phoneGraph.ts";

/** The shortest words that lead to every state, and from it to an end. */
export type Surroundings = { before(state: number): readonly string[]; after(state: number): readonly string[] };

type Arc = { readonly from: number; readonly to: number; readonly word: string };

export function surroundingsOf(graph: PhoneGraph): Surroundings {
  const arcs: Arc[] = [];
  for (let from = 0; from < graph.states; from++) {
    for (let a = graph.firstArc[from]!; a < graph.firstArc[from + 1]!; a++) {
      arcs.push({ from, to: graph.arcTo[a]!, word: graph.words[graph.arcWord[a]!] ?? "" });
    }
  }
  const before = shortest([graph.start], arcs, (way, word) => [...way, word]);
  const reversed = arcs.map(({ from, to, word }) => ({ from: to, to: from, word }));
  const after = shortest([...graph.finals], reversed, (way, word) => [word, ...way]);
  return { before: (state) => before.get(state) ?? [], after: (state) => after.get(state) ?? [] };
}

function shortest(
  starts: readonly number[],
  arcs: readonly Arc[],
  longer: (way: readonly string[], word: string) => readonly string[],
): ReadonlyMap<number, readonly string[]> {
  const leaving = new Map<number, Arc[]>();
  for (const arc of arcs) leaving.set(arc.from, [...(leaving.get(arc.from) ?? []), arc]);
  const ways = new Map<number, readonly string[]>(starts.map((state) => [state, []]));
  for (const [state, way] of ways) {
    for (const { to, word } of leaving.get(state) ?? []) if (!ways.has(to)) ways.set(to, longer(way, word));
  }
  return ways;
}

/** One state of every set of words that may follow: the others would show the same pairs again. */
export function differentStates(graph: PhoneGraph): readonly number[] {
  const first = new Map<string, number>();
  for (let state = 0; state < graph.states; state++) {
    const words = new Set(graph.arcWord.subarray(graph.firstArc[state], graph.firstArc[state + 1]));
    const key = [...words].sort().join();
    if (!first.has(key)) first.set(key, state);
  }
  return [...first.values()];
}
