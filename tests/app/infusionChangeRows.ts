import type { Row } from "./caseRows.ts";

/** Infusions asked about, started without all that is needed, changed, stopped and taken back. Invented. */
export const INFUSION_CHANGE_CASES: Readonly<Record<string, readonly Row[]>> = {
  "a number that fits two orders is asked about": [
    ["weight eight zero kilos", "recorded", "weight 80", "Weight eighty, eight zero, kilograms."],
    [
      "start noradrenaline at two",
      "asked",
      "asked always-confirm",
      "Noradrenaline two: micrograms per kilo per minute, or micrograms per minute?",
    ],
    [
      "micrograms per minute",
      "asked",
      "closed restated, asked always-confirm",
      "Noradrenaline, two micrograms per minute? Millilitres per hour need the concentration.",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, infusion noradrenaline 2 mcg/min",
      "Noradrenaline two micrograms per minute.",
    ],
  ],
  "out of the range of the protocol": [
    ["weight eight zero kilos", "recorded", "weight 80", "Weight eighty, eight zero, kilograms."],
    [
      "start noradrenaline at two micrograms per kilo per minute",
      "asked",
      "asked always-confirm",
      "Noradrenaline, two micrograms per kilo per minute? Over the protocol's range, zero point zero two to one. Millilitres per hour need the concentration.",
    ],
    ["negative", "answered", "closed denied", "Not recorded. Say it again."],
  ],
  "without a concentration there is no number for the pump, until it is affirmed": [
    ["weight eight zero kilos", "recorded", "weight 80", "Weight eighty, eight zero, kilograms."],
    [
      "start noradrenaline at point one",
      "asked",
      "asked always-confirm",
      "Noradrenaline, zero point one micrograms per kilo per minute? Millilitres per hour need the concentration.",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, infusion noradrenaline 0.1 mcg/kg/min",
      "Noradrenaline zero point one micrograms per kilo per minute.",
    ],
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
      "Noradrenaline four milligrams in two fifty millilitres. Zero point one micrograms per kilo per minute, thirty, three zero, millilitres per hour.",
    ],
  ],
  "up, down and stop": [
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
    [
      "[60:00] noradrenaline up to point two",
      "asked",
      "asked always-confirm",
      "Noradrenaline, zero point two micrograms per kilo per minute, sixty, six zero, millilitres per hour?",
    ],
    [
      "[60:00] affirm",
      "recorded",
      "closed affirmed, infusion noradrenaline 0.2 mcg/kg/min",
      "Noradrenaline zero point two micrograms per kilo per minute, sixty millilitres per hour. Bag empty in three hours forty.",
    ],
    ["[90:00] stop noradrenaline", "asked", "asked always-confirm", "Stop noradrenaline?"],
    ["[90:00] affirm", "recorded", "closed affirmed, infusion noradrenaline 0 mcg/kg/min", "Noradrenaline stopped."],
    ["[90:00] stop noradrenaline", "refused", "", "Noradrenaline is not recorded as running."],
  ],
  "another rate said to the start that is proposed": [
    ["weight eight zero kilos", "recorded", "weight 80", "Weight eighty, eight zero, kilograms."],
    [
      "start noradrenaline",
      "asked",
      "asked always-confirm",
      "Noradrenaline, zero point zero five micrograms per kilo per minute? Millilitres per hour need the concentration. The protocol's start: affirm, or say the rate.",
    ],
    [
      "point two",
      "asked",
      "closed restated, asked always-confirm",
      "Noradrenaline, zero point two micrograms per kilo per minute? Millilitres per hour need the concentration.",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, infusion noradrenaline 0.2 mcg/kg/min",
      "Noradrenaline zero point two micrograms per kilo per minute.",
    ],
  ],
  "a rate with three decimals is not rounded": [
    ["weight eight zero kilos", "recorded", "weight 80", "Weight eighty, eight zero, kilograms."],
    [
      "start noradrenaline at point zero two five",
      "asked",
      "asked always-confirm",
      "Noradrenaline, zero point zero two five micrograms per kilo per minute? Millilitres per hour need the concentration.",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, infusion noradrenaline 0.025 mcg/kg/min",
      "Noradrenaline zero point zero two five micrograms per kilo per minute.",
    ],
  ],
  "a guessed weight is called one": [
    [
      "estimated weight eight zero kilos",
      "recorded",
      "weight 80 estimated",
      "Estimated weight eighty, eight zero, kilograms.",
    ],
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
      "Noradrenaline four milligrams in two fifty millilitres. Start zero point zero five micrograms per kilo per minute, fifteen, one five, millilitres per hour. By an estimated weight of eighty, eight zero, kilos.",
    ],
    [
      "start noradrenaline at point one",
      "asked",
      "asked always-confirm",
      "Noradrenaline, zero point one micrograms per kilo per minute, thirty, three zero, millilitres per hour? By an estimated weight of eighty, eight zero, kilos.",
    ],
  ],
  "a child by the weight of its age": [
    ["age six", "recorded", "age 6", "Age six years. Targets: systolic one oh two, MAP sixty five, CPP forty five."],
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
      "Adrenaline one milligram in two fifty millilitres. Start zero point zero five micrograms per kilo per minute, eighteen point eight, one eight point eight, millilitres per hour. By an estimated weight of twenty five, two five, kilos.",
    ],
    [
      "start adrenaline at point one",
      "asked",
      "asked always-confirm",
      "Adrenaline, zero point one micrograms per kilo per minute, thirty seven point five, three seven point five, millilitres per hour? By an estimated weight of twenty five, two five, kilos.",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, infusion adrenaline 0.1 mcg/kg/min",
      "Adrenaline zero point one micrograms per kilo per minute, thirty seven point five millilitres per hour. Bag empty in six hours forty.",
    ],
  ],
  "millilitres per hour without a concentration": [
    [
      "noradrenaline running at five millilitres per hour",
      "asked",
      "asked always-confirm",
      "Noradrenaline, five millilitres per hour? How much drug that is needs the concentration.",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, infusion noradrenaline 5 mL/h",
      "Noradrenaline five millilitres per hour.",
    ],
  ],
  "taken back, what ran before runs": [
    ["weight eight zero kilos", "recorded", "weight 80", "Weight eighty, eight zero, kilograms."],
    [
      "start noradrenaline at point one",
      "asked",
      "asked always-confirm",
      "Noradrenaline, zero point one micrograms per kilo per minute? Millilitres per hour need the concentration.",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, infusion noradrenaline 0.1 mcg/kg/min",
      "Noradrenaline zero point one micrograms per kilo per minute.",
    ],
    ["disregard", "recorded", "struck 1", "Disregarded: noradrenaline zero point one micrograms per kilo per minute."],
    ["stop noradrenaline", "refused", "", "Noradrenaline is not recorded as running."],
  ],
};
