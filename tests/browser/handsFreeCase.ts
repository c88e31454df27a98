import type { Fact } from "../../src/log/facts.ts";

/** What is said, what must then stand in the record, and what the app may ask back before it does. */
export type SpokenStep = readonly [said: string, stands: (facts: readonly Fact[]) => boolean, readBack: RegExp];

const vital = (code: string, value: number) => (facts: readonly Fact[]) =>
  facts.some((f) => f.type === "vital.recorded" && f.code === code && f.value === value);
const all =
  (...parts: readonly ((facts: readonly Fact[]) => boolean)[]) =>
  (facts: readonly Fact[]) =>
    parts.every((part) => part(facts));
const man = (facts: readonly Fact[]) => facts.some((f) => f.type === "sex.recorded" && f.sex === "male");
const strength = (drugId: string) => (facts: readonly Fact[]) =>
  facts.some((f) => f.type === "strength.affirmed" && f.drugId === drugId);
const given = (drugId: string, mg: number) => (facts: readonly Fact[]) =>
  facts.some((f) => f.type === "drug.given" && f.drugId === drugId && f.amount.value === mg && f.amount.unit === "mg");
const step = (stepId: string) => (facts: readonly Fact[]) =>
  facts.some((f) => f.type === "step.answered" && f.stepId === stepId && f.answer === "done");
const airway = (event: string) => (facts: readonly Fact[]) =>
  facts.some((f) => f.type === "airway.event" && f.event === event);

/**
 * Invented: the case of `tests/cases/hands-free.txt`, from the first look at the patient to the tube and the sedation after
 * it. A test holds the two together.
 */
export const HANDS_FREE_CASE: readonly SpokenStep[] = [
  // Doses need the sex too: "thirty four year old" alone is half of it.
  ["thirty four year old man", all(vital("age", 34), man), /thirty four/i],
  ["weight eighty kilos", vital("weight", 80), /weight eighty/i],
  ["height one seventy eight", vital("height", 178), /height one seventy eight/i],
  ["one twenty six over seventy four", all(vital("sbp", 126), vital("dbp", 74)), /one twenty six/i],
  ["heart rate ninety two", vital("hr", 92), /heart rate ninety two/i],
  ["sats ninety seven", vital("spo2", 97), /sats ninety seven/i],
  [
    "eyes two verbal two motor four",
    all(vital("gcsEye", 2), vital("gcsVerbal", 2), vital("gcsMotor", 4)),
    /eyes two|verbal two|motor four/i,
  ],
  ["both pupils four brisk", all(vital("pupilLeft", 4), vital("pupilRight", 4)), /pupil four brisk/i],
  ["oxygen running", (facts) => facts.some((f) => f.type === "clock.started"), /oxygen running/i],
  ["ketamine fifty milligrams per mil", strength("ketamine"), /^ketamine, fifty, five zero, milligrams in one milli/i],
  ["rocuronium ten milligrams per mil", strength("rocuronium"), /^rocuronium, ten, one zero, milligrams in one milli/i],
  [
    "phenylephrine ten milligrams in one hundred",
    strength("phenylephrine"),
    /^phenylephrine, ten, one zero, milligrams in one hundred, one zero zero, milli/i,
  ],
  ["capnograph ready", step("capnograph"), /capnograph/i],
  ["plan agreed", step("failurePlan"), /failure plan|plan agreed/i],
  // 1.5 mg/kg of the ideal weight 73.2 kg, as the syringe of 50 mg/mL shows it; 1.2 mg/kg at 10 mg/mL.
  ["ketamine given", given("ketamine", 110), /^ketamine, one ten, one one zero, milligrams, given/i],
  ["rocuronium given", given("rocuronium", 88), /^rocuronium, eighty eight, eight eight, milligrams, given/i],
  ["blade in", airway("bladeIn"), /blade in/i],
  ["tube in", airway("tubeIn"), /tube in/i],
  ["end tidal thirty six", vital("etco2", 36), /end tidal thirty six/i],
  ["tube confirmed", airway("tubeConfirmed"), /tube confirmed/i],
  ["tube depth twenty three centimetres", step("tubeDepth"), /tube depth/i],
  ["propofol ten milligrams per mil", strength("propofol"), /^propofol, ten, one zero, milligrams in one milli/i],
  [
    "start propofol at twenty micrograms per kilo per minute",
    (facts) => facts.some((f) => f.type === "infusion.set" && f.drugId === "propofol" && f.rate.value === 20),
    /^propofol, twenty, two zero, micrograms per kilo per minute/i,
  ],
  ["correct the end tidal to thirty eight", vital("etco2", 38), /thirty six, .*Correct to end tidal thirty eight/i],
];

/** Said after all of it. It leaves nothing in the record. */
export const LAST_SAID = "handover short";
