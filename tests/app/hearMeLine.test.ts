import { describe, expect, it } from "vitest";
import { judgeLine } from "../../src/app/hearMeLine.ts";
import { HEAR_ME_LINES } from "../../src/app/hearMeLines.ts";
import type { Utterance } from "../../src/app/ports.ts";
import { normalise } from "../../src/language/normalise/normalise.ts";
import { understand } from "../../src/language/understand/understand.ts";
import { testContext } from "./playCase.ts";

const { grammars } = testContext();
const SHAPE = { lengthMs: 2_000, levelDb: -30, noiseDb: -60, clipped: false };
const heard = (...candidates: readonly (readonly [words: string, score: number])[]): Utterance => ({
  by: "listener",
  candidates: candidates.map(([words, score]) => ({ words, score })),
  free: { score: 0, phones: 20 },
  shape: SHAPE,
  endedAtMs: 0,
});

describe("the lines", () => {
  it.each(HEAR_ME_LINES)("%s: one value of one meaning in open listening", (line) => {
    const meaning = understand(grammars.of("open"), normalise(line));
    expect(meaning).toMatchObject({ kind: "one", intent: { kind: "vitals", correction: false, doubtful: false } });
  });

  it("hold every digit from one to nine, alone or in its ten or teen", () => {
    const all = HEAR_ME_LINES.join(" ");
    const sounds = ["one", "two", "three", "four", "fi(ve|f)", "six", "seven", "eight", "nine"];
    for (const sound of sounds) expect(all).toMatch(new RegExp(`\\b${sound}`));
    for (const pair of ["fifteen", "fifty", "oh", "rate", "weight", "point"]) expect(all.split(" ")).toContain(pair);
  });
});

const LINE = "sats ninety three";
const ROWS: readonly (readonly [name: string, utterance: Utterance, outcome: string])[] = [
  ["the line", heard(["sats ninety three", 0]), "right"],
  ["the same in other words", heard(["saturation nine three", 0]), "right"],
  ["the line and another value level", heard(["sats ninety three", 0], ["sats ninety two", -0.5]), "unsure"],
  ["another value, the line near", heard(["sats ninety two", 0], ["sats ninety three", -0.5]), "unsure"],
  ["another value", heard(["sats ninety two", 0]), "wrong"],
  ["another vital", heard(["rate ninety three", 0]), "wrong"],
  ["talk", heard(["sats ninety three", -400]), "missed"],
  ["nothing in the language", heard(), "missed"],
];

describe("what was heard against a line", () => {
  it.each(ROWS)("%s", (_name, utterance, outcome) => {
    expect(judgeLine(grammars, LINE, utterance)).toMatchObject({ kind: "line", outcome });
  });

  it("is measured: margin, the speech without its background, the background", () => {
    const judged = judgeLine(grammars, LINE, heard(["sats ninety three", -4]));
    expect(judged).toMatchObject({ measure: { noiseDb: -60 } });
    // −30 dB with −60 dB in it: the speech alone is 0.004 dB less.
    expect(judged.kind === "line" && judged.measure?.speechDb).toBeCloseTo(-30.004, 3);
  });

  it.each(["stop", "not now"])("%s is the command that ends it", (words) => {
    expect(judgeLine(grammars, LINE, heard([words, 0]))).toEqual({ kind: "command", command: "notNow" });
  });

  it("is nothing when our own voice sounded, and without a measure from another recogniser", () => {
    expect(judgeLine(grammars, LINE, { ...heard(["stop", 0]), overlapped: true })).toEqual({ kind: "ownVoice" });
    const text: Utterance = { by: "browser", candidates: [{ words: LINE, score: 0 }], endedAtMs: 0 };
    expect(judgeLine(grammars, LINE, text)).toEqual({ kind: "unmeasured" });
  });
});
