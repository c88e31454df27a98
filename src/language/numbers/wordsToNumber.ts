import { fail, ok, type Result } from "../../core/result.ts";
import type { NumberError } from "./numberError.ts";
import { numberToken, type NumberToken } from "./numberWords.ts";
import { readWhole } from "./readWhole.ts";

/** Digits after the point; rates need three. A fourth is refused, not rounded. */
const MAX_DECIMALS = 3;

/**
 * The value of a number as it was said.
 *
 * @param words lower-case words of one number and nothing else, e.g. `["one", "oh", "five"]`.
 * @returns     the value: whole, or with up to three decimals. Never negative. No unit, no range check.
 *
 * Errors: anything that is not exactly one number in a known form. It never guesses: "one twenty eighty" (two numbers),
 * "twenty fifteen", "thirty six five" (36, 5 or 36.5) and "one oh fifteen" are refused, so that somebody asks.
 * Decided on purpose: "two fifty" is 250, "one ten" 110, "a hundred and four" 104, "one thousand two fifty" 1250,
 * "one thousand five" 1005, "twelve hundred" 1200, "zero nine five" 95 (a digit string).
 * Not for: finding a number inside a sentence; the grammar does that.
 */
export function wordsToNumber(words: readonly string[]): Result<number, NumberError> {
  if (words.length === 0) return fail({ kind: "empty" });
  const tokens: NumberToken[] = [];
  for (const [at, word] of words.entries()) {
    const token = numberToken(word);
    if (token === undefined) return fail({ kind: "unknown-word", word, at });
    tokens.push(token);
  }
  const point = tokens.findIndex((t) => t.kind === "point");
  return point < 0 ? readWhole(tokens) : readDecimal(tokens, point);
}

function readDecimal(tokens: readonly NumberToken[], point: number): Result<number, NumberError> {
  const decimals: number[] = [];
  for (const [i, token] of tokens.slice(point + 1).entries()) {
    if (token.kind !== "digit") return fail({ kind: "not-one-number", at: point + 1 + i });
    decimals.push(token.value);
  }
  if (decimals.length === 0) return fail({ kind: "not-one-number", at: tokens.length });
  if (decimals.length > MAX_DECIMALS) return fail({ kind: "too-many-digits", max: MAX_DECIMALS });
  if (point === 0) return ok(Number(`0.${decimals.join("")}`));
  const before = tokens.slice(0, point);
  const [first] = before;
  // "zero five point two" is more likely two numbers, or a slip, than 5.2.
  if (first?.kind === "digit" && first.value === 0 && before.length > 1) return fail({ kind: "not-one-number", at: 1 });
  const whole = readWhole(before);
  if (!whole.ok) return whole;
  if (whole.value > 999) return fail({ kind: "not-one-number", at: point });
  return ok(Number(`${whole.value}.${decimals.join("")}`));
}
