import type { Row } from "./caseRows.ts";

/** The list of a failed airway. Invented. */
export const FAILED_AIRWAY_CASES: Readonly<Record<string, readonly Row[]>> = {
  "a failed airway is read in its order": [
    [
      "failed airway",
      "recorded",
      "failed airway, list all, called failureCalled",
      "Failed airway. Failure called aloud?",
    ],
    [
      "done",
      "recorded",
      "step failureCalled done, called maskOxygen",
      "Failure called: done. Mask and adjuncts: oxygen going in?",
    ],
    [
      "later",
      "recorded",
      "step maskOxygen later, called supraglotticIn",
      "Mask oxygen: later. Supraglottic device in, chest moving?",
    ],
    ["sats ninety six", "recorded", "spo2 96, called supraglotticIn", "Sats ninety six. Back to supraglottic in."],
    [
      "done",
      "recorded",
      "step supraglotticIn done, called wakeOrGoOn",
      "Supraglottic in: done. Wake, or go on: which?",
    ],
    [
      "done",
      "recorded",
      "step wakeOrGoOn done, called frontOfNeck",
      "Wake or continue: done. Cannot oxygenate: front of neck now.",
    ],
    [
      "done",
      "recorded",
      "step frontOfNeck done, called fallingPressure",
      "Front of neck: done. Falling pressure being treated meanwhile?",
    ],
    ["done", "recorded", "step fallingPressure done, list off", "Falling pressure: done. Put off: mask oxygen."],
    ["next", "answered", "called maskOxygen", "Mask and adjuncts: oxygen going in?"],
    ["done", "recorded", "step maskOxygen done", "Mask oxygen: done. Failed airway list complete."],
  ],
  "a failed airway goes before the preparation, and ends with its list": [
    ["read the list", "answered", "list all, called bleeding", "Bleeding stopped, pelvis bound if suspected?"],
    [
      "failed airway",
      "recorded",
      "failed airway, list all, called failureCalled",
      "Failed airway. Failure called aloud?",
    ],
    [
      "done",
      "recorded",
      "step failureCalled done, called maskOxygen",
      "Failure called: done. Mask and adjuncts: oxygen going in?",
    ],
    ["pause the list", "answered", "list off", "List paused."],
    ["next", "answered", "called maskOxygen", "Mask and adjuncts: oxygen going in?"],
  ],
  "a mistaken failed airway is taken back": [
    [
      "failed airway",
      "recorded",
      "failed airway, list all, called failureCalled",
      "Failed airway. Failure called aloud?",
    ],
    ["disregard", "recorded", "struck 1, list off", "Disregarded: failed airway."],
    ["next", "answered", "called bleeding", "Bleeding stopped, pelvis bound if suspected?"],
  ],
  "an answer in a failed airway is taken back": [
    [
      "failed airway",
      "recorded",
      "failed airway, list all, called failureCalled",
      "Failed airway. Failure called aloud?",
    ],
    [
      "done",
      "recorded",
      "step failureCalled done, called maskOxygen",
      "Failure called: done. Mask and adjuncts: oxygen going in?",
    ],
    [
      "disregard",
      "recorded",
      "struck 1, called maskOxygen",
      "Disregarded: Failure called: done. The step is open again. Back to mask oxygen.",
    ],
    ["next", "answered", "called failureCalled", "Failure called aloud?"],
  ],
};
