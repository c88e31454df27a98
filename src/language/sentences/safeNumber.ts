import { toCanonical } from "../../core/convert.ts";
import { withinLimits } from "../../core/plausible.ts";
import type { VitalCode } from "../../core/vitals.ts";
import type { SaidUnit } from "../../log/facts.ts";
import { PLAIN_DIGITS, TENS } from "../numbers/numberWords.ts";
import { soundAlikes } from "../numbers/soundAlikes.ts";
import { wordsToNumber } from "../numbers/wordsToNumber.ts";
import { sayDigits, sayNumber } from "./number.ts";

/**
 * Whether a listener could take the number of this vital for another that it could have: thirteen for thirty and the like,
 * where both lie within the entry limits.
 *
 * @param value    in `unit`; rounded to `decimals` as it is said.
 */
export function soundsLikeAnother(code: VitalCode, value: number, unit: SaidUnit, decimals: 0 | 1 | 2): boolean {
  return soundAlikes(sayNumber(value, decimals).split(" ")).some((other) => {
    const canonical = toCanonical(code, other.value, unit);
    return canonical.ok && withinLimits(code, canonical.value);
  });
}

/**
 * A number of a vital as it is read back: "twenty two", but "fifteen, one five", so that neither our own voice nor noise
 * can turn it into fifty unnoticed, and so that the form to repair it with is heard.
 *
 * Not for: sentences without pauses, in which "thirty, three zero" runs together.
 */
export function saySafely(code: VitalCode, value: number, unit: SaidUnit, decimals: 0 | 1 | 2): string {
  const plain = sayNumber(value, decimals);
  // What is said is read again, so that both ways say the number as it was rounded.
  const rounded = wordsToNumber(plain.split(" "));
  return rounded.ok && soundsLikeAnother(code, value, unit, decimals) ? `${plain}, ${sayDigits(rounded.value)}` : plain;
}

const TEN_AND_DIGIT = new RegExp(`(?:${TENS.slice(2).join("|")}), (?:${PLAIN_DIGITS.slice(1).join("|")})\\b`, "u");

/** Whether a sentence cannot do without its pauses: without one, "thirty, three zero" begins like thirty three. */
export const needsPauses = (text: string): boolean => TEN_AND_DIGIT.test(text);
