import { describe, expect, it } from "vitest";
import { ANSWER_CASES } from "./answerRows.ts";
import { CASES } from "./caseRows.ts";
import { DRUG_AND_WHY_CASES } from "./drugAndWhyRows.ts";
import { PATIENT_CASES } from "./patientRows.ts";
import { REPAIR_CASES } from "./repairRows.ts";
import { playCase, shortFacts } from "./playCase.ts";

/** A line may set the clock of the case; that is not heard. */
const CLOCK = /^\[\d+:\d\d\] /u;

describe("cases, line by line", () => {
  it.each(Object.entries({ ...CASES, ...ANSWER_CASES, ...PATIENT_CASES, ...DRUG_AND_WHY_CASES, ...REPAIR_CASES }))(
    "%s",
    async (_name, rows) => {
      const { answers } = await playCase(rows.map(([said]) => said));
      const played = answers.map((a) => [a.heard, a.outcome, shortFacts(a.facts), a.reply]);
      expect(played).toEqual(rows.map(([said, ...rest]) => [said.replace(CLOCK, ""), ...rest]));
    },
  );
});
