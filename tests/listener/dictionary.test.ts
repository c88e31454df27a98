import { describe, expect, it } from "vitest";
import { parseDictionary } from "../../src/listener/dictionary.ts";
import { OUTPUT_NAMES, PHONE_NUMBERS } from "../../src/listener/phones.ts";

const shown = (text: string) => {
  const result = parseDictionary(text);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return [...result.value].map(([word, all]) => [word, all.map((p) => p.map((n) => OUTPUT_NAMES[n]).join(" "))]);
};

describe("parseDictionary", () => {
  it.each<[text: string, entries: unknown]>([
    ["one W AH N", [["one", ["W AH N"]]]],
    ["one  W AH1 N\r\n", [["one", ["W AH N"]]]],
    ["ONE w ah n", [["one", ["W AH N"]]]],
    ["a AH\na(2) EY", [["a", ["AH", "EY"]]]],
    ["a AH\na EY\na AH0", [["a", ["AH", "EY"]]]],
    ["# head\n;; old style\n\none W AH N # said so", [["one", ["W AH N"]]]],
    ["it's IH T S", [["it's", ["IH T S"]]]],
    ["", []],
  ])("reads %j", (text, entries) => {
    expect(shown(text)).toEqual(entries);
  });

  it.each([
    ["one W AH N\ntwo", 2, "two has no phones"],
    ["one W UH2 NN", 1, "NN is not a phone"],
    ["one W <blank>", 1, "<blank> is not a phone"],
    ["\n\n2nd S EH", 3, "2nd is not a word"],
  ])("refuses %j on line %i", (text, line, message) => {
    const result = parseDictionary(text);
    expect(result).toMatchObject({ ok: false, error: { line } });
    expect(!result.ok && result.error.message).toContain(message);
  });
});

it("knows the network's 39 phones, numbered from 1", () => {
  expect(OUTPUT_NAMES).toHaveLength(40);
  expect(PHONE_NUMBERS.size).toBe(39);
  expect([PHONE_NUMBERS.get("AA"), PHONE_NUMBERS.get("ZH"), PHONE_NUMBERS.get("<blank>")]).toEqual([1, 39, undefined]);
});
