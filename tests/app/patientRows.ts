import type { Row } from "./caseRows.ts";

/** Cases in which what is said of the patient decides which targets hold. Invented. */
export const PATIENT_CASES: Readonly<Record<string, readonly Row[]>> = {
  "a child's age brings the child's targets, aloud": [
    ["age six", "recorded", "age 6", "Age six years. Targets: systolic one oh two, MAP sixty five, CPP forty five."],
    [
      "one oh five over sixty",
      "recorded",
      "sbp 105, dbp 60",
      "Pressure one oh five over sixty. MAP seventy five, on target.",
    ],
    ["status", "answered", "", "One oh five over sixty. MAP seventy five, on target. If ICP twenty, CPP fifty five."],
  ],
  "an age that changes no target is only read back": [
    ["age forty five", "recorded", "age 45", "Age forty five years."],
  ],
  "only the targets that changed are said": [
    ["age six two", "recorded", "age 62", "Age sixty two years. Target: systolic one hundred."],
    ["correction age seven two", "recorded", "struck 1, age 72", "Age seventy two years. Target: systolic one ten."],
  ],
  "an age in months": [
    [
      "six months old",
      "recorded",
      "age 0.5",
      "Age six months. Targets: systolic ninety, MAP sixty two, CPP forty two.",
    ],
    ["read back", "answered", "", "Age six months."],
    [
      "disregard",
      "recorded",
      "struck 1",
      "Disregarded: age six months. Targets: systolic one ten, MAP ninety, CPP sixty.",
    ],
    ["age one month", "recorded", "age 0.1", "Age one month. Targets: systolic ninety, MAP sixty two, CPP forty two."],
  ],
  "thirteen months may have been thirty": [
    ["age thirteen months", "asked", "asked sound-alike", "Age thirteen, one three, months?"],
    [
      "affirm",
      "recorded",
      "closed affirmed, age 1.1",
      "Age thirteen, one three, months. Targets: systolic ninety two, MAP sixty five, CPP forty five.",
    ],
  ],
  "an age in years is not made one in months": [
    [
      "age one year",
      "recorded",
      "age 1",
      "Age one year. Targets: systolic ninety two, MAP sixty five, CPP forty five.",
    ],
  ],
  "a corrected age stays in months": [
    [
      "age six months",
      "recorded",
      "age 0.5",
      "Age six months. Targets: systolic ninety, MAP sixty two, CPP forty two.",
    ],
    ["correction eight", "recorded", "struck 1, age 0.7", "Age eight months."],
  ],
  "a bleed has a ceiling, and herniation lifts it": [
    ["cause is a bleed", "recorded", "cause bleed", "Cause bleed. Target: systolic one thirty to one fifty."],
    [
      "herniation suspected",
      "recorded",
      "herniation suspected, asked always-confirm",
      "Herniation suspected. Targets: systolic one thirty, no ceiling, end tidal thirty to thirty five. Herniation. Think of pupil drugs, eye injury. Start rescue measures?",
    ],
    [
      "no herniation",
      "recorded",
      "herniation none, closed restated",
      "No herniation. Targets: systolic one thirty to one fifty, end tidal thirty five to forty five.",
    ],
    ["read back", "answered", "", "No herniation."],
  ],
  "a cause that changes nothing is only read back": [
    ["cause head injury", "recorded", "cause injury", "Cause head injury."],
    ["cause unknown", "recorded", "cause unknown", "Cause unknown."],
  ],
  "the whole patient in one breath": [
    [
      "six year old boy, cause bleed, herniation suspected",
      "recorded",
      "age 6, sex male, cause bleed, herniation suspected, asked always-confirm",
      "Age six years, sex male, cause bleed, herniation suspected. Targets: systolic one oh two, MAP seventy five, CPP forty five, end tidal thirty to thirty five. Herniation. Think of pupil drugs, eye injury. Start rescue measures?",
    ],
    [
      "disregard",
      "recorded",
      "closed denied, struck 4",
      "Disregarded: age six years, sex male, cause bleed, herniation suspected. Targets: systolic one ten, MAP ninety, CPP sixty, end tidal thirty five to forty five.",
    ],
  ],
  "a corrected cause replaces the one said before": [
    ["cause bleed", "recorded", "cause bleed", "Cause bleed. Target: systolic one thirty to one fifty."],
    [
      "correction cause head injury",
      "recorded",
      "struck 1, cause injury",
      "Cause head injury. Target: systolic one ten.",
    ],
    ["disregard", "recorded", "struck 1", "Disregarded: cause head injury."],
    ["read back", "answered", "", "Nothing recorded yet."],
  ],
  "a corrected herniation replaces the one said before": [
    [
      "herniation suspected",
      "recorded",
      "herniation suspected, asked always-confirm",
      "Herniation suspected. Target: end tidal thirty to thirty five. Herniation. Think of pupil drugs, eye injury. Start rescue measures?",
    ],
    [
      "correction no herniation",
      "recorded",
      "struck 1, herniation none, closed restated",
      "No herniation. Target: end tidal thirty five to forty five.",
    ],
  ],
  "a cause corrected after other values is struck, and they stay": [
    ["cause head injury", "recorded", "cause injury", "Cause head injury."],
    ["heart rate ninety", "recorded", "hr 90", "Heart rate ninety."],
    [
      "correction cause bleed",
      "recorded",
      "struck 1, cause bleed",
      "Cause bleed. Target: systolic one thirty to one fifty.",
    ],
    ["disregard", "recorded", "struck 1", "Disregarded: cause bleed. Target: systolic one ten."],
  ],
  "a cause said for an age is struck by the correction that names the age": [
    ["cause bleed", "recorded", "cause bleed", "Cause bleed. Target: systolic one thirty to one fifty."],
    [
      "correction age six",
      "recorded",
      "struck 1, age 6",
      "Age six years. Targets: systolic one oh two, MAP sixty five, CPP forty five. Cause bleed struck.",
    ],
  ],
  "two causes in one breath are asked about": [
    ["cause bleed, cause head injury", "asked", "asked ambiguous", "Cause bleed, or cause head injury?"],
    [
      "cause bleed",
      "recorded",
      "closed restated, cause bleed",
      "Cause bleed. Target: systolic one thirty to one fifty.",
    ],
    ["affirm", "ignored", "", ""],
  ],
  "an alert that a child's age takes away is withdrawn, and the targets are said": [
    ["systolic nine five", "recorded", "sbp 95", "Systolic ninety five."],
    ["age two", "recorded", "age 2", "Age two years. Targets: systolic ninety four, MAP sixty five, CPP forty five."],
  ],
  "a mean and a pressure that do not agree are told apart aloud": [
    [
      "one forty over seventy mean eight zero",
      "recorded",
      "sbp 140, dbp 70, map 80",
      "Pressure one forty, one four zero, over seventy, MAP eighty. Systolic and diastolic give ninety three.",
    ],
    [
      "one six zero over eighty mean nine five",
      "recorded",
      "sbp 160, dbp 80, map 95",
      "Pressure one sixty, one six zero, over eighty. Measured MAP ninety five, on target. Systolic and diastolic give one oh seven.",
    ],
    ["sats ninety six", "recorded", "spo2 96", "Sats ninety six."],
  ],
  "a sound-alike across a limit of this patient is asked back; across none, it is not": [
    ["one thirteen over sixty", "recorded", "sbp 113, dbp 60", "Pressure one thirteen, one one three, over sixty."],
    ["cause bleed", "recorded", "cause bleed", "Cause bleed. Target: systolic one thirty to one fifty."],
    ["one thirteen over sixty", "asked", "asked sound-alike", "Systolic one thirteen, one one three?"],
  ],
};
