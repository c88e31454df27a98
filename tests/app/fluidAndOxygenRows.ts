import type { Row } from "./caseRows.ts";

/** Fluids and the oxygen cylinder by voice. Invented; worked by hand from the protocol: reserve a quarter, child 10 to 20 mL/kg. */
export const FLUID_AND_OXYGEN_CASES: Readonly<Record<string, readonly Row[]>> = {
  "fluids in all and for each kilogram": [
    ["weight eight zero kilos", "recorded", "weight 80", "Weight eighty, eight zero, kilograms."],
    [
      "saline two fifty given",
      "asked",
      "asked always-confirm",
      "Isotonic crystalloid, two fifty, two five zero, millilitres?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, fluid isotonicCrystalloid 250",
      "Isotonic crystalloid two fifty millilitres in all, three point one per kilo.",
    ],
    [
      "saline two fifty running",
      "asked",
      "asked always-confirm",
      "Isotonic crystalloid, two fifty, two five zero, millilitres?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, fluid isotonicCrystalloid 250",
      "Isotonic crystalloid five hundred millilitres in all, six point three per kilo.",
    ],
    ["blood two fifty running", "asked", "asked always-confirm", "Blood, two fifty, two five zero, millilitres?"],
    [
      "affirm",
      "recorded",
      "closed affirmed, fluid blood 250",
      "Blood two fifty millilitres in all, three point one per kilo.",
    ],
    [
      "totals",
      "answered",
      "",
      "Isotonic crystalloid five hundred millilitres in all, six point three per kilo. Blood two fifty millilitres in all, three point one per kilo.",
    ],
    ["disregard", "recorded", "struck 1", "Disregarded: blood two fifty millilitres. No blood given."],
  ],
  "a volume said otherwise while it is read back": [
    [
      "saline two fifty given",
      "asked",
      "asked always-confirm",
      "Isotonic crystalloid, two fifty, two five zero, millilitres?",
    ],
    [
      "five hundred",
      "asked",
      "closed restated, asked always-confirm",
      "Isotonic crystalloid, five hundred, five zero zero, millilitres?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, fluid isotonicCrystalloid 500",
      "Isotonic crystalloid five hundred millilitres in all.",
    ],
  ],
  "over the protocol, adult and child": [
    [
      "saline one thousand given",
      "asked",
      "asked always-confirm",
      "Isotonic crystalloid, one thousand, one zero zero zero, millilitres? Over the protocol's five hundred.",
    ],
    ["negative", "answered", "closed denied", "Not recorded. Say it again."],
    ["age six", "recorded", "age 6", "Age six years. Targets: systolic one oh two, MAP sixty five, CPP forty five."],
    [
      "saline six hundred given",
      "asked",
      "asked always-confirm",
      "Isotonic crystalloid, six hundred, six zero zero, millilitres? Over the protocol's twenty per kilo.",
    ],
    ["negative", "answered", "closed denied", "Not recorded. Say it again."],
    [
      "saline two fifty given",
      "asked",
      "asked always-confirm",
      "Isotonic crystalloid, two fifty, two five zero, millilitres?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, fluid isotonicCrystalloid 250",
      "Isotonic crystalloid two fifty millilitres in all, ten per kilo, weight estimated.",
    ],
  ],
  "600 L at 15, reserve 150 L: 30 and 40 minutes": [
    [
      "cylinder six hundred litres at fifteen",
      "recorded",
      "cylinder 600 L at 15",
      "Cylinder six hundred, six zero zero, litres at fifteen, one five. Thirty minutes to the reserve, forty minutes to empty.",
    ],
    [
      "[10:00] cylinder",
      "answered",
      "",
      "Cylinder four fifty, four five zero, litres at fifteen, one five. Twenty minutes to the reserve, thirty minutes to empty.",
    ],
    [
      "[35:00] cylinder",
      "answered",
      "",
      "Cylinder seventy five, seven five, litres at fifteen, one five. In the reserve, five minutes to empty.",
    ],
  ],
  "150 bar in 3 litres is 450 L; the largest contents said count as full": [
    [
      "cylinder six hundred litres at ten",
      "recorded",
      "cylinder 600 L at 10",
      "Cylinder six hundred, six zero zero, litres at ten, one zero. Forty five minutes to the reserve, an hour to empty.",
    ],
    [
      "cylinder one fifty bar size three litres at ten",
      "recorded",
      "cylinder 450 L at 10",
      "Cylinder four fifty, four five zero, litres at ten, one zero. Thirty minutes to the reserve, forty five minutes to empty.",
    ],
  ],
  "what is not said is taken from the last record": [
    ["cylinder six hundred litres", "refused", "", "Cylinder six hundred litres: at what flow? Say it whole."],
    ["cylinder", "refused", "", "No cylinder recorded. Say its litres and the flow."],
    [
      "cylinder six hundred litres at fifteen",
      "recorded",
      "cylinder 600 L at 15",
      "Cylinder six hundred, six zero zero, litres at fifteen, one five. Thirty minutes to the reserve, forty minutes to empty.",
    ],
    [
      "[10:00] cylinder four hundred litres",
      "recorded",
      "cylinder 400 L at 15",
      "Cylinder four hundred, four zero zero, litres at fifteen, one five. Flow from the last record. Sixteen minutes to the reserve, twenty six minutes to empty.",
    ],
    ["[10:00] disregard", "recorded", "struck 1", "Disregarded: cylinder four hundred litres at fifteen."],
    [
      "[10:00] cylinder",
      "answered",
      "",
      "Cylinder four fifty, four five zero, litres at fifteen, one five. Twenty minutes to the reserve, thirty minutes to empty.",
    ],
  ],
  "a gauge says nothing without the size": [
    ["cylinder one fifty bar at ten", "refused", "", "Which size? Say bar, size and flow together."],
  ],
};
