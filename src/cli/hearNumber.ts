import { wordsToNumber } from "../language/numbers/wordsToNumber.ts";
import { certaintyOf, verdictOf } from "../listener/certainty.ts";
import type { HeardSound } from "../listener/hearing.ts";
import { m1, m2 } from "../listener/margins.ts";

/**
 * The number that was heard, or null when it is not to be believed: nothing heard, words that are not one number,
 * not enough like the language, or too near to another number. The same thresholds as in the app.
 */
export function heardNumber({ candidates, free, shape }: HeardSound): number | null {
  const [best] = candidates;
  if (best === undefined || free === undefined) return null;
  const value = wordsToNumber(best.words.split(" "));
  if (!value.ok) return null;
  const margins = { m1: m1(best.score, free), m2: m2(candidates, numberMeaning) };
  const certainty = certaintyOf({ ...margins, phones: free.phones, shape });
  return verdictOf(certainty, "value") === "take" ? value.value : null;
}

function numberMeaning(words: string): string | undefined {
  const value = wordsToNumber(words.split(" "));
  return value.ok ? String(value.value) : undefined;
}
