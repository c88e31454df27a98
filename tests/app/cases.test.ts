import { describe, expect, it } from "vitest";
import { ANSWER_CASES } from "./answerRows.ts";
import { ASKED_CASES } from "./askedRows.ts";
import { CASES } from "./caseRows.ts";
import { COURSE_CASES } from "./courseRows.ts";
import { DILUTION_CASES } from "./dilutionRows.ts";
import { DRUG_AND_WHY_CASES } from "./drugAndWhyRows.ts";
import { DRUG_VOLUME_CASES } from "./drugVolumeRows.ts";
import { FLUID_AND_OXYGEN_CASES } from "./fluidAndOxygenRows.ts";
import { GIVEN_MORE_CASES } from "./givenMoreRows.ts";
import { GIVEN_CASES } from "./givenRows.ts";
import { HOW_MUCH_CASES } from "./howMuchRows.ts";
import { INFUSION_CHANGE_CASES } from "./infusionChangeRows.ts";
import { INFUSION_TABLE_CASES } from "./infusionTableRows.ts";
import { STRENGTH_CASES } from "./strengthRows.ts";
import { FAILED_AIRWAY_CASES } from "./failedAirwayRows.ts";
import { LIST_CASES } from "./listRows.ts";
import { PATIENT_CASES } from "./patientRows.ts";
import { REPAIR_CASES } from "./repairRows.ts";
import { STEP_ANSWER_CASES } from "./stepAnswerRows.ts";
import { TALK_CASES } from "./talkRows.ts";
import { playCase, shortFacts } from "./playCase.ts";

/** A line may set the clock of the case; that is not heard. */
const CLOCK = /^\[\d+:\d\d\] /u;

describe("cases, line by line", () => {
  it.each(
    [
      CASES,
      ANSWER_CASES,
      PATIENT_CASES,
      DRUG_AND_WHY_CASES,
      REPAIR_CASES,
      DRUG_VOLUME_CASES,
      STRENGTH_CASES,
      GIVEN_CASES,
      GIVEN_MORE_CASES,
      HOW_MUCH_CASES,
      INFUSION_TABLE_CASES,
      INFUSION_CHANGE_CASES,
      DILUTION_CASES,
      FLUID_AND_OXYGEN_CASES,
      LIST_CASES,
      FAILED_AIRWAY_CASES,
      STEP_ANSWER_CASES,
      COURSE_CASES,
      TALK_CASES,
      ASKED_CASES,
    ].flatMap((cases) => Object.entries(cases)),
  )("%s", async (_name, rows) => {
    const { answers } = await playCase(rows.map(([said]) => said));
    const played = answers.map((a) => [a.heard, a.outcome, shortFacts(a.facts), a.reply]);
    expect(played).toEqual(rows.map(([said, ...rest]) => [said.replace(CLOCK, ""), ...rest]));
  });
});
