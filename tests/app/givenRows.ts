import type { Row } from "./caseRows.ts";

/** What is said to be given, against plan and cap. Invented. */
export const GIVEN_CASES: Readonly<Record<string, readonly Row[]>> = {
  "the planned dose is given": [
    [
      "height one seventy eight centimetres, sex male",
      "recorded",
      "height 178, sex male",
      "Height one seventy eight centimetres, sex male.",
    ],
    ["ketamine given", "asked", "asked always-confirm", "Ketamine, one ten, one one zero, milligrams, given?"],
    ["affirm", "recorded", "closed affirmed, given ketamine 110 mg", "Ketamine one ten milligrams given."],
    ["totals", "answered", "", "Ketamine one ten milligrams, one dose."],
  ],
  "within a tenth of the plan there is no further question": [
    [
      "height one seventy eight centimetres, sex male",
      "recorded",
      "height 178, sex male",
      "Height one seventy eight centimetres, sex male.",
    ],
    [
      "ketamine one hundred given",
      "asked",
      "asked always-confirm",
      "Ketamine, one hundred, one zero zero, milligrams, given?",
    ],
    ["affirm", "recorded", "closed affirmed, given ketamine 100 mg", "Ketamine one hundred milligrams given."],
    ["total ketamine", "answered", "", "Ketamine one hundred milligrams, one dose."],
  ],
  "far off the plan and over the cap, both numbers are asked back": [
    [
      "height one seventy eight centimetres, sex male",
      "recorded",
      "height 178, sex male",
      "Height one seventy eight centimetres, sex male.",
    ],
    [
      "one twenty over sixty, rate one ten",
      "recorded",
      "sbp 120, dbp 60, hr 110",
      "Pressure one twenty over sixty, heart rate one ten.",
    ],
    [
      "ketamine one hundred given",
      "asked",
      "asked always-confirm",
      "Ketamine, one hundred, one zero zero, milligrams, given? Plan was fifty four point nine, five four point nine, milligrams.",
    ],
    ["negative", "answered", "closed denied", "Not recorded. Say it again."],
    [
      "ketamine two fifty given",
      "asked",
      "asked always-confirm",
      "Ketamine, two fifty, two five zero, milligrams, given? Plan was fifty four point nine, five four point nine, milligrams. Over the cap of two hundred, two zero zero, milligrams.",
    ],
    ["affirm", "recorded", "closed affirmed, given ketamine 250 mg", "Ketamine two fifty milligrams given."],
  ],
  "the wrong unit is far off": [
    [
      "height one seventy eight centimetres, sex male",
      "recorded",
      "height 178, sex male",
      "Height one seventy eight centimetres, sex male.",
    ],
    [
      "ketamine one hundred micrograms given",
      "asked",
      "asked always-confirm",
      "Ketamine, one hundred, one zero zero, micrograms, given? Plan was one ten, one one zero, milligrams.",
    ],
    ["negative", "answered", "closed denied", "Not recorded. Say it again."],
    ["ketamine ten units given", "refused", "", "Ketamine is given in milligrams. Say it again."],
    ["total ketamine", "answered", "", "No ketamine given."],
  ],
  "an amount said otherwise while it is read back is read back anew": [
    [
      "height one seventy eight centimetres, sex male",
      "recorded",
      "height 178, sex male",
      "Height one seventy eight centimetres, sex male.",
    ],
    [
      "ketamine one hundred given",
      "asked",
      "asked always-confirm",
      "Ketamine, one hundred, one zero zero, milligrams, given?",
    ],
    [
      "one one zero",
      "asked",
      "closed restated, asked always-confirm",
      "Ketamine, one ten, one one zero, milligrams, given?",
    ],
    ["affirm", "recorded", "closed affirmed, given ketamine 110 mg", "Ketamine one ten milligrams given."],
  ],
  "without a plan the amount is asked, and nothing is compared": [
    [
      "ketamine given",
      "asked",
      "asked always-confirm",
      "Ketamine needs height and sex. Say it first. Ketamine, how much was given?",
    ],
    [
      "eight zero",
      "asked",
      "closed restated, asked always-confirm",
      "Ketamine, eighty, eight zero, milligrams, given? No plan to compare with.",
    ],
    ["affirm", "recorded", "closed affirmed, given ketamine 80 mg", "Ketamine eighty milligrams given."],
    ["dose of ketamine", "answered", "", "Ketamine needs height and sex. Say it first."],
  ],
  "without a plan the amount said is read back": [
    [
      "ketamine sixty milligrams given",
      "asked",
      "asked always-confirm",
      "Ketamine, sixty, six zero, milligrams, given? No plan to compare with.",
    ],
    ["affirm", "recorded", "closed affirmed, given ketamine 60 mg", "Ketamine sixty milligrams given."],
  ],
  "left out in shock, but given": [
    [
      "height one seventy eight centimetres, sex male",
      "recorded",
      "height 178, sex male",
      "Height one seventy eight centimetres, sex male.",
    ],
    [
      "one twenty over sixty, rate one ten",
      "recorded",
      "sbp 120, dbp 60, hr 110",
      "Pressure one twenty over sixty, heart rate one ten.",
    ],
    [
      "lidocaine given",
      "asked",
      "asked always-confirm",
      "No lidocaine: shock index zero point nine two, left out in shock. Lidocaine, how much was given?",
    ],
    [
      "sixty milligrams",
      "asked",
      "closed restated, asked always-confirm",
      "Lidocaine, sixty, six zero, milligrams, given? No plan to compare with.",
    ],
    ["affirm", "recorded", "closed affirmed, given lidocaine 60 mg", "Lidocaine sixty milligrams given."],
  ],
  "millilitres need the concentration": [
    [
      "height one seventy eight centimetres, sex male",
      "recorded",
      "height 178, sex male",
      "Height one seventy eight centimetres, sex male.",
    ],
    ["ketamine two mils given", "asked", "asked always-confirm", "Ketamine, which concentration?"],
    [
      "fifty milligrams per mil",
      "asked",
      "closed restated, asked always-confirm",
      "Ketamine, fifty, five zero, milligrams in one millilitre?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, strength ketamine 50 mg in 1",
      "At fifty milligrams in one millilitre, for one ten milligrams, two point two millilitres.",
    ],
    [
      "ketamine two mils given",
      "asked",
      "asked always-confirm",
      "Ketamine, one hundred, one zero zero, milligrams, in two millilitres, given?",
    ],
    ["affirm", "recorded", "closed affirmed, given ketamine 100 mg", "Ketamine one hundred milligrams given."],
  ],
};
