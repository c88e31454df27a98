import { normalise } from "../language/normalise/normalise.ts";
import { m1 } from "../listener/margins.ts";
import { MAX_CANDIDATES, type Candidate } from "../listener/search.ts";
import type { Utterance } from "./ports.ts";

const CALL_WORD = "tragus";

export type CallLimits = {
  /** How much better the best words with the call word must fit than the best without it, in nats. */
  readonly margin: number;
  /** How well the call word alone must fit the language (`margins.ts`). */
  readonly aloneM1: number;
};

/** Source: `npm run bench -- called`, which prints what others would cost. */
export const CALL_LIMITS: CallLimits = { margin: 5, aloneM1: -0.8 };

/** How an utterance begins. `utterance` is what is left without the call word. */
export type Call =
  | { readonly kind: "uncalled"; readonly utterance: Utterance }
  /** The call word and nothing else: what is wanted comes next. */
  | { readonly kind: "alone" }
  | { readonly kind: "called"; readonly utterance: Utterance };

const isCalled = (words: string): boolean => words === CALL_WORD || words.startsWith(`${CALL_WORD} `);
const without = (words: string): string => (isCalled(words) ? words.slice(CALL_WORD.length).trim() : words);

/**
 * The candidates without their call words, each word sequence once. Of a full list other meanings may have found no room:
 * where it has grown shorter, an empty candidate keeps the place up to which it is known.
 */
function stripped(candidates: readonly Candidate[]): readonly Candidate[] {
  const best = new Map<string, Candidate>();
  for (const { words, score } of candidates) {
    const rest = without(words);
    if (rest !== "" && !best.has(rest)) best.set(rest, { words: rest, score });
  }
  const kept = [...best.values()];
  const last = candidates.at(-1);
  const isCut = last !== undefined && candidates.length >= MAX_CANDIDATES && kept.length < candidates.length;
  return isCut && kept.length > 0 ? [...kept, { words: "", score: last.score }] : kept;
}

/** How far the best words lie above the best ones without the call word. Never more than is known. */
function callMargin([best, ...others]: readonly Candidate[]): number {
  if (best === undefined) return -Infinity;
  const rival =
    others.find(({ words }) => !isCalled(words)) ?? (others.length + 1 >= MAX_CANDIDATES ? others.at(-1) : undefined);
  return rival === undefined ? Infinity : best.score - rival.score;
}

/**
 * Whether an utterance begins with the call word. Sound must fit it clearly better than the same words without it; text
 * must begin with it. Errors: none. Not for: whether what follows it is in the language.
 */
export function callOf(heard: Utterance, limits: CallLimits = CALL_LIMITS): Call {
  const [best] = heard.candidates;
  if (best === undefined) return { kind: "uncalled", utterance: heard };
  if (heard.free === undefined) {
    const words = normalise(best.words).join(" ");
    if (!isCalled(words)) return { kind: "uncalled", utterance: heard };
    const rest = without(words);
    return rest === ""
      ? { kind: "alone" }
      : { kind: "called", utterance: { ...heard, candidates: [{ ...best, words: rest }] } };
  }
  const utterance = { ...heard, candidates: stripped(heard.candidates) };
  if (!isCalled(best.words) || callMargin(heard.candidates) < limits.margin) return { kind: "uncalled", utterance };
  if (best.words !== CALL_WORD) return { kind: "called", utterance };
  return m1(best.score, heard.free) < limits.aloneM1 ? { kind: "uncalled", utterance } : { kind: "alone" };
}
