import { TEENS, TENS } from "./numberWords.ts";
import { sayNumber } from "../sentences/number.ts";
import { wordsToNumber } from "./wordsToNumber.ts";

/** A number that sounds nearly like the one that was said, in words that say it. */
export type SoundAlike = { readonly value: number; readonly words: string };

/**
 * thirteen/thirty … nineteen/ninety, and niner/nine oh, both ways.
 * Source: 14/40 and the rule to say such numbers two ways: a nuclear pharmacy safety article of 2015; the other teens: common
 * practice, no source; niner/nine oh: this project's report of phone distances, where accents without a final r say
 * nearly the same.
 */
const SWAPS = [
  ...[3, 4, 5, 6, 7, 8, 9].map((n) => ({ one: [TEENS[n] ?? ""], other: [TENS[n] ?? ""], onlyLast: false })),
  { one: ["niner"], other: ["nine", "oh"], onlyLast: true },
].flatMap(({ one, other, onlyLast }) => [
  { said: one, heard: other, onlyLast },
  { said: other, heard: one, onlyLast },
]);

/**
 * What else the words of a number may have been, by a teen taken for a ty or the other way round, or by "niner" at the end.
 *
 * "one thirteen" → 130; "fifty" → 15; "thirty point five" → 13.5; "one niner" → 190. A ty word with a digit after it
 * ("fifty five") and digits said one by one ("one five") have no sound-alike: the swapped words are no number.
 * Not for: the other risky pairs (five/nine), which only the sound can tell apart.
 */
export function soundAlikes(words: readonly string[]): readonly SoundAlike[] {
  if (!wordsToNumber(words).ok) return [];
  return words.flatMap((_, at) =>
    SWAPS.flatMap(({ said, heard, onlyLast }) => {
      const isSaid = said.every((word, i) => words[at + i] === word);
      if (!isSaid || (onlyLast && at + said.length < words.length)) return [];
      const other = words.toSpliced(at, said.length, ...heard);
      const value = wordsToNumber(other);
      return value.ok ? [{ value: value.value, words: other.join(" ") }] : [];
    }),
  );
}

/**
 * The same for a number that reached us as digits, where the words that were said are lost: 15 → 50, 113 → 130.
 *
 * @param value a number of at least 0 with at most two decimals; others have no sound-alike.
 */
export function digitSoundAlikes(value: number): readonly SoundAlike[] {
  return soundAlikes(sayNumber(value, 2).split(" "));
}
