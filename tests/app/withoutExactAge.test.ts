import { describe, expect, it } from "vitest";
import { playCase } from "./playCase.ts";

/** What is said, and the reply; the age that stands in the record is 90, which means "over 89". */
const ROWS: readonly (readonly [string, readonly string[], string])[] = [
  ["said with its name", ["age ninety four"], "Age over eighty nine."],
  ["typed in digits", ["age 102"], "Age over eighty nine."],
  [
    "among others",
    ["age ninety five, weight ninety five kilos"],
    "Age over eighty nine, weight ninety five kilograms.",
  ],
  ["corrected", ["age eighty four", "correction nine four"], "Age over eighty nine."],
  [
    "put right later by its name",
    ["age eighty four", "[5:00] correct the age of eighty four to ninety four", "affirm"],
    "Corrected: age over eighty nine.",
  ],
];

describe("an age over 89", () => {
  it.each(ROWS)("%s, is recorded and said as no more than that", async (_what, lines, reply) => {
    const { answers } = await playCase(lines);
    const last = answers.at(-1);
    expect([last?.outcome, last?.reply]).toEqual(["recorded", reply]);
    const kept = JSON.stringify(last?.facts);
    expect(kept).toContain('"value":90');
    expect(kept).not.toMatch(/9[1-9]"|ninety four|10[0-9]|one oh two|age ninety|nine four/u);
  });

  it("can be struck by the number that was said", async () => {
    const { answers } = await playCase(["age ninety four", "strike the age of ninety four"]);
    expect(answers[1]?.reply).toMatch(/^Age over eighty nine, just now\. Strike it\?/u);
    expect(JSON.stringify(answers[1]?.facts)).not.toMatch(/ninety four|9[1-9]"/u);
  });

  it("of eighty nine is told exactly, and one that nobody has is asked about as it was said", async () => {
    const { answers } = await playCase(["age eighty nine", "age one hundred and fifty"]);
    expect(answers[0]?.facts).toMatchObject([{ value: 89 }]);
    expect(answers[1]?.outcome).not.toBe("recorded");
  });
});
