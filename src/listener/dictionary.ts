import { fail, ok, type Result } from "../core/result.ts";
import { PHONE_NUMBERS } from "./phones.ts";

/** Word to its pronunciations, each a list of phone numbers. */
export type Dictionary = ReadonlyMap<string, readonly (readonly number[])[]>;

export type DictionaryError = { readonly line: number; readonly message: string };

/**
 * Reads a pronunciation dictionary: a word and its phones on each line, white space between. Another pronunciation
 * is another line, with the word as it is or numbered, `word(2)`. Stress digits are dropped, case does not matter,
 * `#` and `;;` begin a comment.
 *
 * Errors: the line (1-based) of a word that is not letters and apostrophes, of a word without phones, or of a phone
 * that the network does not know. Not for: guessing how a missing word is said.
 */
export function parseDictionary(text: string): Result<Dictionary, DictionaryError> {
  const dictionary = new Map<string, (readonly number[])[]>();
  for (const [i, row] of text.split(/\r?\n/).entries()) {
    const refuse = (message: string) => fail({ line: i + 1, message });
    const [head, ...names] = row
      .replace(/(#|;;).*$/, "")
      .trim()
      .split(/\s+/);
    if (head === undefined || head === "") continue;
    const word = head.replace(/\(\d+\)$/, "").toLowerCase();
    if (!/^[a-z][a-z']*$/.test(word)) return refuse(`${head} is not a word of letters and apostrophes`);
    if (names.length === 0) return refuse(`${head} has no phones`);
    const phones: number[] = [];
    for (const name of names) {
      const phone = PHONE_NUMBERS.get(name.toUpperCase().replace(/\d$/, ""));
      if (phone === undefined) return refuse(`${name} is not a phone`);
      phones.push(phone);
    }
    const known = dictionary.get(word);
    if (known === undefined) dictionary.set(word, [phones]);
    else if (!known.some((other) => other.join() === phones.join())) known.push(phones);
  }
  return ok(dictionary);
}
