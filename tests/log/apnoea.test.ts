import { describe, expect, it } from "vitest";
import { selectApnoea } from "../../src/log/apnoea.ts";
import type { AirwayEvent } from "../../src/log/careFacts.ts";
import type { NewFact } from "../../src/log/facts.ts";
import { CaseBuilder } from "./caseBuilder.ts";

const SAID = { heard: "as said", by: "typed" } as const;
const airway = (event: AirwayEvent): NewFact => ({ type: "airway.event", event, ...SAID });
const clock = (type: "clock.started" | "clock.stopped"): NewFact => ({ type, clock: "apnoea", ...SAID });
const given = (drugClass: "induction" | "muscleRelaxant"): NewFact => ({
  type: "drug.given",
  drugId: drugClass,
  drugClass,
  amount: { value: 100, unit: "mg" },
  ...SAID,
});
const RELAXED = given("muscleRelaxant");

/** Facts ten seconds apart, and since which of them the patient does not breathe. */
const ROWS: readonly (readonly [string, readonly NewFact[], number | undefined])[] = [
  ["nothing was given", [airway("bladeIn")], undefined],
  ["induction alone", [given("induction")], undefined],
  ["from the paralytic", [given("induction"), RELAXED, airway("bladeIn")], 10],
  ["from the first of two", [RELAXED, RELAXED], 0],
  ["over with the blade out: the mask ventilates", [RELAXED, airway("bladeIn"), airway("out")], undefined],
  ["again from the next blade", [RELAXED, airway("bladeIn"), airway("out"), airway("bladeIn")], 30],
  ["a tube in is not yet a breath", [RELAXED, airway("bladeIn"), airway("tubeIn")], 0],
  ["over when the tube is confirmed", [RELAXED, airway("tubeIn"), airway("tubeConfirmed")], undefined],
  ["again when the tube comes out", [RELAXED, airway("tubeIn"), airway("tubeConfirmed"), airway("tubeOut")], 30],
  ["as called, without a drug", [clock("clock.started")], 0],
  ["called over", [RELAXED, clock("clock.stopped")], undefined],
];

describe("apnoea", () => {
  it.each(ROWS)("%s", (_what, facts, sinceS) => {
    const b = new CaseBuilder();
    facts.forEach((fact, i) => b.at(i * 10).add(fact));
    const startMs = new CaseBuilder().at(0).nowMs;
    const apnoea = selectApnoea(b.state);
    expect(apnoea && (apnoea.atMs - startMs) / 1000).toBe(sinceS);
  });
});
