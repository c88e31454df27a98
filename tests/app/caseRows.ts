/** One line of a case: what is said, what comes of it, the facts in short, and what is said back. */
export type Row = readonly [said: string, outcome: string, facts: string, reply: string];

/** Cases of our own, invented. Each is one case from its opening; rows follow one another. */
export const CASES: Readonly<Record<string, readonly Row[]>> = {
  "a pressure is recorded and set against the target": [
    [
      "blood pressure one twenty over eighty",
      "recorded",
      "sbp 120, dbp 80",
      "Pressure one twenty over eighty. MAP ninety three, on target.",
    ],
    ["BP 120/80", "recorded", "sbp 120, dbp 80", "Pressure one twenty over eighty. MAP ninety three, on target."],
    ["ninety over palp", "recorded", "sbp 90 palpated", "Systolic ninety."],
  ],
  "several values in one breath": [
    [
      "one twenty over eighty, rate ninety, sats ninety five",
      "recorded",
      "sbp 120, dbp 80, hr 90, spo2 95",
      "Pressure one twenty over eighty, heart rate ninety, sats ninety five. MAP ninety three, on target.",
    ],
  ],
  "a measured mean wins over the computed one": [
    [
      "one forty over seventy mean ninety eight",
      "recorded",
      "sbp 140, dbp 70, map 98",
      "Pressure one forty, one four zero, over seventy. Measured MAP ninety eight, on target.",
    ],
  ],
  "a sound-alike is asked back and settled by its digits": [
    ["icp fifteen", "asked", "asked sound-alike", "ICP fifteen, one five?"],
    ["fifteen", "refused", "", "Say the digits: one five, or five zero?"],
    ["one five", "recorded", "closed affirmed, icp 15", "ICP fifteen, one five."],
  ],
  "the other sound-alike can be meant": [
    ["icp fifteen", "asked", "asked sound-alike", "ICP fifteen, one five?"],
    ["five zero", "recorded", "closed affirmed, icp 50", "ICP fifty, five zero."],
  ],
  "a third number is neither of the two": [
    ["icp fifteen", "asked", "asked sound-alike", "ICP fifteen, one five?"],
    ["two five", "recorded", "closed restated, icp 25", "ICP twenty five."],
  ],
  "two ways of saying a number settle it": [
    ["icp fifteen", "asked", "asked sound-alike", "ICP fifteen, one five?"],
    ["fifty five zero", "recorded", "closed affirmed, icp 50", "ICP fifty, five zero."],
  ],
  "digits said one by one are not asked back": [
    ["icp one five", "recorded", "icp 15", "ICP fifteen, one five."],
    ["ICP 15", "recorded", "icp 15", "ICP fifteen, one five."],
  ],
  "an impossible diastolic is asked as what it probably was": [
    ["BP ninety over fifteen", "asked", "asked implausible", "Diastolic fifty, five zero?"],
    ["affirm", "recorded", "closed affirmed, sbp 90, dbp 50", "Pressure ninety over fifty."],
  ],
  "a pressure upside down is asked anew and never recorded": [
    [
      "BP sixty over one twenty",
      "asked",
      "asked implausible",
      "Systolic sixty, diastolic one twenty cannot be. Say it again.",
    ],
    ["affirm", "refused", "", "Systolic sixty, diastolic one twenty cannot be. Say it again."],
    ["one twenty over sixty", "recorded", "closed restated, sbp 120, dbp 60", "Pressure one twenty over sixty."],
  ],
  "negative leaves the value out": [
    ["icp fifteen", "asked", "asked sound-alike", "ICP fifteen, one five?"],
    ["negative", "answered", "closed denied", "Not recorded. Say it again."],
    ["affirm", "ignored", "", ""],
  ],
  "a unit that could be two is asked": [
    ["end tidal five", "asked", "asked unit", "End tidal five: millimetres of mercury, or kilopascals?"],
    ["kilopascals", "recorded", "closed affirmed, etco2 37.5", "End tidal thirty eight, from five kilopascals."],
    ["end tidal thirty eight", "recorded", "etco2 38", "End tidal thirty eight."],
  ],
  "affirm does not choose between units": [
    ["end tidal five", "asked", "asked unit", "End tidal five: millimetres of mercury, or kilopascals?"],
    ["affirm", "refused", "", "End tidal five: millimetres of mercury, or kilopascals?"],
    ["negative", "answered", "closed denied", "Not recorded. Say it again."],
  ],
  "a question does not block other values, and comes back when the newer one is settled": [
    ["icp fifteen", "asked", "asked sound-alike", "ICP fifteen, one five?"],
    ["sats ninety six", "recorded", "spo2 96", "Sats ninety six."],
    ["weight eighty kilos", "asked", "asked sound-alike", "Weight eighty, eight zero?"],
    [
      "eight zero",
      "recorded",
      "closed affirmed, weight 80",
      "Weight eighty, eight zero, kilograms. ICP fifteen, one five?",
    ],
    ["one five", "recorded", "closed affirmed, icp 15", "ICP fifteen, one five."],
  ],
  "a jump is asked back with the last value": [
    ["heart rate sixty five", "recorded", "hr 65", "Heart rate sixty five."],
    [
      "heart rate one ninety five",
      "asked",
      "asked jump",
      "Heart rate one ninety five, one nine five? Last was sixty five.",
    ],
    ["affirm", "recorded", "closed affirmed, hr 195", "Heart rate one ninety five."],
  ],
  "correction replaces the pressure": [
    [
      "one ten over eighty two",
      "recorded",
      "sbp 110, dbp 82",
      "Pressure one ten over eighty two. MAP ninety one, on target.",
    ],
    [
      "correction one twenty over eighty two",
      "recorded",
      "struck 2, sbp 120, dbp 82",
      "Pressure one twenty over eighty two. MAP ninety five, on target.",
    ],
  ],
  "correction of one half keeps the other": [
    [
      "one ten over eighty two",
      "recorded",
      "sbp 110, dbp 82",
      "Pressure one ten over eighty two. MAP ninety one, on target.",
    ],
    [
      "correction systolic one twenty",
      "recorded",
      "struck 2, dbp 82, sbp 120",
      "Pressure one twenty over eighty two. MAP ninety five, on target.",
    ],
  ],
  "a bare correction needs one value to correct": [
    ["heart rate ninety", "recorded", "hr 90", "Heart rate ninety."],
    ["correction eighty five", "recorded", "struck 1, hr 85", "Heart rate eighty five."],
    [
      "one twenty over eighty",
      "recorded",
      "sbp 120, dbp 80",
      "Pressure one twenty over eighty. MAP ninety three, on target.",
    ],
    ["correction ninety", "refused", "", "Say which value."],
  ],
  "a correction that must be asked strikes nothing until it is affirmed": [
    ["icp two two", "recorded", "icp 22", "ICP twenty two."],
    ["correction icp fifteen", "asked", "asked sound-alike", "ICP fifteen, one five?"],
    ["read back", "answered", "", "ICP twenty two."],
    ["one five", "recorded", "closed affirmed, struck 1, icp 15", "ICP fifteen, one five."],
  ],
  "disregard strikes the last reading, or drops the question": [
    ["heart rate ninety", "recorded", "hr 90", "Heart rate ninety."],
    ["icp fifteen", "asked", "asked sound-alike", "ICP fifteen, one five?"],
    ["disregard", "answered", "closed denied", "Disregarded: i c p fifteen."],
    ["disregard", "recorded", "struck 1", "Disregarded: heart rate ninety."],
    ["disregard", "answered", "", "Nothing to disregard."],
  ],
  "status with and without an ICP": [
    ["status", "answered", "", "No pressure recorded yet."],
    [
      "one twenty over eighty",
      "recorded",
      "sbp 120, dbp 80",
      "Pressure one twenty over eighty. MAP ninety three, on target.",
    ],
    [
      "status",
      "answered",
      "",
      "One twenty over eighty. MAP ninety three, on target. If ICP twenty, CPP seventy three.",
    ],
    ["icp two two", "recorded", "icp 22", "ICP twenty two. CPP seventy one, on target."],
    ["status", "answered", "", "One twenty over eighty. MAP ninety three, on target. CPP seventy one."],
  ],
  "steps by name, by turn, and taken back": [
    ["done", "refused", "", "No step is open. Say next."],
    ["next", "answered", "called bleeding", "Bleeding stopped, pelvis bound if suspected?"],
    ["say again", "answered", "", "Bleeding stopped, pelvis bound if suspected?"],
    ["done", "recorded", "step bleeding done", "Bleeding: done."],
    ["suction ready", "recorded", "step suction done", "Suction: done."],
    ["disregard", "recorded", "struck 1", "Disregarded: Suction: done. The step is open again."],
    ["next", "answered", "called meanPressure", "Mean pressure at target?"],
    ["later", "recorded", "step meanPressure later", "Mean pressure: later."],
    ["next", "answered", "called fluid", "Small isotonic bolus, or blood if bleeding?"],
    ["not needed", "recorded", "step fluid not-needed", "Fluid: not needed."],
  ],
  "a step that the record answers is not asked": [
    ["bleeding controlled", "recorded", "step bleeding done", "Bleeding: done."],
    [
      "one twenty over eighty",
      "recorded",
      "sbp 120, dbp 80",
      "Pressure one twenty over eighty. MAP ninety three, on target.",
    ],
    ["next", "answered", "called fluid", "Small isotonic bolus, or blood if bleeding?"],
  ],
  "room talk changes nothing": [
    ["the weather is nice today", "ignored", "", ""],
    ["b p is dropping", "ignored", "", ""],
    ["affirm", "ignored", "", ""],
    ["one five", "ignored", "", ""],
    ["bp 12O/80", "ignored", "", ""],
  ],
  "findings without a number": [
    [
      "left pupil four brisk, right pupil fixed",
      "recorded",
      "pupilLeft 4 brisk, pupilRight fixed, asked always-confirm",
      "Left pupil four brisk, right pupil fixed. Right pupil fixed, perhaps herniation. Think of pupil drugs, eye injury. Start rescue measures?",
    ],
    ["verbal not testable", "recorded", "gcsVerbal not-testable", "Verbal not testable."],
  ],
};
