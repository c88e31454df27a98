import type { Row } from "./caseRows.ts";

/** What was said wrongly or heard wrongly, put right in as few words as can be. Invented. */
export const REPAIR_CASES: Readonly<Record<string, readonly Row[]>> = {
  "broken off and said anew in one breath: only what comes last is recorded": [
    [
      "one ten, no, one twenty over eighty",
      "recorded",
      "sbp 120, dbp 80",
      "Pressure one twenty over eighty. MAP ninety three, on target.",
    ],
    [
      "pressure one ten over, correction, one twenty over eighty",
      "recorded",
      "sbp 120, dbp 80",
      "Pressure one twenty over eighty. MAP ninety three, on target.",
    ],
    ["sats ninety, correction, ninety two", "recorded", "spo2 92", "Sats ninety two."],
    ["rate eighty no rate ninety", "recorded", "hr 90", "Heart rate ninety."],
    ["disregard", "recorded", "struck 1", "Disregarded: heart rate ninety."],
    ["correction sats nine four", "recorded", "struck 1, spo2 94", "Sats ninety four. Sats alert withdrawn."],
  ],
  "said anew, a value that sounds like another is still asked back": [
    ["rate one oh five, no, one thirty", "asked", "asked sound-alike", "Heart rate one thirty, one three zero?"],
    ["one three zero", "recorded", "closed affirmed, hr 130", "Heart rate one thirty, one three zero."],
  ],
  "correction with digits, right after the read-back": [
    ["icp two five", "recorded", "icp 25", "ICP twenty five."],
    ["correction, one five", "recorded", "struck 1, icp 15", "ICP fifteen, one five. ICP alert withdrawn."],
    ["negative, five zero", "recorded", "struck 1, icp 50", "ICP fifty, five zero."],
    ["correction fifteen", "asked", "asked sound-alike", "ICP fifteen, one five?"],
    ["affirm", "recorded", "closed affirmed, struck 1, icp 15", "ICP fifteen, one five. ICP alert withdrawn."],
  ],
  "a pressure corrected to one that was felt has no diastolic any more": [
    ["ninety over sixty two", "recorded", "sbp 90, dbp 62", "Pressure ninety over sixty two."],
    [
      "correction one twenty palpated",
      "recorded",
      "struck 2, sbp 120 palpated",
      "Systolic one twenty. MAP alert withdrawn.",
    ],
  ],
  "negative with the whole statement corrects it": [
    ["sats ninety", "recorded", "spo2 90", "Sats ninety."],
    ["negative, sats ninety two", "recorded", "struck 1, spo2 92", "Sats ninety two."],
  ],
  "after two values in one breath nobody knows which": [
    ["rate eighty, sats ninety", "recorded", "hr 80, spo2 90", "Heart rate eighty, sats ninety."],
    ["correction nine two", "refused", "", "Say which value."],
    ["negative nine two", "refused", "", "Say which value."],
    ["correction sats nine two", "recorded", "struck 1, spo2 92", "Sats ninety two."],
    ["read back", "answered", "", "Sats ninety two."],
  ],
  "half of a pressure in one word": [
    [
      "one twenty over eighty",
      "recorded",
      "sbp 120, dbp 80",
      "Pressure one twenty over eighty. MAP ninety three, on target.",
    ],
    ["correction one five", "refused", "", "Say which value."],
    ["correction, diastolic five zero", "recorded", "struck 2, sbp 120, dbp 50", "Pressure one twenty over fifty."],
    [
      "negative, systolic one three zero",
      "recorded",
      "struck 2, dbp 50, sbp 130",
      "Pressure one thirty, one three zero, over fifty.",
    ],
  ],
  "half of a pressure while its question waits": [
    ["BP ninety over fifteen", "asked", "asked implausible", "Diastolic fifty, five zero?"],
    ["correction, diastolic six zero", "recorded", "closed restated, dbp 60, sbp 90", "Pressure ninety over sixty."],
  ],
  "a correction while a question waits": [
    ["icp fifteen", "asked", "asked sound-alike", "ICP fifteen, one five?"],
    ["correction, two five", "recorded", "closed restated, icp 25", "ICP twenty five."],
    ["correction, five zero", "recorded", "struck 1, icp 50", "ICP fifty, five zero."],
  ],
  "negative and a number answer the question that was said last": [
    ["rate ninety", "recorded", "hr 90", "Heart rate ninety."],
    ["[0:20] icp fifteen", "asked", "asked sound-alike", "ICP fifteen, one five?"],
    ["[0:24] negative, one five", "refused", "", "ICP fifteen, one five?"],
    ["[0:28] negative, five zero", "recorded", "closed affirmed, icp 50", "ICP fifty, five zero."],
  ],
  "negative and a number after a newer read-back are not guessed at": [
    ["icp fifteen", "asked", "asked sound-alike", "ICP fifteen, one five?"],
    ["[0:05] rate ninety", "recorded", "hr 90", "Heart rate ninety."],
    ["[0:09] negative, nine five", "refused", "", "Say which value."],
    ["[0:12] one five", "recorded", "closed affirmed, icp 15", "ICP fifteen, one five."],
  ],
  "a number of another kind after a dose goes to the reading, and names it": [
    ["weight eight five kilos", "recorded", "weight 85", "Weight eighty five kilograms."],
    [
      "dose of levetiracetam",
      "asked",
      "asked always-confirm",
      "Levetiracetam, seizure that does not stop. Four thousand five hundred, four five zero zero, milligrams. Sixty per kilo, actual weight eighty five. At the cap. Two other doses in the protocol. Levetiracetam, which concentration?",
    ],
    ["correction, five five", "recorded", "struck 1, weight 55", "Weight fifty five kilograms."],
  ],
  "said two ways, a sound-alike needs no question": [
    ["icp fifteen, one five", "recorded", "icp 15", "ICP fifteen, one five."],
    ["map eighty, eight zero", "recorded", "map 80", "MAP eighty."],
    [
      "pressure one fifteen one one five over seventy",
      "recorded",
      "sbp 115, dbp 70",
      "Pressure one fifteen, one one five, over seventy. MAP eighty five, five under ninety. CPP seventy, on target.",
    ],
    ["sats ninety, nine zero", "recorded", "spo2 90", "Sats ninety."],
    ["end tidal forty, four zero", "recorded", "etco2 40", "End tidal forty, four zero."],
    [
      "correction, fourteen, one four",
      "asked",
      "asked unit",
      "End tidal fourteen: millimetres of mercury, or kilopascals?",
    ],
  ],
  "two ways that disagree are asked back": [
    ["icp fifteen, five zero", "asked", "asked ambiguous", "ICP fifteen, one five, or ICP fifty, five zero?"],
    ["affirm", "refused", "", "ICP fifteen, one five, or ICP fifty, five zero?"],
    ["fifteen", "refused", "", "Say the digits: ICP fifteen, one five, or ICP fifty, five zero?"],
    ["five zero", "recorded", "closed affirmed, icp 50", "ICP fifty, five zero."],
  ],
  "of two ways that disagree the only possible one is asked about": [
    ["map thirteen, three zero", "asked", "asked acoustic", "MAP thirty?"],
    ["affirm", "recorded", "closed affirmed, map 30", "MAP thirty."],
  ],
};
