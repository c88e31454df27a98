/** What can be said at any time. */
const ALWAYS: readonly string[] = [
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
  "strike the i c p of fifty",
  "correct the i c p of fifty to fifteen",
  "handover",
  "handover short",
  "go on",
  "status",
  "next step",
  "done",
  "not needed",
  "later",
  "read the list",
  "killer items",
  "what's left",
  "waive no time",
  "ketamine",
  "ketamine fifty milligrams per mil",
  "ketamine given",
  "rocuronium ninety given",
  "push dose given",
  "start noradrenaline at point one",
  "stop noradrenaline",
  "how much noradrenaline",
  "make push dose phenylephrine",
  "equivalents of mannitol",
  "saline two fifty given",
  "totals",
  "cylinder six hundred litres at fifteen",
  "oxygen running",
  "clocks",
  "phase settle",
  "blade in",
  "out",
  "tube in",
  "tube confirmed",
  "which attempt",
  "failed airway",
  "start rescue",
  "end rescue",
  "which tube",
  "ventilator settings",
  "why",
  "why that dose",
  "why map",
  "how old is the pressure",
  "what's my margin",
  "read everything",
  "heard",
  "heard pressure",
  "i have it",
  "pause alerts for two minutes",
  "alerts on",
  "alerts only",
  "talk brief",
  "full talk",
  "speak louder",
  "speak slower",
  "usual voice",
  "read back",
  "say again",
  "stand by",
  "which protocol",
  "what can i say",
  "what can i say about drugs",
  "hear me",
  "forget my voice",
];

/** Answers to the steps by name: of the preparation, and once the tube is confirmed. */
const BEFORE: readonly string[] = [
  "suction ready",
  "bougie not ready",
  "tube eight point zero",
  "second medic calls pressures",
];
const AFTER: readonly string[] = [
  "tube depth twenty three centimetres",
  "ties loose",
  "tidal volume four fifty",
  "sedation running",
];

const ANSWERS: readonly string[] = [
  "affirm",
  "negative",
  "one five",
  "fifteen, one five",
  "kilopascals",
  "fifty milligrams per mil",
];

/** The states of a case in which different things can be said: the names of the public rules of `case.jsgf`. */
export type PhraseState = "open" | "asked" | "openAfter" | "askedAfter";

/**
 * One or more phrases of every family that can be said now, for the list shown and read to users.
 *
 * @param state as the grammars are named: whether a question waits, and whether the tube is confirmed.
 * Errors: none. Every phrase is tested to be understood in its state.
 * Not for: recognition; the grammar files hold what is understood.
 */
export function examplePhrases(state: PhraseState): readonly string[] {
  const isAfter = state === "openAfter" || state === "askedAfter";
  const open = [...ALWAYS, ...(isAfter ? AFTER : BEFORE)];
  return state === "asked" || state === "askedAfter" ? [...ANSWERS, ...open] : open;
}
