import { OPEN, PLAIN, type CompiledGrammar } from "./compiledGrammar.ts";
import type { Mark, Parse } from "./grammarTypes.ts";
import { reachableNodes } from "./reachableNodes.ts";

/** More readings than this are not a grammar to understand people with. */
export const MAX_PARSES = 32;

export type Matches = {
  /** Distinct readings, always in the same order; none when the words are not in the language. */
  readonly parses: readonly Parse[];
  /** There are, or may be, readings beyond those in `parses`. */
  readonly truncated: boolean;
  /** Arcs looked at, once for each reading carried over: at most (words + 1) × arcs × (MAX_PARSES + 3). */
  readonly steps: number;
};

/** The marks from some point to the end of the utterance; equal ones are one object. `from` is PENDING until known. */
type Tail = {
  readonly tag: number;
  readonly from: number;
  readonly to: number;
  readonly rest: Tail | undefined;
  readonly id: number;
};
type Tails = { readonly all: ReadonlySet<Tail | undefined>; readonly isCut: boolean };
type MakeTail = (tag: number, from: number, to: number, rest: Tail | undefined) => Tail;

const PENDING = -1;

/**
 * Reads an utterance in every way the grammar allows.
 *
 * The words must match from first to last. Works backwards from the end over the nodes that can be reached from the
 * start, and keeps at every node and position only the distinct mark lists, so that time grows with the length of the
 * utterance and not with the number of ways through it. Not for: choosing between readings; two are an ambiguity.
 */
export function matchWords(grammar: CompiledGrammar, words: readonly string[]): Matches {
  const numbers = words.map((word) => grammar.wordNumbers.get(word) ?? -1);
  const reached = reachableNodes(grammar, numbers);
  let steps = reached.steps;
  if (reached.at[words.length]?.includes(grammar.finalNode) !== true) return { parses: [], truncated: false, steps };

  const { silent, word } = grammar;
  const make = createTails();
  let later = new Map<number, Tails>();
  for (let at = words.length; at >= 0; at--) {
    const here = new Map<number, Tails>();
    // Silent arcs lead upward, so from the top down every node finds what follows it already done.
    for (const node of reached.at[at]?.toReversed() ?? []) {
      const isEnd = at === words.length && node === grammar.finalNode;
      let tails: Tails | undefined = isEnd ? { all: new Set([undefined]), isCut: false } : undefined;
      for (let a = silent.start[node] ?? 0; a < (silent.start[node + 1] ?? 0); a++) {
        const mark = silent.mark[a] ?? PLAIN;
        const after = here.get(silent.to[a] ?? 0);
        steps += 1 + (after?.all.size ?? 0);
        tails = joined(tails, after && (mark === PLAIN ? after : marked(make, after, mark, at)));
      }
      for (let a = word.start[node] ?? 0; a < (word.start[node + 1] ?? 0); a++) {
        const after = word.word[a] === numbers[at] ? later.get(word.to[a] ?? 0) : undefined;
        steps += 1 + (after?.all.size ?? 0);
        tails = joined(tails, after);
      }
      if (tails !== undefined) here.set(node, tails);
    }
    later = here;
  }
  const whole = later.get(grammar.startNode);
  const parses = [...(whole?.all ?? [])].map((tail) => parseOf(tail, grammar, words));
  const truncated = whole?.isCut === true || parses.length > MAX_PARSES;
  return { parses: parses.slice(0, MAX_PARSES), truncated, steps };
}

function createTails(): MakeTail {
  const known = new Map<string, Tail>();
  return (tag, from, to, rest) => {
    const key = `${tag} ${from} ${to} ${rest?.id ?? 0}`;
    const tail = known.get(key) ?? { tag, from, to, rest, id: known.size + 1 };
    known.set(key, tail);
    return tail;
  };
}

function joined(one: Tails | undefined, other: Tails | undefined): Tails | undefined {
  if (one === undefined || other === undefined) return one ?? other;
  const all = new Set([...one.all, ...other.all]);
  const kept = [...all].slice(0, MAX_PARSES + 1);
  return { all: new Set(kept), isCut: one.isCut || other.isCut || kept.length < all.size };
}

/** The same tails seen from before an arc that opens a mark, or closes one, at this position. */
function marked(make: MakeTail, tails: Tails, mark: number, at: number): Tails {
  const longer = [...tails.all].map((tail) => (mark === OPEN ? opened(make, tail, at) : make(mark, PENDING, at, tail)));
  return { all: new Set(longer), isCut: tails.isCut };
}

/** Backwards, an opening belongs to the nearest mark that still waits for one. */
function opened(make: MakeTail, tail: Tail | undefined, at: number): Tail | undefined {
  const passed: Tail[] = [];
  let waiting = tail;
  for (; waiting !== undefined && waiting.from !== PENDING; waiting = waiting.rest) passed.push(waiting);
  if (waiting === undefined) return tail;
  const found = make(waiting.tag, at, waiting.to, waiting.rest);
  return passed.reduceRight((rest, { tag, from, to }) => make(tag, from, to, rest), found);
}

function parseOf(tail: Tail | undefined, grammar: CompiledGrammar, words: readonly string[]): Parse {
  const marks: Mark[] = [];
  for (let t = tail; t !== undefined; t = t.rest) {
    marks.push({ tag: grammar.tags[t.tag] ?? "", words: words.slice(t.from, t.to), from: t.from, to: t.to });
  }
  return marks;
}
