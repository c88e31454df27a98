import type { HelpTopic } from "../careIntent.ts";

/** What "what can I say" answers: short enough to be heard out. The screen lists more. */
export function sayHelp(questionWaits: boolean): string {
  return questionWaits
    ? "Affirm, negative, or the digits. Or say the value again."
    : "Say a reading, such as one ten over sixty, or sats ninety four. Or say status, next, done, correction, disregard, read back, stand by.";
}

const TOPICS: Readonly<Record<HelpTopic, string>> = {
  readings: "Say one ten over sixty, sats ninety four, left pupil four brisk, motor five, or cause bleed.",
  drugs:
    "Say dose of ketamine, ketamine given, start noradrenaline at point one, make push dose phenylephrine, or totals.",
  list: "Say read the list, killer items, next, done, later, not needed, what's left, or waive.",
  airway: "Say blade in, out, tube in, tube confirmed, which tube, ventilator settings, or failed airway.",
  clocks: "Say clocks, oxygen on, start apnoea, next phase, start rescue, or end rescue.",
};

/** What can be said about one thing, by example. */
export const sayHelpAbout = (topic: HelpTopic): string => TOPICS[topic];
