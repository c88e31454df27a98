import { soundAlikes } from "../numbers/soundAlikes.ts";
import { wordsToNumber } from "../numbers/wordsToNumber.ts";
import { sayDigits, sayNumber } from "./number.ts";
import { sentences } from "./sentence.ts";
import { sayAge } from "./vital.ts";

/** An age that could be heard as another is said two ways: "fifteen, one five, minutes". */
export function sayAgeSafely(ageMs: number): string {
  const plain = sayAge(ageMs);
  const words = plain.split(" ");
  const number = wordsToNumber(words.slice(0, -1));
  if (!number.ok || soundAlikes(words.slice(0, -1)).length === 0) return plain;
  return `${sayNumber(number.value, 0)}, ${sayDigits(number.value)}, ${words.at(-1)}`;
}

/** A value with its age, which is what was asked for: "MAP sixty five, four minutes old", "…, just now". */
export function sayHowOld(value: string, ageMs: number): string {
  const age = sayAgeSafely(ageMs);
  return sentences(`${value}, ${age === "now" ? "just now" : `${age} old`}`);
}
