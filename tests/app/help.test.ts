import { describe, expect, it } from "vitest";
import { playCase } from "./playCase.ts";

const PATIENT = ["height one seventy eight centimetres, sex male"];

/** After these lines, what can be said is: */
const ROWS: readonly (readonly [lines: readonly string[], answer: RegExp])[] = [
  [
    [],
    /^Say a reading, such as one ten over sixty\..* Ask what can I say about drugs, the list, the airway, clocks, alerts, or readings\.$/,
  ],
  [["i c p fifteen"], /^Affirm, negative, or the digits\./],
  [[...PATIENT, "ketamine"], /^Say it as on the label, such as ten milligrams per mil\. Or negative\.$/],
  [["make push dose adrenaline"], /^Say it as on the label/],
  [["rocuronium fifty given"], /^Affirm, or negative\.$/],
  [["ketamine given"], /^Say the number with its unit\. Or negative\.$/],
  [["start noradrenaline at one hundred"], /^Say the number with its unit\. Or negative\.$/],
  [["killer items", "later", "done"], /^Say the number\. Or negative\.$/],
];

describe("what can I say", () => {
  it.each(ROWS)("after %j", async (lines, answer) => {
    const { answers } = await playCase([...lines, "what can i say"]);
    expect(answers.at(-1)?.reply).toMatch(answer);
  });
});
