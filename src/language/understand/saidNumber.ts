import { wordsToNumber } from "../numbers/wordsToNumber.ts";
import type { SaidNumber } from "../saidNumber.ts";
import type { Mark } from "../jsgf/grammarTypes.ts";

/** Which half of a number said two ways counts: both, which must agree, or one of two that do not. */
export type Half = "both" | "whole" | "digits";

/**
 * The number a mark's words say.
 *
 * A number said two ways ("fifteen, one five") counts once, with the words of its digits: they are
 * the safe form, so it need not be asked back as a sound-alike.
 * Errors: undefined when the words are no number, or when both ways are to count and disagree.
 */
export function saidNumber(mark: Mark, marks: readonly Mark[], half: Half): SaidNumber | undefined {
  const part = (tag: string) => marks.find((m) => m.tag === tag && m.from >= mark.from && m.to <= mark.to);
  const whole = part("twoWaysWhole");
  const digits = part("twoWaysDigits");
  if (whole === undefined || digits === undefined) return numberOf(mark.words);
  if (half !== "both") return numberOf((half === "whole" ? whole : digits).words);
  const said = numberOf(digits.words);
  return said !== undefined && said.value === numberOf(whole.words)?.value ? said : undefined;
}

function numberOf(words: readonly string[]): SaidNumber | undefined {
  const read = wordsToNumber(words);
  return read.ok ? { value: read.value, words: words.join(" ") } : undefined;
}
