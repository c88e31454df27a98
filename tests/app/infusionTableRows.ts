import type { Row } from "./caseRows.ts";

/** The table of infusion rates of the reference dossier, section 5.2, end to end. Invented cases. */
export const INFUSION_TABLE_CASES: Readonly<Record<string, readonly Row[]>> = {
  "0.1 microgram/kg/min, 80 kg, 16 micrograms/mL: 30 mL/h": [
    ["weight eight zero kilos", "recorded", "weight 80", "Weight eighty, eight zero, kilograms."],
    [
      "noradrenaline four milligrams in two fifty",
      "asked",
      "asked always-confirm",
      "Noradrenaline, four milligrams in two fifty, two five zero, millilitres?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, strength noradrenaline 4 mg in 250",
      "Noradrenaline four milligrams in two fifty millilitres. Start zero point zero five micrograms per kilo per minute, fifteen, one five, millilitres per hour.",
    ],
    [
      "start noradrenaline at point one",
      "asked",
      "asked always-confirm",
      "Noradrenaline, zero point one micrograms per kilo per minute, thirty, three zero, millilitres per hour?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, infusion noradrenaline 0.1 mcg/kg/min",
      "Noradrenaline zero point one micrograms per kilo per minute, thirty millilitres per hour. Bag empty in eight hours twenty.",
    ],
  ],
  "the same, 4 mg in 50 mL: 6 mL/h": [
    ["weight eight zero kilos", "recorded", "weight 80", "Weight eighty, eight zero, kilograms."],
    [
      "noradrenaline four milligrams in fifty",
      "asked",
      "asked always-confirm",
      "Noradrenaline, four milligrams in fifty, five zero, millilitres?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, strength noradrenaline 4 mg in 50",
      "Noradrenaline four milligrams in fifty millilitres. Start zero point zero five micrograms per kilo per minute, three millilitres per hour.",
    ],
    [
      "start noradrenaline at point one micrograms per kilo per minute",
      "asked",
      "asked always-confirm",
      "Noradrenaline, zero point one micrograms per kilo per minute, six millilitres per hour?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, infusion noradrenaline 0.1 mcg/kg/min",
      "Noradrenaline zero point one micrograms per kilo per minute, six millilitres per hour. Bag empty in eight hours twenty.",
    ],
  ],
  "0.05 at 70 kg of 16: 13.125 mL/h; the start of the protocol": [
    ["weight seven one kilos", "recorded", "weight 71", "Weight seventy one kilograms."],
    ["correction weight seven zero kilos", "recorded", "struck 1, weight 70", "Weight seventy, seven zero, kilograms."],
    [
      "noradrenaline four milligrams in two fifty",
      "asked",
      "asked always-confirm",
      "Noradrenaline, four milligrams in two fifty, two five zero, millilitres?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, strength noradrenaline 4 mg in 250",
      "Noradrenaline four milligrams in two fifty millilitres. Start zero point zero five micrograms per kilo per minute, thirteen point one, one three point one, millilitres per hour.",
    ],
    [
      "start noradrenaline",
      "asked",
      "asked always-confirm",
      "Noradrenaline, zero point zero five micrograms per kilo per minute, thirteen point one, one three point one, millilitres per hour? The protocol's start: affirm, or say the rate.",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, infusion noradrenaline 0.05 mcg/kg/min",
      "Noradrenaline zero point zero five micrograms per kilo per minute, thirteen point one millilitres per hour. Bag empty in nineteen hours five.",
    ],
  ],
  "10 micrograms/min of 16: 37.5 mL/h": [
    [
      "noradrenaline four milligrams in two fifty",
      "asked",
      "asked always-confirm",
      "Noradrenaline, four milligrams in two fifty, two five zero, millilitres?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, strength noradrenaline 4 mg in 250",
      "Noradrenaline four milligrams in two fifty millilitres. Start zero point zero five micrograms per kilo per minute. Millilitres per hour need the weight.",
    ],
    [
      "start noradrenaline at ten",
      "asked",
      "asked always-confirm",
      "Noradrenaline, ten, one zero, micrograms per minute, thirty seven point five, three seven point five, millilitres per hour?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, infusion noradrenaline 10 mcg/min",
      "Noradrenaline ten micrograms per minute, thirty seven point five millilitres per hour. Bag empty in six hours forty.",
    ],
  ],
  "phenylephrine 50 micrograms/min of 100: 30 mL/h": [
    [
      "phenylephrine ten milligrams in one hundred",
      "asked",
      "asked always-confirm",
      "Phenylephrine, ten, one zero, milligrams in one hundred, one zero zero, millilitres?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, strength phenylephrine 10 mg in 100",
      "At ten milligrams in one hundred millilitres, for one hundred micrograms, one millilitre.",
    ],
    [
      "start phenylephrine at fifty micrograms per minute",
      "asked",
      "asked always-confirm",
      "Phenylephrine, fifty, five zero, micrograms per minute, thirty, three zero, millilitres per hour?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, infusion phenylephrine 50 mcg/min",
      "Phenylephrine fifty micrograms per minute, thirty millilitres per hour. Bag empty in three hours twenty.",
    ],
  ],
  "phenylephrine 50 micrograms/min of 20: 150 mL/h": [
    [
      "phenylephrine ten milligrams in five hundred",
      "asked",
      "asked always-confirm",
      "Phenylephrine, ten, one zero, milligrams in five hundred, five zero zero, millilitres?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, strength phenylephrine 10 mg in 500",
      "At ten milligrams in five hundred millilitres, for one hundred micrograms, five millilitres.",
    ],
    [
      "start phenylephrine at fifty micrograms per minute",
      "asked",
      "asked always-confirm",
      "Phenylephrine, fifty, five zero, micrograms per minute, one fifty, one five zero, millilitres per hour?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, infusion phenylephrine 50 mcg/min",
      "Phenylephrine fifty micrograms per minute, one fifty millilitres per hour. Bag empty in three hours twenty.",
    ],
  ],
  "adrenaline 0.05, 80 kg, 4 micrograms/mL: 60 mL/h": [
    ["weight eight zero kilos", "recorded", "weight 80", "Weight eighty, eight zero, kilograms."],
    [
      "adrenaline one milligram in two fifty",
      "asked",
      "asked always-confirm",
      "Adrenaline, one milligram in two fifty, two five zero, millilitres?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, strength adrenaline 1 mg in 250",
      "At one milligram in two fifty millilitres, for ten micrograms, two point five millilitres.",
    ],
    [
      "start adrenaline at point zero five",
      "asked",
      "asked always-confirm",
      "Adrenaline, zero point zero five micrograms per kilo per minute, sixty, six zero, millilitres per hour?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, infusion adrenaline 0.05 mcg/kg/min",
      "Adrenaline zero point zero five micrograms per kilo per minute, sixty millilitres per hour. Bag empty in four hours ten.",
    ],
  ],
  "vasopressin 0.03 units/min of 0.2 units/mL: 9 mL/h": [
    [
      "vasopressin twenty units in one hundred",
      "asked",
      "asked always-confirm",
      "Vasopressin, twenty, two zero, units in one hundred, one zero zero, millilitres?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, strength vasopressin 20 units in 100",
      "Vasopressin twenty units in one hundred millilitres. Start zero point zero three units per minute, nine millilitres per hour.",
    ],
    [
      "start vasopressin at point zero three",
      "asked",
      "asked always-confirm",
      "Vasopressin, zero point zero three units per minute, nine millilitres per hour?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, infusion vasopressin 0.03 units/min",
      "Vasopressin zero point zero three units per minute, nine millilitres per hour. Bag empty in eleven hours seven.",
    ],
  ],
  "22.5 mL/h of 16 at 75 kg is 0.08": [
    ["weight seven five kilos", "recorded", "weight 75", "Weight seventy five kilograms."],
    [
      "noradrenaline four milligrams in two fifty",
      "asked",
      "asked always-confirm",
      "Noradrenaline, four milligrams in two fifty, two five zero, millilitres?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, strength noradrenaline 4 mg in 250",
      "Noradrenaline four milligrams in two fifty millilitres. Start zero point zero five micrograms per kilo per minute, fourteen point one, one four point one, millilitres per hour.",
    ],
    [
      "noradrenaline running at twenty two point five millilitres per hour",
      "asked",
      "asked always-confirm",
      "Noradrenaline, zero point zero eight micrograms per kilo per minute, twenty two point five, two two point five, millilitres per hour?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, infusion noradrenaline 0.08 mcg/kg/min",
      "Noradrenaline zero point zero eight micrograms per kilo per minute, twenty two point five millilitres per hour. Bag empty in eleven hours seven.",
    ],
  ],
};
