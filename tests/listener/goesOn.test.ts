import { describe, expect, test } from "vitest";
import { goesOn } from "../../src/listener/goesOn.ts";
import type { Candidate } from "../../src/listener/search.ts";

const FREE = { score: -10, phones: 10 };
const nothingUnfinished = (followers: string) => ({ followers: new Set(followers.split(" ")), unfinished: undefined });
const said = (words: string, score = -11): readonly Candidate[] => [{ words, score }];

describe("a whole sentence", () => {
  test.each([
    ["systolic one hundred", "and one two twenty over", "may"],
    ["one twenty over eighty", "one two nine and heart", "may"],
    ["glucose five", "point and sats", "may"],
    ["temp thirty seven", "point decimal degrees", "may"],
    ["rate one one", "zero five", "may"],
    ["pressure one twenty", "over", "may"],
    // The follower begins another sentence; apart they mean the same.
    ["sats ninety four", "one nine and heart percent", "no"],
    ["i c p fifteen", "one and rate", "no"],
    ["sats one hundred", "and heart percent", "no"],
    ["sats ninety", "and heart percent", "no"],
    ["blood pressure", "one two", "no"],
    ["say again", "", "no"],
  ])("%s, and then %s: %s", (words, followers, expected) => {
    expect(goesOn(said(words), nothingUnfinished(followers), FREE)).toBe(expected);
  });
});

describe("half a sentence", () => {
  const half = (score: number) => ({
    followers: new Set<string>(),
    unfinished: { words: "one twenty over", score },
  });

  test.each([
    ["far ahead of every whole one", said("one twenty two", -40), -11, "must"],
    ["there is no whole one", [], -11, "must"],
    ["hardly ahead of a whole one", said("sats ninety four", -12), -11, "no"],
    ["no sentence of ours at all", [], -30, "no"],
  ])("%s", (_, candidates, score, expected) => {
    expect(goesOn(candidates, half(score), FREE)).toBe(expected);
  });
});
