import type { Row } from "./caseRows.ts";

/** The concentration in the hand: made whole, read back, said anew. Invented. */
export const STRENGTH_CASES: Readonly<Record<string, readonly Row[]>> = {
  "an amount alone is completed by the only strength of the protocol that has it": [
    [
      "height one seventy eight centimetres, sex male",
      "recorded",
      "height 178, sex male",
      "Height one seventy eight centimetres, sex male.",
    ],
    [
      "ketamine",
      "asked",
      "asked always-confirm",
      "Ketamine, induction. One ten, one one zero, milligrams. One point five per kilo, ideal weight seventy three point two. Shock index not known. Ketamine, which concentration?",
    ],
    [
      "fifty milligrams",
      "asked",
      "closed restated, asked always-confirm",
      "Ketamine, fifty, five zero, milligrams in one millilitre?",
    ],
    ["negative", "answered", "closed denied", "Not recorded. Say it again."],
    [
      "ketamine",
      "asked",
      "asked always-confirm",
      "Ketamine, induction. One ten, one one zero, milligrams. One point five per kilo, ideal weight seventy three point two. Shock index not known. Ketamine, which concentration?",
    ],
    [
      "one zero",
      "asked",
      "closed restated, asked always-confirm",
      "Ketamine, ten, one zero, milligrams in one millilitre?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, strength ketamine 10 mg in 1",
      "At ten milligrams in one millilitre, for one ten milligrams, eleven, one one, millilitres.",
    ],
  ],
  "an amount alone that no strength has is asked about": [
    [
      "height one seventy eight centimetres, sex male",
      "recorded",
      "height 178, sex male",
      "Height one seventy eight centimetres, sex male.",
    ],
    [
      "ketamine",
      "asked",
      "asked always-confirm",
      "Ketamine, induction. One ten, one one zero, milligrams. One point five per kilo, ideal weight seventy three point two. Shock index not known. Ketamine, which concentration?",
    ],
    ["thirty milligrams", "refused", "", "Ketamine, in how many millilitres? Say amount and volume."],
    ["thirty", "refused", "", "Ketamine, in how many millilitres? Say amount and volume."],
    [
      "fifty per mil",
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
  ],
  "a concentration that is not the protocol's, and one that is ten times off": [
    [
      "height one seventy eight centimetres, sex male",
      "recorded",
      "height 178, sex male",
      "Height one seventy eight centimetres, sex male.",
    ],
    [
      "ketamine",
      "asked",
      "asked always-confirm",
      "Ketamine, induction. One ten, one one zero, milligrams. One point five per kilo, ideal weight seventy three point two. Shock index not known. Ketamine, which concentration?",
    ],
    [
      "twenty milligrams per mil",
      "asked",
      "closed restated, asked always-confirm",
      "Ketamine, twenty, two zero, milligrams in one millilitre? Not in the protocol.",
    ],
    [
      "five hundred milligrams per mil",
      "asked",
      "closed restated, asked always-confirm",
      "Ketamine, five hundred, five zero zero, milligrams in one millilitre? Ten times stronger than the protocol's.",
    ],
    [
      "fifty micrograms per mil",
      "asked",
      "closed restated, asked always-confirm",
      "Ketamine, fifty, five zero, micrograms in one millilitre? One thousand times weaker than the protocol's.",
    ],
    ["negative", "answered", "closed denied", "Not recorded. Say it again."],
  ],
  "a concentration read back wrong is said anew": [
    [
      "height one seventy eight centimetres, sex male",
      "recorded",
      "height 178, sex male",
      "Height one seventy eight centimetres, sex male.",
    ],
    [
      "ketamine",
      "asked",
      "asked always-confirm",
      "Ketamine, induction. One ten, one one zero, milligrams. One point five per kilo, ideal weight seventy three point two. Shock index not known. Ketamine, which concentration?",
    ],
    [
      "ten milligrams per mil",
      "asked",
      "closed restated, asked always-confirm",
      "Ketamine, ten, one zero, milligrams in one millilitre?",
    ],
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
  ],
  "drugs in two units ask which": [
    [
      "adrenaline",
      "asked",
      "asked always-confirm",
      "Adrenaline, push dose for falling pressure. Ten, one zero, micrograms. Adrenaline, which concentration?",
    ],
    ["ten per mil", "refused", "", "Adrenaline ten, one zero: micrograms, or milligrams?"],
    [
      "ten micrograms per mil",
      "asked",
      "closed restated, asked always-confirm",
      "Adrenaline, ten, one zero, micrograms in one millilitre?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, strength adrenaline 10 mcg in 1",
      "At ten micrograms in one millilitre, for ten micrograms, one millilitre.",
    ],
  ],
  "no answer to the concentration leaves no volume": [
    [
      "height one seventy eight centimetres, sex male",
      "recorded",
      "height 178, sex male",
      "Height one seventy eight centimetres, sex male.",
    ],
    [
      "ketamine",
      "asked",
      "asked always-confirm",
      "Ketamine, induction. One ten, one one zero, milligrams. One point five per kilo, ideal weight seventy three point two. Shock index not known. Ketamine, which concentration?",
    ],
    ["affirm", "refused", "", "Ketamine, which concentration?"],
    ["negative", "answered", "closed denied", "Left open."],
    ["affirm", "ignored", "", ""],
  ],
  "with the tube in, the concentration of a sedative is that of its infusion": [
    ["thirty four year old man", "recorded", "age 34, sex male", "Age thirty four years, sex male."],
    ["weight eighty three kilos", "recorded", "weight 83", "Weight eighty three kilograms."],
    ["tube confirmed", "recorded", "tubeConfirmed", "Tube confirmed. Attempt one, zero seconds."],
    [
      "propofol ten milligrams per mil",
      "asked",
      "asked always-confirm",
      "Propofol, ten, one zero, milligrams in one millilitre?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, strength propofol 10 mg in 1",
      "Propofol ten milligrams in one millilitre. Start twenty, two zero, micrograms per kilo per minute, nine point nine six millilitres per hour.",
    ],
  ],
};
