import type { Row } from "./caseRows.ts";

/** Dose, concentration, then volume. Invented. Worked examples are those of the reference dossier, by the weight that the protocol orders: ideal weight of a man of 178 cm 73.2 kg, a child of six years 25 kg. */
export const DRUG_VOLUME_CASES: Readonly<Record<string, readonly Row[]>> = {
  "rocuronium 1.2 x 73.2 kg = 87.8 mg = 8.8 mL of 10 mg/mL (dossier 5.1)": [
    [
      "height one seventy eight centimetres, sex male",
      "recorded",
      "height 178, sex male",
      "Height one seventy eight centimetres, sex male.",
    ],
    [
      "rocuronium",
      "asked",
      "asked always-confirm",
      "Rocuronium, paralysis for intubation. Eighty seven point eight, eight seven point eight, milligrams. One point two per kilo, ideal weight seventy three point two. Shock index not known. Rocuronium, which concentration?",
    ],
    [
      "ten milligrams per mil",
      "asked",
      "closed restated, asked always-confirm",
      "Rocuronium, ten, one zero, milligrams in one millilitre?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, strength rocuronium 10 mg in 1",
      "At ten milligrams in one millilitre, for eighty seven point eight milligrams, eight point eight millilitres. It holds eighty eight milligrams.",
    ],
    ["rocuronium given", "asked", "asked always-confirm", "Rocuronium, eighty eight, eight eight, milligrams, given?"],
    ["affirm", "recorded", "closed affirmed, given rocuronium 88 mg", "Rocuronium eighty eight milligrams given."],
    ["total rocuronium", "answered", "", "Rocuronium eighty eight milligrams, one dose."],
  ],
  "suxamethonium 1.5 x 80 = 120 mg = 6 mL of 20 mg/mL (dossier 5.1)": [
    ["weight eight zero kilos", "recorded", "weight 80", "Weight eighty, eight zero, kilograms."],
    [
      "suxamethonium",
      "asked",
      "asked always-confirm",
      "Suxamethonium, paralysis for intubation. One twenty, one two zero, milligrams. One point five per kilo, actual weight eighty, eight zero. Shock index not known. One other dose in the protocol. Suxamethonium, which concentration?",
    ],
    [
      "twenty milligrams per mil",
      "asked",
      "closed restated, asked always-confirm",
      "Suxamethonium, twenty, two zero, milligrams in one millilitre?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, strength suxamethonium 20 mg in 1",
      "At twenty milligrams in one millilitre, for one twenty milligrams, six millilitres.",
    ],
  ],
  "mannitol 0.5 g/kg x 80 = 40 g = 200 mL of 20 % (dossier 5.3), and when it is in": [
    ["weight eight zero kilos", "recorded", "weight 80", "Weight eighty, eight zero, kilograms."],
    [
      "mannitol",
      "asked",
      "asked always-confirm",
      "Mannitol, herniation, or ICP above its threshold. Forty, four zero, grams. Zero point five per kilo, actual weight eighty, eight zero. The protocol does not give it before hospital. Mannitol, twenty, two zero, grams in one hundred, one zero zero, millilitres?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, strength mannitol20 20 g in 100",
      "At twenty grams in one hundred millilitres, for forty grams, two hundred, two zero zero, millilitres.",
    ],
    ["mannitol given", "asked", "asked always-confirm", "Mannitol, forty, four zero, grams, given?"],
    [
      "affirm",
      "recorded",
      "closed affirmed, given mannitol20 40 g",
      "Mannitol forty grams given. Ends in ten minutes to twenty minutes.",
    ],
  ],
  "a child of 25 kg: ketamine 37.5 mg is 3.75 mL of 10, and a syringe shows 3.8 (dossier 5.1)": [
    ["age six", "recorded", "age 6", "Age six years. Targets: systolic one oh two, MAP sixty five, CPP forty five."],
    [
      "ketamine",
      "asked",
      "asked always-confirm",
      "Ketamine, induction. Thirty seven point five, three seven point five, milligrams. One point five per kilo, actual weight twenty five, estimated. Shock index not known. Ketamine, which concentration?",
    ],
    [
      "ten per mil",
      "asked",
      "closed restated, asked always-confirm",
      "Ketamine, ten, one zero, milligrams in one millilitre?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, strength ketamine 10 mg in 1",
      "At ten milligrams in one millilitre, for thirty seven point five milligrams, three point eight millilitres. It holds thirty eight milligrams.",
    ],
    ["ketamine given", "asked", "asked always-confirm", "Ketamine, thirty eight, three eight, milligrams, given?"],
    ["affirm", "recorded", "closed affirmed, given ketamine 38 mg", "Ketamine thirty eight milligrams given."],
  ],
  "rocuronium 30 mg = 3 mL for the same child": [
    ["age six", "recorded", "age 6", "Age six years. Targets: systolic one oh two, MAP sixty five, CPP forty five."],
    [
      "rocuronium",
      "asked",
      "asked always-confirm",
      "Rocuronium, paralysis for intubation. Thirty, three zero, milligrams. One point two per kilo, actual weight twenty five, estimated. Shock index not known. Rocuronium, which concentration?",
    ],
    [
      "ten milligrams per mil",
      "asked",
      "closed restated, asked always-confirm",
      "Rocuronium, ten, one zero, milligrams in one millilitre?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, strength rocuronium 10 mg in 1",
      "At ten milligrams in one millilitre, for thirty milligrams, three millilitres.",
    ],
  ],
  "a concentration known before says the volume at once": [
    [
      "height one seventy eight centimetres, sex male",
      "recorded",
      "height 178, sex male",
      "Height one seventy eight centimetres, sex male.",
    ],
    [
      "ketamine fifty milligrams per mil",
      "asked",
      "asked always-confirm",
      "Ketamine, fifty, five zero, milligrams in one millilitre?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, strength ketamine 50 mg in 1",
      "At fifty milligrams in one millilitre, for one ten milligrams, two point two millilitres.",
    ],
    [
      "ketamine",
      "answered",
      "",
      "Ketamine, induction. One ten, one one zero, milligrams. One point five per kilo, ideal weight seventy three point two. Shock index not known. At fifty milligrams in one millilitre, two point two millilitres.",
    ],
  ],
};
