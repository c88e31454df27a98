const OPEN: readonly string[] = [
  "one ten over sixty, rate ninety, sats ninety four",
  "blood pressure one ten over sixty",
  "art line one ten over sixty, mean eighty",
  "ninety over palp",
  "systolic one ten",
  "map seventy two",
  "heart rate one oh five",
  "breaths fourteen",
  "sats ninety four percent",
  "end tidal thirty five",
  "end tidal four point five kilopascals",
  "i c p twenty two at the tragus",
  "temperature thirty six point five",
  "glucose five point five",
  "eyes three, verbal four, motor five",
  "verbal not testable",
  "left pupil four brisk",
  "right pupil six fixed",
  "pupils equal and reactive",
  "weight eighty kilos",
  "height one seventy eight centimetres",
  "forty five year old man",
  "six months old",
  "cause head injury",
  "cause bleed",
  "herniation suspected",
  "no herniation",
  "correction heart rate ninety",
  "correction ninety",
  "disregard",
  "status",
  "next step",
  "done",
  "not needed",
  "later",
  "suction ready",
  "bougie not ready",
  "dose of ketamine",
  "why",
  "why that dose",
  "why map",
  "read back",
  "say again",
  "stand by",
  "which protocol",
  "what can i say",
  "hear me",
  "forget my voice",
];

const ANSWERS: readonly string[] = ["affirm", "negative", "one five", "fifteen, one five", "kilopascals"];

/**
 * One or more phrases of every family that can be said now, for the list shown and read to users.
 *
 * @param state `open`: no question waits. `asked`: one does, so its answers come first.
 * Errors: none. Every phrase is tested to be understood in its state.
 * Not for: recognition; the grammar files hold what is understood.
 */
export function examplePhrases(state: "open" | "asked"): readonly string[] {
  return state === "asked" ? [...ANSWERS, ...OPEN] : OPEN;
}
