import type { Row } from "./caseRows.ts";

/** Dilutions by voice. Invented cases; the recipes and the ten-fold error are those of the reference dossier, section 5.2. */
export const DILUTION_CASES: Readonly<Record<string, readonly Row[]>> = {
  "phenylephrine 10 mg and 99 mL make 100 micrograms/mL": [
    [
      "make push dose phenylephrine",
      "asked",
      "asked always-confirm",
      "Phenylephrine, stock ten, one zero, milligrams in one millilitre?",
    ],
    ["affirm", "recorded", "closed affirmed, recipe pushDoseSyringe", "Take one millilitre of stock."],
    [
      "done",
      "recorded",
      "recipe step 1",
      "Add ninety nine, nine nine, millilitres of sodium chloride zero point nine percent.",
    ],
    [
      "next",
      "asked",
      "recipe ended, asked always-confirm",
      "Label: phenylephrine, ten, one zero, milligrams in one hundred, one zero zero, millilitres? One hundred, one zero zero, micrograms in each millilitre.",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, strength phenylephrine 10 mg in 100",
      "At ten milligrams in one hundred millilitres, for one hundred micrograms, one millilitre.",
    ],
    [
      "phenylephrine",
      "answered",
      "",
      "Phenylephrine, push dose for falling pressure. One hundred, one zero zero, micrograms. At ten milligrams in one hundred millilitres, one millilitre.",
    ],
  ],
  "adrenaline 0.1 mg/mL, 1 mL and 9 mL make 10 micrograms/mL": [
    [
      "make push dose adrenaline",
      "asked",
      "asked always-confirm",
      "Adrenaline, which stock? Zero point one milligrams in one millilitre, or one milligram in one millilitre.",
    ],
    [
      "one hundred micrograms per mil",
      "asked",
      "closed restated, asked always-confirm",
      "Adrenaline, stock one hundred, one zero zero, micrograms in one millilitre? One millilitre and ninety nine would be ten times weaker.",
    ],
    ["affirm", "recorded", "closed affirmed, recipe pushDoseSyringe", "Take one millilitre of stock."],
    ["next", "recorded", "recipe step 1", "Add nine millilitres of sodium chloride zero point nine percent."],
    [
      "next",
      "asked",
      "recipe ended, asked always-confirm",
      "Label: adrenaline, one hundred, one zero zero, micrograms in ten, one zero, millilitres? Ten, one zero, micrograms in each millilitre.",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, strength adrenaline 100 mcg in 10",
      "At one hundred micrograms in ten millilitres, for ten micrograms, one millilitre.",
    ],
  ],
  "adrenaline 1 mg/mL: 1 mL into 9 mL would be ten times stronger, so 99 mL": [
    [
      "make push dose adrenaline",
      "asked",
      "asked always-confirm",
      "Adrenaline, which stock? Zero point one milligrams in one millilitre, or one milligram in one millilitre.",
    ],
    [
      "one milligram per mil",
      "asked",
      "closed restated, asked always-confirm",
      "Adrenaline, stock one milligram in one millilitre? One millilitre and nine would be ten times stronger.",
    ],
    ["affirm", "recorded", "closed affirmed, recipe pushDoseFromAmpoule", "Take one millilitre of stock."],
    [
      "done",
      "recorded",
      "recipe step 1",
      "Add ninety nine, nine nine, millilitres of sodium chloride zero point nine percent.",
    ],
    [
      "done",
      "asked",
      "recipe ended, asked always-confirm",
      "Label: adrenaline, one thousand, one zero zero zero, micrograms in one hundred, one zero zero, millilitres? Ten, one zero, micrograms in each millilitre.",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, strength adrenaline 1000 mcg in 100",
      "At one thousand micrograms in one hundred millilitres, for ten micrograms, one millilitre.",
    ],
  ],
  "a stock that no recipe starts from is refused, with what would come of it": [
    [
      "make push dose phenylephrine",
      "asked",
      "asked always-confirm",
      "Phenylephrine, stock ten, one zero, milligrams in one millilitre?",
    ],
    [
      "one milligram per mil",
      "refused",
      "",
      "Not from one milligram in one millilitre. The recipe would make one milligram in one hundred millilitres, ten times weaker. Phenylephrine needs stock ten milligrams in one millilitre.",
    ],
    [
      "ten milligrams per mil",
      "asked",
      "closed restated, asked always-confirm",
      "Phenylephrine, stock ten, one zero, milligrams in one millilitre?",
    ],
    ["affirm", "recorded", "closed affirmed, recipe pushDoseSyringe", "Take one millilitre of stock."],
  ],
  "a stock one hundred times off": [
    [
      "make push dose phenylephrine",
      "asked",
      "asked always-confirm",
      "Phenylephrine, stock ten, one zero, milligrams in one millilitre?",
    ],
    [
      "one hundred micrograms per mil",
      "refused",
      "",
      "Not from one hundred micrograms in one millilitre. The recipe would make one hundred micrograms in one hundred millilitres, one hundred times weaker. Phenylephrine needs stock ten milligrams in one millilitre.",
    ],
    ["negative", "answered", "closed denied", "Not recorded. Say it again."],
  ],
  "an infusion": [
    [
      "make infusion noradrenaline",
      "asked",
      "asked always-confirm",
      "Noradrenaline, stock one milligram in one millilitre?",
    ],
    ["affirm", "recorded", "closed affirmed, recipe bag250", "Take four millilitres of stock."],
    [
      "next",
      "recorded",
      "recipe step 1",
      "Add two forty six, two four six, millilitres of glucose five percent or sodium chloride zero point nine percent.",
    ],
    [
      "next",
      "asked",
      "recipe ended, asked always-confirm",
      "Label: noradrenaline, four milligrams in two fifty, two five zero, millilitres? Sixteen, one six, micrograms in each millilitre.",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, strength noradrenaline 4 mg in 250",
      "Noradrenaline four milligrams in two fifty millilitres. Start zero point zero five micrograms per kilo per minute. Millilitres per hour need the weight.",
    ],
  ],
  "a result that is said otherwise is ten times off": [
    [
      "make push dose adrenaline",
      "asked",
      "asked always-confirm",
      "Adrenaline, which stock? Zero point one milligrams in one millilitre, or one milligram in one millilitre.",
    ],
    [
      "one milligram per mil",
      "asked",
      "closed restated, asked always-confirm",
      "Adrenaline, stock one milligram in one millilitre? One millilitre and nine would be ten times stronger.",
    ],
    ["affirm", "recorded", "closed affirmed, recipe pushDoseFromAmpoule", "Take one millilitre of stock."],
    [
      "done",
      "recorded",
      "recipe step 1",
      "Add ninety nine, nine nine, millilitres of sodium chloride zero point nine percent.",
    ],
    [
      "done",
      "asked",
      "recipe ended, asked always-confirm",
      "Label: adrenaline, one thousand, one zero zero zero, micrograms in one hundred, one zero zero, millilitres? Ten, one zero, micrograms in each millilitre.",
    ],
    [
      "one hundred micrograms per mil",
      "asked",
      "closed restated, asked always-confirm",
      "Adrenaline, one hundred, one zero zero, micrograms in one millilitre? Ten times stronger than the protocol's.",
    ],
    ["negative", "answered", "closed denied", "Not recorded. Say it again."],
  ],
  "no recipe": [
    ["make push dose ephedrine", "refused", "", "No push dose recipe for ephedrine in this protocol."],
    ["make rocuronium", "refused", "", "No recipe for rocuronium in this protocol."],
  ],
  "a bag is not made where a push dose is asked for, nor a syringe where an infusion is": [
    ["make push dose noradrenaline", "refused", "", "No push dose recipe for noradrenaline in this protocol."],
    ["make infusion of ketamine", "refused", "", "No infusion recipe for ketamine in this protocol."],
  ],
  "done and next go to the list once the recipe is over": [
    [
      "make push dose phenylephrine",
      "asked",
      "asked always-confirm",
      "Phenylephrine, stock ten, one zero, milligrams in one millilitre?",
    ],
    ["affirm", "recorded", "closed affirmed, recipe pushDoseSyringe", "Take one millilitre of stock."],
    [
      "next",
      "recorded",
      "recipe step 1",
      "Add ninety nine, nine nine, millilitres of sodium chloride zero point nine percent.",
    ],
    [
      "next",
      "asked",
      "recipe ended, asked always-confirm",
      "Label: phenylephrine, ten, one zero, milligrams in one hundred, one zero zero, millilitres? One hundred, one zero zero, micrograms in each millilitre.",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, strength phenylephrine 10 mg in 100",
      "At ten milligrams in one hundred millilitres, for one hundred micrograms, one millilitre.",
    ],
    ["next", "answered", "called bleeding", "Bleeding stopped, pelvis bound if suspected?"],
  ],
  "the last step is taken back": [
    [
      "make push dose phenylephrine",
      "asked",
      "asked always-confirm",
      "Phenylephrine, stock ten, one zero, milligrams in one millilitre?",
    ],
    ["affirm", "recorded", "closed affirmed, recipe pushDoseSyringe", "Take one millilitre of stock."],
    [
      "next",
      "recorded",
      "recipe step 1",
      "Add ninety nine, nine nine, millilitres of sodium chloride zero point nine percent.",
    ],
    ["disregard", "recorded", "struck 1", "Disregarded: the last step of the recipe."],
    [
      "next",
      "recorded",
      "recipe step 1",
      "Add ninety nine, nine nine, millilitres of sodium chloride zero point nine percent.",
    ],
  ],
};
