export type Thresholds = {
  /** Words are taken from these two margins up … */
  readonly m1Take: number;
  readonly m2Take: number;
  /** … or, when they fit the language more loosely, if no other meaning comes anywhere near. */
  readonly m1Loose: number;
  readonly m2Loose: number;
  /** Under these nothing is asked back either. */
  readonly m1Ask: number;
  readonly m2Ask: number;
};

/**
 * Sources. `m1Take`: the listener's card, chosen there on six speakers who took no part in training. The others: this
 * project's benchmark, on 423 phrases of made voices in quiet and in noise, 1,069 numbers said by people, and 1.6 h of
 * talk and noise. The card's own `m2Take` was 2.59, at which more wrong values were taken. The loose pair takes rare
 * words that the network fits badly but could not take for anything else; it cost no wrong value there. What each
 * would cost at another value is printed by `npm run bench -- --thresholds`.
 */
export const THRESHOLDS: Thresholds = {
  m1Take: -0.206,
  m2Take: 5,
  m1Loose: -0.5,
  m2Loose: 8,
  m1Ask: -0.6,
  m2Ask: 0.4,
};

export type Verdict =
  /** May be taken. */
  | "clear"
  /** In the language, but loosely: to be asked back. */
  | "loose"
  /** Another meaning was near: to be asked which. */
  | "near-another"
  /** Two meanings were level: to be said again. */
  | "level"
  /** Not in the language. */
  | "outside";

/** What the two margins of an utterance allow. Not for: typed text, which has none. */
export function verdictOf(m1: number, m2: number, t: Thresholds = THRESHOLDS): Verdict {
  if (m1 < t.m1Ask) return "outside";
  if (m2 < t.m2Ask) return "level";
  if (m2 < t.m2Take) return "near-another";
  return m1 >= t.m1Take || (m1 >= t.m1Loose && m2 >= t.m2Loose) ? "clear" : "loose";
}
