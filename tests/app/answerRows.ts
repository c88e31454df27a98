import type { Row } from "./caseRows.ts";

/** Cases in which an answer could go to the wrong question, the wrong slot or the wrong unit. Invented. */
export const ANSWER_CASES: Readonly<Record<string, readonly Row[]>> = {
  "once the unit is settled, a number that sounds like another is still asked back": [
    ["end tidal fifteen", "asked", "asked unit", "End tidal fifteen: millimetres of mercury, or kilopascals?"],
    ["millimetres", "asked", "closed restated, asked sound-alike", "End tidal fifteen, one five?"],
    ["five zero", "recorded", "closed affirmed, etco2 50", "End tidal fifty, five zero."],
  ],
  "a unit proposed and affirmed does not settle the number": [
    ["glucose one eighty", "asked", "asked unit", "Glucose one eighty milligrams per decilitre?"],
    [
      "affirm",
      "recorded",
      "closed affirmed, glucose 10",
      "Glucose ten, from one eighty, one eight zero, milligrams per decilitre.",
    ],
  ],
  "a number said to a question of units has no unit either": [
    ["end tidal five", "asked", "asked unit", "End tidal five: millimetres of mercury, or kilopascals?"],
    ["six", "asked", "closed restated, asked unit", "End tidal six: millimetres of mercury, or kilopascals?"],
    ["six kilopascals", "recorded", "closed restated, etco2 45", "End tidal forty five, from six kilopascals."],
  ],
  "a corrected number does not take over a unit that nobody said": [
    ["end tidal 38", "recorded", "etco2 38", "End tidal thirty eight."],
    ["correction five", "asked", "asked unit", "End tidal five: millimetres of mercury, or kilopascals?"],
    [
      "kilopascals",
      "recorded",
      "closed affirmed, struck 1, etco2 37.5",
      "End tidal thirty eight, from five kilopascals.",
    ],
    ["correction six", "recorded", "struck 1, etco2 45", "End tidal forty five, from six kilopascals."],
  ],
  "a corrected number takes over what was said of how and where": [
    ["left pupil four brisk", "recorded", "pupilLeft 4 brisk", "Left pupil four brisk."],
    ["correction three", "recorded", "struck 1, pupilLeft 3 brisk", "Left pupil three brisk."],
  ],
  "a corrected weight stays in pounds": [
    [
      "weight 176 pounds",
      "recorded",
      "weight 79.8",
      "Weight seventy nine point eight kilograms, from one seventy six pounds.",
    ],
    [
      "correction one seven five",
      "recorded",
      "struck 1, weight 79.4",
      "Weight seventy nine point four kilograms, from one seventy five pounds.",
    ],
  ],
  "a unit answers the question of units, whatever was asked since": [
    ["end tidal five", "asked", "asked unit", "End tidal five: millimetres of mercury, or kilopascals?"],
    ["icp fifteen", "asked", "asked sound-alike", "ICP fifteen, one five?"],
    [
      "kilopascals",
      "recorded",
      "closed affirmed, etco2 37.5",
      "End tidal thirty eight, from five kilopascals. ICP fifteen, one five?",
    ],
    ["percent", "ignored", "", ""],
  ],
  "a number for an older question is not put into the newer one": [
    ["icp fifteen", "asked", "asked sound-alike", "ICP fifteen, one five?"],
    ["weight eighty kilos", "asked", "asked sound-alike", "Weight eighty, eight zero?"],
    ["one five", "refused", "", "Say which value."],
    ["icp one five", "recorded", "closed restated, icp 15", "ICP fifteen, one five."],
    ["eight zero", "recorded", "closed affirmed, weight 80", "Weight eighty, eight zero, kilograms."],
  ],
  "values said anew in one breath answer every question about them": [
    ["icp fifteen", "asked", "asked sound-alike", "ICP fifteen, one five?"],
    ["end tidal five", "asked", "asked unit", "End tidal five: millimetres of mercury, or kilopascals?"],
    [
      "icp one five, end tidal thirty eight",
      "recorded",
      "closed restated, closed restated, icp 15, etco2 38",
      "ICP fifteen, one five, end tidal thirty eight.",
    ],
    ["affirm", "ignored", "", ""],
  ],
  "a correction of what is in question strikes nothing older": [
    ["icp 20", "recorded", "icp 20", "ICP twenty."],
    ["heart rate ninety", "recorded", "hr 90", "Heart rate ninety."],
    ["icp fifteen", "asked", "asked sound-alike", "ICP fifteen, one five?"],
    ["correction icp two five", "recorded", "closed restated, icp 25", "ICP twenty five."],
  ],
  "a bare correction does not choose between the question and the last reading": [
    ["heart rate ninety", "recorded", "hr 90", "Heart rate ninety."],
    ["icp fifteen", "asked", "asked sound-alike", "ICP fifteen, one five?"],
    ["correction two five", "refused", "", "Say which value."],
    ["one five", "recorded", "closed affirmed, icp 15", "ICP fifteen, one five."],
  ],
  "a bare correction of the only value that was said goes to its question": [
    ["icp fifteen", "asked", "asked sound-alike", "ICP fifteen, one five?"],
    ["correction two five", "recorded", "closed restated, icp 25", "ICP twenty five."],
  ],
  "the doubtful half said again keeps the other half": [
    ["BP ninety over fifteen", "asked", "asked implausible", "Diastolic fifty, five zero?"],
    ["diastolic five zero", "recorded", "closed restated, dbp 50, sbp 90", "Pressure ninety over fifty."],
  ],
  "a correction that cannot be, said again, keeps the half that was not corrected": [
    [
      "one twenty over eighty",
      "recorded",
      "sbp 120, dbp 80",
      "Pressure one twenty over eighty. MAP ninety three, on target.",
    ],
    [
      "correction systolic six two",
      "asked",
      "asked implausible",
      "Diastolic eighty, systolic sixty two cannot be. Say it again.",
    ],
    [
      "systolic one six two",
      "recorded",
      "closed restated, struck 2, dbp 80, sbp 162",
      "Pressure one sixty two over eighty. MAP one oh seven, on target.",
    ],
  ],
  "a half corrected after other values keeps its other half": [
    [
      "one twenty over eighty",
      "recorded",
      "sbp 120, dbp 80",
      "Pressure one twenty over eighty. MAP ninety three, on target.",
    ],
    ["heart rate ninety", "recorded", "hr 90", "Heart rate ninety."],
    [
      "correction diastolic eight five",
      "recorded",
      "struck 2, sbp 120, dbp 85",
      "Pressure one twenty over eighty five. MAP ninety seven, on target.",
    ],
    ["disregard", "recorded", "struck 2", "Disregarded: pressure one twenty over eighty five."],
    ["status", "answered", "", "No pressure recorded yet."],
  ],
  "a correction of a correction strikes what stands, not what is struck": [
    ["heart rate ninety", "recorded", "hr 90", "Heart rate ninety."],
    ["correction eight five", "recorded", "struck 1, hr 85", "Heart rate eighty five."],
    ["correction heart rate eight six", "recorded", "struck 1, hr 86", "Heart rate eighty six."],
    ["disregard", "recorded", "struck 1", "Disregarded: heart rate eighty six."],
    ["read back", "answered", "", "Nothing recorded yet."],
  ],
  "a value said of the wrong thing is struck by a correction that names the right one": [
    [
      "right pupil five fixed",
      "recorded",
      "pupilRight 5 fixed, asked always-confirm",
      "Right pupil five fixed. Right pupil fixed, perhaps herniation. Think of pupil drugs, eye injury. Start rescue measures?",
    ],
    [
      "correction left pupil five fixed",
      "recorded",
      "struck 1, pupilLeft 5 fixed, closed restated, asked always-confirm",
      "Left pupil five fixed. Right pupil five fixed struck. Left pupil fixed, perhaps herniation. Think of pupil drugs, eye injury. Start rescue measures?",
    ],
  ],
  "a correction that could be of the name or of an older value is not guessed at": [
    ["sats ninety two", "recorded", "spo2 92", "Sats ninety two."],
    ["heart rate nine five", "recorded", "hr 95", "Heart rate ninety five."],
    [
      "correction sats nine five",
      "refused",
      "",
      "Last was heart rate ninety five. Say disregard, or say it without correction.",
    ],
    ["correction sats nine four", "recorded", "struck 1, spo2 94", "Sats ninety four. Sats alert withdrawn."],
  ],
  "a correction with nothing to correct says so": [
    [
      "one twenty over eighty",
      "recorded",
      "sbp 120, dbp 80",
      "Pressure one twenty over eighty. MAP ninety three, on target.",
    ],
    ["correction resp rate one four", "refused", "", "Nothing to correct. Say it without correction."],
    ["resp rate one four", "recorded", "rr 14", "Breaths fourteen, one four."],
  ],
  "a number corrected to a finding, and back": [
    ["verbal not testable", "recorded", "gcsVerbal not-testable", "Verbal not testable."],
    ["correction verbal four", "recorded", "struck 1, gcsVerbal 4", "Verbal four."],
    ["correction verbal not testable", "recorded", "struck 1, gcsVerbal not-testable", "Verbal not testable."],
    ["disregard", "recorded", "struck 1", "Disregarded: verbal not testable."],
    ["read back", "answered", "", "Nothing recorded yet."],
  ],
  "a corrected value is not held against the wrong one that it replaces": [
    ["icp two two", "recorded", "icp 22", "ICP twenty two."],
    ["icp six two", "asked", "asked jump", "ICP sixty two, six two? Last was twenty two."],
    ["affirm", "recorded", "closed affirmed, icp 62", "ICP sixty two."],
    ["correction icp two three", "recorded", "struck 1, icp 23", "ICP twenty three."],
    ["correction icp six one", "asked", "asked jump", "ICP sixty one, six one? Last was twenty two."],
  ],
  "a corrected sex replaces the one said before": [
    ["sex female", "recorded", "sex female", "Sex female."],
    ["correction sex male", "recorded", "struck 1, sex male", "Sex male."],
  ],
  "an answer to a step taken back brings the earlier answer back": [
    ["suction later", "recorded", "step suction later", "Suction: later."],
    ["suction ready", "recorded", "step suction done", "Suction: done."],
    ["disregard", "recorded", "struck 1", "Disregarded: Suction: done. Suction: later."],
  ],
  "a critical step that is not needed is named": [
    ["capnograph not needed", "recorded", "step capnograph not-needed", "Critical step not needed: capnograph."],
  ],
  "negative, then the value": [
    ["heart rate sixty five", "recorded", "hr 65", "Heart rate sixty five."],
    [
      "heart rate one ninety five",
      "asked",
      "asked jump",
      "Heart rate one ninety five, one nine five? Last was sixty five.",
    ],
    ["negative", "answered", "closed denied", "Not recorded. Say it again."],
    ["one oh five", "ignored", "", ""],
    ["heart rate one oh five", "recorded", "hr 105", "Heart rate one oh five."],
  ],
  "say again repeats the question while it waits": [
    ["icp fifteen", "asked", "asked sound-alike", "ICP fifteen, one five?"],
    ["sats ninety six", "recorded", "spo2 96", "Sats ninety six."],
    ["say again", "answered", "", "ICP fifteen, one five?"],
    ["one five", "recorded", "closed affirmed, icp 15", "ICP fifteen, one five."],
    ["say again", "answered", "", "ICP fifteen, one five."],
  ],
  "an alert about oxygen does not silence what the pressure means": [
    [
      "one twenty over eighty, sats eighty five",
      "recorded",
      "sbp 120, dbp 80, spo2 85",
      "Pressure one twenty over eighty, sats eighty five. MAP ninety three, on target.",
    ],
  ],
};
