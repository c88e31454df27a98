import type { PhoneGraph } from "../../../src/listener/phoneGraph.ts";
import { APART, missing } from "./phoneDistance.ts";

/** Two ways on from one point of the language that meet again, and what it takes to hear one for the other. */
export type Rivals = {
  /** Whole ways, and what differs in them: without the words that both end with. */
  readonly ways: readonly [readonly string[], readonly string[]];
  readonly differ: readonly [readonly string[], readonly string[]];
  readonly cost: number;
  readonly from: number;
  /** Nothing where both ends are ends of the language. */
  readonly to: number | undefined;
};

type Way = { readonly place: number; readonly words: readonly number[]; readonly phones: number };
type Pair = { readonly a: Way; readonly b: Way; readonly cost: number };
type Found = { readonly a: Way; readonly b: Way; readonly differ: Parts; readonly cost: number };
type Parts = readonly [readonly number[], readonly number[]];

/** "age eight" and "aged one" differ in three words at most; longer confusions are several short ones. */
const MAX_WORDS = 3;
/** Two short words may differ by this much and a little for each phone; more is not a confusion that anybody hears. */
const FOR_ANY = 0.45;
const PER_PHONE = 0.3;

/**
 * All pairs of short word sequences that part at a state and meet at another, or both end: two walkers go through the
 * graph of phones from there, each step priced by how alike the phones sound, the cheapest pair of ways first.
 */
export function rivalsFrom(graph: PhoneGraph, from: number, budget: number): readonly Rivals[] {
  const { states, words } = graph;
  const ahead = stepsOf(graph);
  const isFinal = new Set(graph.finals);
  const waiting: Pair[][] = [];
  const slotOf = (cost: number): number => Math.round(cost * 100);
  const seen = new Set<string>();
  const found = new Map<string, Found>();
  const put = (a: Way, b: Way, cost: number): void => {
    if (cost > budget || cost > PER_PHONE * Math.max(a.phones, b.phones) + FOR_ANY) return;
    if (a.words.length > MAX_WORDS || b.words.length > MAX_WORDS) return;
    const [first, second] = [a.words[0], b.words[0]];
    // Each pair once, and never a word against itself.
    if (first !== undefined && second !== undefined && first >= second) return;
    (waiting[slotOf(cost)] ??= []).push({ a, b, cost });
  };
  const take = ({ a, b, cost }: Pair): void => {
    const areWhole = a.place < states && b.place < states && a.words.length > 0 && b.words.length > 0;
    const differ = areWhole ? difference(a.words, b.words) : ([a.words, b.words] as const);
    const told = differ.map((part) => part.join()).join("|");
    const key = `${a.place} ${b.place} ${told}`;
    if (seen.has(key) || (areWhole && found.has(told))) return;
    seen.add(key);
    if (areWhole && (a.place === b.place || (isFinal.has(a.place) && isFinal.has(b.place)))) {
      found.set(told, { a, b, differ, cost });
      return;
    }
    const [nextA, nextB] = [ahead(a), ahead(b)];
    for (const x of nextA) {
      put(x.way, b, cost + missing(x.phone));
      for (const y of nextB) put(x.way, y.way, cost + APART[x.phone]![y.phone]!);
    }
    for (const y of nextB) put(a, y.way, cost + missing(y.phone));
  };
  const start: Way = { place: from, words: [], phones: 0 };
  put(start, start, 0);
  for (let slot = 0; slot <= slotOf(budget); slot++) {
    for (let pair = waiting[slot]?.pop(); pair !== undefined; pair = waiting[slot]?.pop()) take(pair);
  }
  const spelt = (way: readonly number[]): readonly string[] => way.map((word) => words[word] ?? "");
  return [...found.values()].map(({ a, b, differ, cost }) => ({
    ways: [spelt(a.words), spelt(b.words)],
    differ: [spelt(differ[0]), spelt(differ[1])],
    cost,
    from,
    to: a.place === b.place ? a.place : undefined,
  }));
}

/** What is left when the words that both end with are taken away; one word of each stays. */
function difference(one: readonly number[], other: readonly number[]): Parts {
  const longest = Math.min(one.length, other.length) - 1;
  let same = 0;
  while (same < longest && one.at(-1 - same) === other.at(-1 - same)) same++;
  return [one.slice(0, one.length - same), other.slice(0, other.length - same)];
}

type Step = { readonly way: Way; readonly phone: number };

/** Where one more phone leads. Places below `states` are states, those above are inside a word, before that phone. */
function stepsOf(graph: PhoneGraph): (way: Way) => readonly Step[] {
  const { states, firstArc, arcTo, arcWord, firstPhone, phones } = graph;
  const arcOfPhone = new Int32Array(phones.length);
  for (let arc = 0; arc < arcTo.length; arc++) arcOfPhone.fill(arc, firstPhone[arc], firstPhone[arc + 1]);
  const after = (arc: number, at: number): number => (at + 1 === firstPhone[arc + 1] ? arcTo[arc]! : states + at + 1);
  const steps = (at: number, arc: number, way: Way, words: readonly number[]): Step => ({
    way: { place: after(arc, at), words, phones: way.phones + 1 },
    phone: phones[at]!,
  });
  return (way) => {
    const at = way.place - states;
    if (at >= 0) return [steps(at, arcOfPhone[at]!, way, way.words)];
    const ways: Step[] = [];
    for (let arc = firstArc[way.place]!; arc < firstArc[way.place + 1]!; arc++) {
      ways.push(steps(firstPhone[arc]!, arc, way, [...way.words, arcWord[arc]!]));
    }
    return ways;
  };
}
