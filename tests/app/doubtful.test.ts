import { describe, expect, it } from "vitest";
import type { Utterance } from "../../src/app/ports.ts";
import { playCase, shortFacts } from "./playCase.ts";

/** Heard as clearly as can be. */
const spoken = (words: string): Utterance => ({
  by: "listener",
  candidates: [{ words, score: 0 }],
  free: { score: 0, phones: 12 },
  endedAtMs: 0,
});

/** Words that sound like others with another meaning (a pupil that is wide or fixed brings the question of rescue with it); the confusions are those that the benchmark found. */
const ASKED: readonly (readonly [spoken: string, prompt: string, afterAffirm: string])[] = [
  ["left pupil three reactive", "Left pupil three reactive?", "closed affirmed, pupilLeft 3 reactive"],
  ["left pupil five unreactive", "Left pupil five fixed?", "closed affirmed, pupilLeft 5 fixed, asked always-confirm"],
  ["right pupil fixed", "Right pupil fixed?", "closed affirmed, pupilRight fixed, asked always-confirm"],
  ["right pupil six", "Right pupil six?", "closed affirmed, pupilRight 6, asked always-confirm"],
  // A restart hangs on one short word.
  ["one ten no one twenty over eighty", "Pressure one twenty over eighty?", "closed affirmed, sbp 120, dbp 80"],
  [
    "pressure one ten over correction one twenty over eighty",
    "Pressure one twenty over eighty?",
    "closed affirmed, sbp 120, dbp 80",
  ],
  ["sats ninety correction ninety two", "Sats ninety two?", "closed affirmed, spo2 92"],
  ["rate eighty no rate ninety", "Heart rate ninety?", "closed affirmed, hr 90"],
  ["blood pressure one twenty eighty", "Pressure one twenty over eighty?", "closed affirmed, sbp 120, dbp 80"],
  ["age one zero", "Age ten years?", "closed affirmed, age 10"],
  ["age eight one", "Age eighty one years?", "closed affirmed, age 81"],
  ["weight eighty five", "Weight eighty five kilograms?", "closed affirmed, weight 85"],
  // "Pulse nine three" was heard so.
  ["height nine three", "Height ninety three centimetres?", "closed affirmed, height 93"],
  ["height one fifty four", "Height one fifty four centimetres?", "closed affirmed, height 154"],
  ["rate thirty five", "Heart rate thirty five?", "closed affirmed, hr 35"],
];

describe("words that sound like others", () => {
  it.each(ASKED)("%s, spoken, is asked back", async (words, prompt, afterAffirm) => {
    const { answers } = await playCase([spoken(words), "affirm"]);
    expect(answers[0]).toMatchObject({ outcome: "asked", reply: prompt });
    expect(shortFacts(answers[1]?.facts ?? [])).toBe(afterAffirm);
  });

  it.each(ASKED)("%s, typed, is taken", async (words) => {
    const { answers } = await playCase([words]);
    expect(answers[0]?.outcome).toBe("recorded");
  });

  it.each([
    "left pupil three brisk",
    "right pupil six fixed",
    "one twenty over eighty",
    "age one year",
    "age forty five",
    "age eight one years",
    "weight eighty five kilos",
    "height one seventy eight centimetres",
    "height six eight inches",
    "sats nine zero",
    "rate forty",
    "heart rate thirty five",
    "resp rate twenty two",
  ])("%s, spoken, is taken", async (words) => {
    const { answers } = await playCase([spoken(words)]);
    expect(answers[0]?.outcome).toBe("recorded");
  });

  it.each(["i c p niner", "i c p nine oh", "weight niner kilos", "end tidal nine oh", "age niner"])(
    "%s: nine or ninety?",
    async (words) => {
      const { answers } = await playCase([spoken(words)]);
      expect(answers[0]?.outcome).toBe("asked");
    },
  );

  it("denied, it is not recorded", async () => {
    const { answers } = await playCase([spoken("right pupil fixed"), "negative", "read back"]);
    expect(answers[2]?.reply).toBe("Nothing recorded yet.");
  });
});
