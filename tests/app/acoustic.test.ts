import { describe, expect, it } from "vitest";
import type { Utterance } from "../../src/app/ports.ts";
import { leastM1, leastM2 } from "../listener/certainSound.ts";
import { playCase, shortFacts } from "./playCase.ts";

const PHONES = 20;
/** Between asking and taking. */
const NEAR = leastM2("take", "value", PHONES) / 2;
const LOOSE = (leastM1("ask", "value", PHONES) + leastM1("take", "value", PHONES)) / 2;

const heard = (costPerPhone: number, ...paths: readonly (readonly [string, number])[]): Utterance => ({
  by: "listener",
  candidates: paths.map(([words, distance]) => ({ words, score: -50 - distance })),
  free: { score: -50 - costPerPhone * PHONES, phones: PHONES },
  endedAtMs: 0,
});
const clear = (words: string): Utterance => heard(0, [words, 0]);
const between = (best: string, rival: string): Utterance => heard(0, [best, 0], [rival, NEAR]);
const loose = (words: string): Utterance => heard(LOOSE, [words, 0]);
const browser = (words: string): Utterance => ({ by: "browser", candidates: [{ words, score: 0 }], endedAtMs: 0 });

async function played(...said: readonly (string | Utterance)[]) {
  const { answers } = await playCase(said);
  return answers.map((a) => [a.outcome, shortFacts(a.facts), a.reply]);
}

describe("two meanings too close to choose between", () => {
  const asking = between("heart rate eight five", "heart rate nine five");
  const ASKED = ["asked", "asked acoustic", "Heart rate eighty five, or heart rate ninety five?"];

  it.each([
    [between("one twenty over fifty", "one twenty over fifteen"), "Pressure one twenty over fifty?"],
    [between("one twenty over fifteen", "one twenty over fifty"), "Pressure one twenty over fifty?"],
    [between("one twenty over eighty", "one twenty over one eighty"), "Pressure one twenty over eighty?"],
  ])("asks about the one that can be", async (utterance, prompt) => {
    expect((await played(utterance, "affirm")).map(([outcome, , reply]) => [outcome, reply])).toEqual([
      ["asked", prompt],
      ["recorded", expect.stringContaining("Pressure one twenty over")],
    ]);
  });

  it("takes no bare affirm where both could be meant", async () => {
    const almostLevel = leastM2("ask", "value", PHONES) + 0.01;
    const both = heard(0, ["heart rate eight five", 0], ["heart rate nine five", almostLevel]);
    expect(await played(both, "affirm")).toEqual([ASKED, ["refused", "", ASKED[2]]]);
  });

  it("offers findings too", async () => {
    const [first] = await played(between("right pupil fixed", "right pupil six"));
    expect(first).toEqual(["asked", "asked acoustic", "Right pupil fixed, or right pupil six?"]);
    expect(await played(between("right pupil fixed", "right pupil four"), "right pupil four", "affirm")).toEqual([
      ["asked", "asked acoustic", "Right pupil fixed, or right pupil four?"],
      ["recorded", "closed restated, pupilRight 4", "Right pupil four."],
      ["ignored", "", ""],
    ]);
  });

  it("offers causes, and the one that is said again closes the question", async () => {
    const asked = between("cause bleed", "cause unknown");
    expect(await played(asked, clear("cause bleed"), "affirm")).toEqual([
      ["asked", "asked acoustic", "Cause bleed, or cause unknown?"],
      ["recorded", "closed restated, cause bleed", "Cause bleed. Target: systolic one thirty to one fifty."],
      ["ignored", "", ""],
    ]);
  });

  it("asks about a cause or herniation whose sound fits loosely, and takes it on affirm", async () => {
    expect(await played(loose("herniation suspected"), "affirm")).toEqual([
      ["asked", "asked acoustic", "Herniation suspected?"],
      [
        "recorded",
        "closed affirmed, herniation suspected, asked always-confirm",
        "Herniation suspected. Target: end tidal thirty to thirty five. Herniation. Think of pupil drugs, eye injury. Start rescue measures?",
      ],
    ]);
    expect(await played(loose("age six months"), "affirm")).toEqual([
      ["asked", "asked acoustic", "Age six months?"],
      ["recorded", "closed affirmed, age 0.5", expect.stringMatching(/^Age six months\. Targets: /)],
    ]);
  });

  it("a number does not answer a question about a cause", async () => {
    const answers = await played(loose("cause bleed"), "one five", "read back");
    expect(answers.slice(1)).toEqual([
      ["refused", "", "Cause bleed?"],
      ["answered", "", "Nothing recorded yet."],
    ]);
  });

  it("offers both, and takes the one that is said again", async () => {
    expect(await played(asking, clear("heart rate nine five"))).toEqual([
      ASKED,
      ["recorded", "closed restated, hr 95", "Heart rate ninety five."],
    ]);
  });

  it("takes a number of one of them", async () => {
    expect((await played(asking, clear("nine five")))[1]).toEqual([
      "recorded",
      "closed affirmed, hr 95",
      "Heart rate ninety five.",
    ]);
  });

  it.each(["affirm", "yes"])("%s does not say which", async (words) => {
    expect((await played(asking, clear(words)))[1]).toEqual(["refused", "", ASKED[2]]);
  });

  it("records neither on negative", async () => {
    expect((await played(asking, clear("negative")))[1]).toEqual([
      "answered",
      "closed denied",
      "Not recorded. Say it again.",
    ]);
  });

  it("asks again when the answer is in the same doubt", async () => {
    expect((await played(asking, between("heart rate nine five", "heart rate eight five")))[1]?.[0]).toBe("asked");
  });

  it("does not know where a bare number belongs when the vitals differ", async () => {
    const vitals = between("heart rate nine two", "sats nine four");
    expect((await played(vitals, clear("nine three")))[1]?.[0]).toBe("refused");
  });

  it("does not keep half of a pressure that was in doubt as a whole", async () => {
    const pressures = between("one ten over sixty two", "one ten over sixty three");
    expect((await played(pressures, clear("one one two")))[1]?.[0]).toBe("refused");
  });
});

describe("one meaning that fits loosely", () => {
  it.each([
    ["affirm", "recorded", "closed affirmed, hr 85"],
    ["negative", "answered", "closed denied"],
    ["heart rate eight six", "recorded", "closed restated, hr 86"],
  ])("asks, and on %s: %s", async (answer, outcome, facts) => {
    const [first, second] = await played(loose("heart rate eight five"), clear(answer));
    expect(first).toEqual(["asked", "asked acoustic", "Heart rate eighty five?"]);
    expect(second?.slice(0, 2)).toEqual([outcome, facts]);
  });

  it("refuses a loose pressure number as a stand-in for the whole", async () => {
    expect((await played(loose("one ten over sixty two"), clear("one one two")))[1]?.[0]).toBe("refused");
  });

  it.each(["next", "status", "why map", "correction heart rate eight six"])(
    "refuses a loose %s and changes nothing",
    async (words) => {
      expect((await played("heart rate ninety", loose(words), "read back")).slice(1)).toEqual([
        ["refused", "", "Say again."],
        ["answered", "", "Heart rate ninety."],
      ]);
    },
  );

  it.each(["affirm", "negative", "one five"])("refuses a loose %s and leaves the question open", async (words) => {
    expect((await played("icp fifteen", loose(words), "one five")).slice(1)).toEqual([
      ["refused", "", "Say again."],
      ["recorded", "closed affirmed, icp 15", "ICP fifteen, one five."],
    ]);
  });
});

describe("below the thresholds", () => {
  it("ignores what is not in the language", async () => {
    expect(await played(heard(-9, ["heart rate eight five", 0]))).toEqual([["ignored", "", ""]]);
  });
});

describe("digits that a browser wrote", () => {
  it("are asked back as the words that they may have been, while typed digits are not", async () => {
    expect(await played(browser("icp 15"))).toEqual([["asked", "asked sound-alike", "ICP fifteen, one five?"]]);
    expect(await played("icp 15")).toEqual([["recorded", "icp 15", "ICP fifteen, one five."]]);
  });

  it("have no sound-alike where the words cannot be taken for others", async () => {
    expect(await played(browser("icp 22"))).toEqual([["recorded", "icp 22", "ICP twenty two."]]);
  });
});
