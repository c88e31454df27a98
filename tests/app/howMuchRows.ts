import type { Row } from "./caseRows.ts";

/** Rates that are asked about and never recorded. Invented. */
export const HOW_MUCH_CASES: Readonly<Record<string, readonly Row[]>> = {
  "how much, for a weight said with it; the concentration is asked, and then the rate said": [
    [
      "how much noradrenaline for eighty kilos at point one",
      "asked",
      "asked always-confirm",
      "Noradrenaline for eighty, eight zero, kilos. Zero point one micrograms per kilo per minute. Noradrenaline, which concentration?",
    ],
    [
      "four milligrams in two fifty",
      "asked",
      "closed restated, asked always-confirm",
      "Noradrenaline, four milligrams in two fifty, two five zero, millilitres?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, strength noradrenaline 4 mg in 250",
      "Noradrenaline four milligrams in two fifty millilitres. For eighty, eight zero, kilos. Zero point one micrograms per kilo per minute, thirty, three zero, millilitres per hour.",
    ],
  ],
  "how much, without a concentration or a weight": [
    [
      "how much noradrenaline",
      "answered",
      "",
      "Noradrenaline. Start zero point zero five micrograms per kilo per minute. Millilitres per hour need the weight.",
    ],
    ["weight eight zero kilos", "recorded", "weight 80", "Weight eighty, eight zero, kilograms."],
    [
      "how much noradrenaline",
      "asked",
      "asked always-confirm",
      "Noradrenaline. Start zero point zero five micrograms per kilo per minute. Noradrenaline, which concentration?",
    ],
    ["negative", "answered", "closed denied", "Left open."],
  ],
};
