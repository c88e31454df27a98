import { describe, expect, it } from "vitest";
import { normalise } from "../../src/language/normalise/normalise.ts";
import { understand } from "../../src/language/understand/understand.ts";
import { compiled } from "./caseGrammars.ts";
import { CARE_ASKED_ROWS, CARE_ROWS } from "./careRows.ts";
import { CAUSE_ROWS } from "./causeRows.ts";
import { ASKED_ROWS, CONTROL_ROWS } from "./controlRows.ts";
import { AFTER_ROWS, COURSE_ROWS } from "./courseRows.ts";
import { DRUG_AND_WHY_ROWS } from "./drugAndWhyRows.ts";
import { meantText } from "./meantText.ts";
import { NEURO_AND_BODY_ROWS } from "./neuroAndBodyRows.ts";
import { NOT_UNDERSTOOD } from "./notUnderstoodRows.ts";
import { PREPARATION_ROWS } from "./preparationRows.ts";
import { PRESSURE_ROWS } from "./pressureRows.ts";
import { REPAIR_ROWS } from "./repairRows.ts";
import type { Row } from "./row.ts";
import { STRIKE_ROWS } from "./strikeRows.ts";
import { TALK_ROWS } from "./talkRows.ts";
import { VITAL_ROWS } from "./vitalRows.ts";

const open = compiled("case", "open");
const asked = compiled("case", "asked");
const openAfter = compiled("case", "openAfter");
const askedAfter = compiled("case", "askedAfter");
const meantIn = (grammar: typeof open, said: string) => meantText(understand(grammar, normalise(said)));

const FAMILIES: readonly (readonly [string, readonly Row[]])[] = [
  ["pressures", PRESSURE_ROWS],
  ["vitals", VITAL_ROWS],
  ["neurology and body", NEURO_AND_BODY_ROWS],
  ["cause and herniation", CAUSE_ROWS],
  ["control", CONTROL_ROWS],
  ["preparation", PREPARATION_ROWS],
  ["drugs and reasons", DRUG_AND_WHY_ROWS],
  ["repairs", REPAIR_ROWS],
  ["care", CARE_ROWS],
  ["course", COURSE_ROWS],
  ["the voice itself", TALK_ROWS],
  ["entries struck later, handover", STRIKE_ROWS],
];

describe.each(FAMILIES)("%s, no question waiting", (_, rows) => {
  it.each(rows)("%s → %s", (said, meant) => {
    expect(meantIn(open, said)).toBe(meant);
  });
});

describe("everything that is understood in the open still is while a question waits", () => {
  const rows = FAMILIES.flatMap(([, family]) => family).filter(([, meant]) => meant !== "-");
  it.each(rows)("%s → %s", (said, meant) => {
    expect(meantIn(asked, said)).toBe(meant);
  });
});

describe("a question waits", () => {
  it.each([...ASKED_ROWS, ...CARE_ASKED_ROWS])("%s → %s", (said, meant) => {
    expect(meantIn(asked, said)).toBe(meant);
  });
});

describe("the tube is confirmed", () => {
  it.each(AFTER_ROWS)("%s → %s", (said, meant) => {
    expect(meantIn(openAfter, said)).toBe(meant);
  });

  // What is answered by name there are other steps; all else stays as it was.
  const always = FAMILIES.filter(([family]) => family !== "preparation").flatMap(([, rows]) => rows);
  it.each(always)("%s → %s", (said, meant) => {
    expect(meantIn(openAfter, said)).toBe(meant);
  });

  const answers = [...ASKED_ROWS, ...CARE_ASKED_ROWS].filter(([, meant]) => !meant.startsWith("step suction"));
  it.each(answers)("a question waits: %s → %s", (said, meant) => {
    expect(meantIn(askedAfter, said)).toBe(meant);
  });
});

describe.each(Object.entries(NOT_UNDERSTOOD))("not understood: %s", (_, sayings) => {
  it.each(sayings)("%j", (said) => {
    expect(meantIn(open, said)).toBe("-");
  });
});

it("has the promised number of rows", () => {
  const refused = Object.values(NOT_UNDERSTOOD).flat().length;
  const rows = FAMILIES.reduce((n, [, family]) => n + family.length, 0) + ASKED_ROWS.length + refused;
  expect(rows).toBeGreaterThanOrEqual(400);
  expect(refused).toBeGreaterThanOrEqual(80);
});
