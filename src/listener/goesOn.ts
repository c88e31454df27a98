import { m1 } from "./margins.ts";
import type { FreePath } from "./phoneScores.ts";
import type { Ahead, Candidate } from "./search.ts";

/**
 * Whether what was said might be only the first part of something: no; may ("one hundred", which is whole, but "and twenty"
 * would make it another number); must ("one twenty over", which is nothing yet).
 */
export type GoesOn = "no" | "may" | "must";

const DIGITS = new Set("zero oh one two three four five six seven eight nine niner".split(" "));
const TENS = new Set("twenty thirty forty fifty sixty seventy eighty ninety".split(" "));
const TEENS = new Set("ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split(" "));
const ROUND = new Set(["hundred", "thousand"]);
/** Join two parts of one number, or two numbers of one pressure. */
const JOINTS = ["point", "decimal", "over"] as const;

/** An unfinished sentence must beat the whole ones by this much (nats) … */
const UNFINISHED_LEAD = 3;
/** … and fit the sound: talk that is no sentence of ours is unfinished in every grammar. This project's choice, as is the lead. */
const UNFINISHED_M1 = -0.5;

const isNumberWord = (word: string): boolean =>
  DIGITS.has(word) || TENS.has(word) || TEENS.has(word) || ROUND.has(word);

/**
 * Judges from the words and the grammar, not from the sound of the voice. "Ninety four" is closed, "ninety" is not.
 * Not for: sentences that another may follow ("sats ninety four", "rate seventy"): apart they mean the same as together.
 */
export function goesOn(candidates: readonly Candidate[], { followers, unfinished }: Ahead, free: FreePath): GoesOn {
  const [best] = candidates;
  if (unfinished !== undefined && unfinished.score >= (best?.score ?? -Infinity) + UNFINISHED_LEAD)
    return m1(unfinished.score, free) >= UNFINISHED_M1 ? "must" : "no";
  return best !== undefined && numberMayGoOn(best.words.split(" "), followers) ? "may" : "no";
}

function numberMayGoOn(words: readonly string[], followers: ReadonlySet<string>): boolean {
  const last = words.at(-1) ?? "";
  if (!isNumberWord(last)) return false;
  const follows = (some: Iterable<string>): boolean => [...some].some((word) => followers.has(word));
  if (follows(JOINTS)) return true;
  if (ROUND.has(last)) return follows([...DIGITS, ...TEENS, ...TENS]);
  if (TENS.has(last)) return follows(DIGITS);
  // A digit ends the number after a ten ("ninety four"); alone or in a row of digits another may follow.
  if (DIGITS.has(last)) return !TENS.has(words.at(-2) ?? "") && follows([...DIGITS, ...TEENS, ...TENS]);
  return false;
}
