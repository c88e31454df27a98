import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import "../propertySeed.ts";
import type { Flite } from "../../src/adapters/voice/synthesise.ts";
import { totalS } from "../../src/language/sentences/handoverParts.ts";
import { HANDOVER_STRUCTURES } from "../../src/protocol/handoverStructures.ts";
import { infusionEnds } from "../../src/rules/infusionEnd.ts";
import { HandoverCase } from "./handoverCase.ts";
import { loadVoice, secondsOf } from "./handoverSeconds.ts";
import { testContext } from "./playCase.ts";

const WHOLE_S = 30;
const SHORT_S = 12;

/** Each may be said or not; all invented. */
const PATIENT = [
  "thirty eight year old woman",
  "weight seventy five kilos",
  "cause head injury",
  "temp thirty six point five",
];
const FOUND = [
  "both pupils four brisk",
  "left pupil seven fixed",
  "eyes one verbal one motor two",
  "herniation suspected",
];
const LATER = [
  "icp three two",
  "end tidal thirty three",
  "glucose seven point five",
  "tube depth twenty three centimetres",
];
const GIVEN = [
  "ketamine one hundred and fifty milligrams given",
  "rocuronium one hundred and eighteen milligrams given",
  "fentanyl one hundred and fifteen micrograms given",
  "three percent saline two hundred and fifty given",
  "tranexamic acid one gram given",
  "saline five hundred given",
];
const AIRWAY = ["blade in", "out", "blade in", "tube in", "tube confirmed"];
/** Concentration and rate, by drug. */
const INFUSIONS: Readonly<Record<string, readonly [string, string]>> = {
  noradrenaline: ["noradrenaline four milligrams in two fifty", "start noradrenaline at point one five"],
  propofol: ["propofol ten milligrams per mil", "start propofol at fifty micrograms per kilo per minute"],
  vasopressin: ["vasopressin twenty units in fifty", "start vasopressin at two units per hour"],
  phenylephrine: ["phenylephrine ten milligrams in one hundred", "start phenylephrine at fifty micrograms per minute"],
  midazolam: ["midazolam fifty milligrams in fifty", "start midazolam at five milligrams per hour"],
  fentanyl: ["fentanyl five hundred micrograms in fifty", "start fentanyl at one hundred micrograms per hour"],
  adrenaline: ["adrenaline four milligrams in two fifty", "start adrenaline at point one"],
};

const affirmed = (lines: readonly string[]): readonly string[] => lines.flatMap((line) => [line, "affirm"]);
const pressure = fc
  .tuple(fc.integer({ min: 60, max: 140 }), fc.integer({ min: 20, max: 50 }))
  .map(([sbp, less]) => `${sbp}/${sbp - less}`);

const stuffed = (infusionsMost: number): fc.Arbitrary<readonly string[]> =>
  fc
    .record({
      patient: fc.subarray(PATIENT),
      found: fc.subarray(FOUND),
      pressures: fc.array(pressure, { minLength: 1, maxLength: 6 }),
      given: fc.subarray(GIVEN),
      airway: fc.subarray(AIRWAY),
      infusions: fc.subarray(Object.keys(INFUSIONS), { minLength: 1, maxLength: infusionsMost }),
      later: fc.subarray(LATER),
      unaffirmed: fc.subarray(["phenylephrine one hundred micrograms given", "blood two fifty given"]),
    })
    .map(({ patient, found, pressures, given, airway, infusions, later, unaffirmed }) => {
      const [first = "", ...others] = pressures;
      return [
        ...affirmed(patient),
        first,
        ...affirmed(found),
        ...unaffirmed,
        "[2:00] sats ninety four",
        ...others.map((words, i) => `[${3 + i}:00] ${words}`),
        ...affirmed(given),
        ...airway,
        ...infusions.flatMap((drug) => affirmed(INFUSIONS[drug] ?? [])),
        ...later.flatMap((line, i) => [`[${9 + 2 * i}:00] ${line}`]),
      ];
    });

const context = testContext();
const caseOf = (lines: readonly string[], structure: (typeof HANDOVER_STRUCTURES)[number]): HandoverCase => {
  const { protocol } = context;
  const handover = { structure: { ...protocol.handover.structure, value: structure } };
  return new HandoverCase(lines, { ...context, protocol: { ...protocol, handover } });
};

/** Each infusion that runs is told with its rate, and with the time at which it is empty where that is known. */
function expectInfusions(told: HandoverCase): void {
  const { state, handover, nowMs } = told;
  const ends = infusionEnds(state.log, context.protocol, nowMs);
  for (const [drugId, { rate }] of Object.entries(state.log.care.infusions)) {
    if (rate.value === 0) continue;
    const text = handover.find(({ key }) => key === `infusion ${drugId}`)?.text ?? "";
    expect(text).toMatch(/ per (?:hour|minute)/u);
    if (ends.some((end) => end.drugId === drugId)) expect(text).toContain("empty");
  }
}

const isLow = ({ key }: { readonly key: string }): boolean => key.startsWith("low");

describe("the handover of any stuffed case", () => {
  let flite: Flite;
  beforeAll(async () => {
    flite = await loadVoice();
  });

  it("tells the lowest first and all that runs within 30 seconds, and says where more is to be had", () => {
    fc.assert(
      fc.property(stuffed(4), fc.constantFrom(...HANDOVER_STRUCTURES), (lines, structure) => {
        const told = caseOf(lines, structure);
        told.parts("handover all");
        const all = told.handover.map(({ key }) => key);
        told.parts("handover");
        expect(isLow(told.handover[0] ?? { key: "" })).toBe(true);
        expect(told.handover.filter(isLow).map(({ key }) => key)).toEqual(all.filter((key) => isLow({ key })));
        expectInfusions(told);
        expect(totalS(told.handover)).toBeLessThanOrEqual(WHOLE_S);
        const isWhole = all.every((key) => told.handover.some((part) => part.key === key && part.level === 0));
        expect(told.handover.at(-1)?.text === "More on the screen: say go on.").toBe(!isWhole);
      }),
      { numRuns: 20 },
    );
  });

  it("rather lasts longer than that it leaves out one of more than four that run", () => {
    fc.assert(
      fc.property(stuffed(7), fc.constantFrom(...HANDOVER_STRUCTURES), (lines, structure) => {
        const told = caseOf(lines, structure);
        told.parts("handover");
        expectInfusions(told);
      }),
      { numRuns: 6 },
    );
  });

  it("in short tells the lowest first, and by name or number what runs, within 12 seconds", () => {
    fc.assert(
      fc.property(stuffed(7), fc.constantFrom(...HANDOVER_STRUCTURES), (lines, structure) => {
        const told = caseOf(lines, structure);
        told.parts("handover short");
        expect(isLow(told.handover[0] ?? { key: "" })).toBe(true);
        const running = Object.keys(told.state.log.care.infusions);
        const isCounted = told.handover.some(({ key }) => key === "running");
        const named = told.handover.filter(({ key }) => key.startsWith("infusion "));
        expect(isCounted || named.length === running.length).toBe(true);
        expect(totalS(told.handover)).toBeLessThanOrEqual(SHORT_S);
      }),
      { numRuns: 20 },
    );
  });

  it("lasts in the sound of the built-in voice no longer than that", () => {
    fc.assert(
      fc.property(stuffed(4), fc.constantFrom(...HANDOVER_STRUCTURES), (lines, structure) => {
        const told = caseOf(lines, structure);
        expect(secondsOf(flite, told.sentences("handover"))).toBeLessThanOrEqual(WHOLE_S);
        expect(secondsOf(flite, told.sentences("handover short"))).toBeLessThanOrEqual(SHORT_S);
      }),
      { numRuns: 6 },
    );
  });
});
