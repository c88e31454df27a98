import { expect, test } from "vitest";
import { wordsAfter } from "../../src/listener/wordsAfter.ts";
import { phoneGraphOf } from "./vectors.ts";

test.each([
  ["one hundred", ["and", "twenty", "five"], ["hundred"]],
  ["twenty", ["one", "nine"], ["twenty", "eleven"]],
])("after '%s' may follow %j but not %j", (words, may, mayNot) => {
  const followers = wordsAfter(phoneGraphOf("num"), words);
  for (const word of may) expect(followers.has(word), word).toBe(true);
  for (const word of mayNot) expect(followers.has(word), word).toBe(false);
});

test.each([undefined, "", "hundred nonsense", "tomato"])("nothing follows %j", (words) => {
  expect(wordsAfter(phoneGraphOf("num"), words).size).toBe(0);
});
