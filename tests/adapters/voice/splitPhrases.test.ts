import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { splitPhrases } from "../../../src/adapters/voice/splitPhrases.ts";

const LONG =
  "Waveform capnograph showing a trace, suction on and within reach, second suction ready, tube and smaller tube, cuff tested.";

const ROWS: readonly [text: string, phrases: readonly string[]][] = [
  ["Two minutes old.", ["Two minutes old."]],
  ["CPP under sixty. Two minutes old.", ["CPP under sixty.", "Two minutes old."]],
  ["Temp 36.5, rate 1:05.", ["Temp 36.5, rate 1:05."]],
  ["Fifteen, one five?", ["Fifteen, one five?"]],
  [
    LONG,
    [
      "Waveform capnograph showing a trace,",
      "suction on and within reach,",
      "second suction ready,",
      "tube and smaller tube,",
      "cuff tested.",
    ],
  ],
  ["no mark at the end", ["no mark at the end"]],
  ["… ! . ,", []],
  ["", []],
];

describe("splitPhrases", () => {
  it.each(ROWS)("splits %j", (text, phrases) => {
    expect(splitPhrases(text).map((phrase) => phrase.text)).toEqual(phrases);
  });

  it("pauses between phrases, longer at a stop, and not after the last", () => {
    expect(splitPhrases("One. Two.").map((phrase) => phrase.pauseAfterMs)).toEqual([150, 0]);
    expect(splitPhrases(LONG).map((phrase) => phrase.pauseAfterMs)).toEqual([100, 100, 100, 100, 0]);
  });

  it("loses no word and keeps their order", () => {
    const word = fc.constantFrom("MAP", "77", "36.5", "under", "sixty,", "old.", "who?", "then;");
    fc.assert(
      fc.property(fc.array(word, { maxLength: 60 }), (words) => {
        const said = splitPhrases(words.join(" ")).flatMap((phrase) => phrase.text.split(" "));
        expect(said).toEqual(words);
      }),
    );
  });
});
