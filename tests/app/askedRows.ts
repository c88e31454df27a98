import type { Row } from "./caseRows.ts";

/**
 * How old, margin, everything, and why: what was asked for is worked out by hand. MAP = DBP + (SBP - DBP) / 3; CPP is under
 * 60 where ICP is over MAP - 60; targets MAP 90, CPP 60, SpO2 94, EtCO2 35 to 45. Invented.
 */
export const ASKED_CASES: Readonly<Record<string, readonly Row[]>> = {
  "nothing was said yet": [
    ["how old", "answered", "", "No number said yet."],
    ["how old is the pressure", "answered", "", "No pressure recorded."],
    ["how old is the map", "answered", "", "No MAP recorded."],
    ["how old is the c p p", "answered", "", "No measured CPP recorded."],
    ["how old are the sats", "answered", "", "No sats recorded."],
    ["margin", "answered", "", "MAP not known."],
    ["read everything", "answered", "", "No pressure recorded yet."],
  ],
  "how old, of the number said last and by name": [
    [
      "one twenty over eighty",
      "recorded",
      "sbp 120, dbp 80",
      "Pressure one twenty over eighty. MAP ninety three, on target.",
    ],
    ["how old", "answered", "", "MAP ninety three, just now."],
    ["[0:40] how old is that", "answered", "", "MAP ninety three, forty, four zero, seconds old."],
    ["[1:00] sats ninety four", "recorded", "spo2 94", "Sats ninety four."],
    ["[2:00] how old", "answered", "", "Sats ninety four, one minute old."],
    ["how old is the pressure", "answered", "", "Pressure one twenty over eighty, two minutes old."],
    ["how old", "answered", "", "MAP ninety three, two minutes old."],
    ["heart rate ninety", "recorded", "hr 90", "Heart rate ninety."],
    ["[3:00] how old", "answered", "", "Heart rate ninety, one minute old."],
    ["how old is the c p p", "answered", "", "No measured CPP recorded."],
    ["icp two two", "recorded", "icp 22", "ICP twenty two. CPP seventy one, on target."],
    // As old as the mean that went into it.
    ["[4:00] how old is the c p p", "answered", "", "CPP seventy one, four minutes old."],
    ["how old is the i c p", "answered", "", "ICP twenty two, one minute old."],
  ],
  "an age that sounds like another is said two ways, and so is its number": [
    ["icp one five", "recorded", "icp 15", "ICP fifteen, one five."],
    ["[14:00] how old is the icp", "answered", "", "ICP fifteen, one five, fourteen, one four, minutes old."],
    ["[15:00] how old is the icp", "answered", "", "ICP fifteen, one five, fifteen, one five, minutes old."],
    ["[22:00] how old is the icp", "answered", "", "ICP fifteen, one five, twenty two minutes old."],
    ["[50:00] how old is the icp", "answered", "", "ICP fifteen, one five, fifty, five zero, minutes old."],
  ],
  "a dose has no age": [
    [
      "height one seventy eight centimetres, sex male",
      "recorded",
      "height 178, sex male",
      "Height one seventy eight centimetres, sex male.",
    ],
    [
      "dose of ketamine",
      "asked",
      "asked always-confirm",
      "Ketamine, induction. One ten, one one zero, milligrams. One point five per kilo, ideal weight seventy three point two. Shock index not known. Ketamine, which concentration?",
    ],
    ["how old", "answered", "", "That was a dose, worked out as it was said."],
  ],
  "the margin over the target: a bound while ICP is not known, then CPP itself, then sats that are under theirs": [
    [
      "one twenty eight over eighty",
      "recorded",
      "sbp 128, dbp 80",
      "Pressure one twenty eight over eighty. MAP ninety six, on target.",
    ],
    ["margin", "answered", "", "MAP ninety six, six over ninety. CPP under sixty if ICP is over thirty six."],
    [
      "why",
      "answered",
      "",
      "MAP ninety six from systolic one twenty eight and diastolic eighty. Target ninety, common practice. One-third rule, from memory.",
    ],
    ["icp two two", "recorded", "icp 22", "ICP twenty two. CPP seventy four, on target."],
    [
      "what's my margin",
      "answered",
      "",
      "MAP ninety six, six over ninety. CPP seventy four, fourteen, one four, over sixty.",
    ],
    ["sats ninety six", "recorded", "spo2 96", "Sats ninety six."],
    ["sats ninety one", "recorded", "spo2 91", "Sats ninety one."],
    [
      "[2:00] margin",
      "answered",
      "",
      "MAP ninety six, six over ninety. CPP seventy four, fourteen, one four, over sixty. Two minutes old. Sats ninety one, three under ninety four.",
    ],
  ],
  "the margin under the target": [
    ["one ten over sixty", "recorded", "sbp 110, dbp 60", "Pressure one ten over sixty."],
    [
      "margin",
      "answered",
      "",
      "MAP seventy seven, thirteen, one three, under ninety. CPP under sixty if ICP is over seventeen, one seven.",
    ],
    ["systolic eight five", "recorded", "sbp 85", "Systolic eighty five."],
    ["margin", "answered", "", "MAP not known."],
    ["map five five", "recorded", "map 55", "MAP fifty five."],
    ["margin", "answered", "", "Measured MAP fifty five, thirty five under ninety. CPP under sixty at any ICP."],
  ],
  "why, for readings that have a target, and for one that has none": [
    ["temp thirty eight point five", "recorded", "temp 38.5", "Temperature thirty eight point five."],
    [
      "why",
      "answered",
      "",
      "Temperature thirty eight point five, measured. Highest target thirty seven, guideline, Lulla twenty twenty three.",
    ],
    ["heart rate one one two", "recorded", "hr 112", "Heart rate one twelve."],
    ["why", "answered", "", "Heart rate one twelve, measured. Highest target one twenty, common practice."],
    ["[3:00] why end tidal", "answered", "", "That number is not known now."],
    ["end tidal three two", "recorded", "etco2 32", "End tidal thirty two."],
    [
      "why that end tidal",
      "answered",
      "",
      "End tidal thirty two, measured. Lowest target thirty five, guideline, Lulla twenty twenty three.",
    ],
    [
      "why the temperature",
      "answered",
      "",
      "Temperature thirty eight point five, measured, three minutes old. Highest target thirty seven, guideline, Lulla twenty twenty three.",
    ],
    ["glucose five", "recorded", "glucose 5", "Glucose five."],
    ["why", "answered", "", "Glucose five, measured. Lowest target five point six, common practice."],
    ["icp two five", "recorded", "icp 25", "ICP twenty five."],
    [
      "why icp",
      "answered",
      "",
      "ICP twenty five, measured. Treat above twenty two, guideline, Carney twenty seventeen.",
    ],
  ],
  "why that alert, while other numbers are said": [
    ["one ten over sixty", "recorded", "sbp 110, dbp 60", "Pressure one ten over sixty."],
    ["heart rate ninety", "recorded", "hr 90", "Heart rate ninety."],
    ["why", "answered", "", "Heart rate ninety, measured. Highest target one twenty, common practice."],
    [
      "why that alert",
      "answered",
      "",
      "MAP seventy seven from systolic one ten and diastolic sixty. Target ninety, common practice. One-third rule, from memory.",
    ],
  ],
  "everything that is known, in a few sentences": [
    ["temp thirty six point five", "recorded", "temp 36.5", "Temperature thirty six point five."],
    ["sats ninety six", "recorded", "spo2 96", "Sats ninety six."],
    ["[2:00] left pupil four brisk", "recorded", "pupilLeft 4 brisk", "Left pupil four brisk."],
    ["icp one five", "recorded", "icp 15", "ICP fifteen, one five."],
    [
      "start noradrenaline at point one",
      "asked",
      "asked always-confirm",
      "Noradrenaline, zero point one micrograms per kilo per minute? Millilitres per hour need the weight.",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, infusion noradrenaline 0.1 mcg/kg/min",
      "Noradrenaline zero point one micrograms per kilo per minute.",
    ],
    [
      "read everything",
      "answered",
      "",
      "No pressure recorded yet. Noradrenaline zero point one micrograms per kilo per minute. Sats ninety six, temperature thirty six point five, two minutes old. ICP fifteen, one five, left pupil four brisk. Neuro check due in fifteen minutes.",
    ],
  ],
  "everything, what is off target first, those of one age together": [
    ["one ten over sixty", "recorded", "sbp 110, dbp 60", "Pressure one ten over sixty."],
    [
      "heart rate ninety, sats ninety one, end tidal five zero",
      "recorded",
      "hr 90, spo2 91, etco2 50",
      "Heart rate ninety, sats ninety one, end tidal fifty, five zero.",
    ],
    ["[2:00] temp thirty six point five", "recorded", "temp 36.5", "Temperature thirty six point five."],
    ["left pupil four brisk", "recorded", "pupilLeft 4 brisk", "Left pupil four brisk."],
    [
      "read everything",
      "answered",
      "",
      "One ten over sixty. MAP seventy seven, thirteen under ninety. If ICP twenty, CPP fifty seven. Two minutes. Sats ninety one, three under ninety four, two minutes old. End tidal fifty, five zero, target thirty five to forty five, two minutes old. Heart rate ninety, two minutes old. More on the screen.",
    ],
  ],
};
