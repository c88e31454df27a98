import { describe, expect, it } from "vitest";
import { parseDictionary } from "../../src/listener/dictionary.ts";
import { phonesApart } from "../bench/confusable/phoneDistance.ts";
import { DICTIONARY_TEXT } from "../phrases/caseGrammars.ts";

const parsed = parseDictionary(DICTIONARY_TEXT);
if (!parsed.ok) throw new Error(JSON.stringify(parsed.error));
const dictionary = parsed.value;

const waysOf = (words: string): readonly (readonly number[])[] =>
  words
    .split(" ")
    .reduce<readonly (readonly number[])[]>(
      (starts, word) => starts.flatMap((start) => (dictionary.get(word) ?? []).map((way) => [...start, ...way])),
      [[]],
    );

/** Of the two ways to say them that are nearest. */
const apart = (one: string, other: string): number =>
  Math.min(...waysOf(one).flatMap((a) => waysOf(other).map((b) => phonesApart(a, b))));

const NUMBERS =
  "zero oh one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen " +
  "eighteen nineteen twenty thirty forty fifty sixty seventy eighty ninety hundred thousand";
const TEEN_TY =
  "thirteen thirty|fourteen forty|fifteen fifty|sixteen sixty|seventeen seventy|eighteen eighty|nineteen ninety";

describe("pronunciations", () => {
  // A variant that fits one voice and no accent, or a slip of the pen, lies far from every other way to say the word.
  it("of one word are all near one another", () => {
    const SHORT = new Set(["a", "are", "four", "for"]);
    for (const [word, ways] of dictionary) {
      if (ways.length === 1 || SHORT.has(word)) continue;
      for (const way of ways) {
        const nearest = Math.min(
          ...ways.filter((w) => w !== way).map((w) => phonesApart(way, w) / Math.max(way.length, w.length)),
        );
        expect(nearest, `${word} ${way.join(" ")}`).toBeLessThan(0.3);
      }
    }
  });

  it("are no other word's, but for words that are homophones in every accent", () => {
    const words = new Map<string, string[]>();
    for (const [word, ways] of dictionary) {
      for (const way of ways) words.set(way.join(), [...(words.get(way.join()) ?? []), word]);
    }
    const shared = [...words.values()].filter((same) => same.length > 1).map((same) => same.sort().join(" "));
    // "For" stands only before a weight with its unit, where no number can end.
    expect(shared.sort()).toEqual(["eye i", "for four", "o oh", "to two"]);
  });

  it("of an accent bring no two numbers nearer than they are for everybody", () => {
    const numbers = NUMBERS.split(" ");
    const near = numbers.flatMap((one, i) =>
      numbers.slice(i + 1).flatMap((other) => (apart(one, other) < 0.95 ? [`${one} ${other}`] : [])),
    );
    expect(near.sort()).toEqual([...TEEN_TY.split("|"), "seven seventy", "eight eighty"].sort());
    for (const pair of near) expect(apart(...(pair.split(" ") as [string, string])), pair).toBeGreaterThanOrEqual(0.59);
  });

  // "Ninety 'n' " with a lone n for "and" would be "nineteen".
  it.each([
    ["ninety and", "nineteen"],
    ["seventy and", "seventeen"],
    ["thirty and", "thirteen"],
    ["forty and", "fourteen"],
  ])("%s is not %s", (one, other) => expect(apart(one, other)).toBeGreaterThanOrEqual(0.59));
});
