import type { Question } from "../../log/facts.ts";
import type { HelpTopic } from "../careIntent.ts";

const OPEN =
  "Say a reading, such as one ten over sixty. Or status, next, done, correction, disregard, stand by. Ask what can I say about drugs, the list, the airway, clocks, alerts, or readings.";

/** What would answer the question that waits. */
function sayAnswers({ acts, wants }: Question): string {
  switch (wants?.kind) {
    case "strength":
    case "stock":
      return "Say it as on the label, such as ten milligrams per mil. Or negative.";
    case "amount":
    case "rate":
    case "amountUnit":
    case "rateUnit":
      return "Say the number with its unit. Or negative.";
    case "stepValue":
      return "Say the number. Or negative.";
    case "caseLabel":
      return "Say erase, and what the case is called. Or negative.";
    case undefined:
      return acts === undefined ? "Affirm, negative, or the digits. Or say the value again." : "Affirm, or negative.";
  }
}

/** What "what can I say" answers: short enough to be heard out. The screen lists more. */
export const sayHelp = (question: Question | undefined): string =>
  question === undefined ? OPEN : sayAnswers(question);

const TOPICS: Readonly<Record<HelpTopic, string>> = {
  readings: "Say one ten over sixty, sats ninety four, left pupil four brisk, motor five, or cause bleed.",
  drugs:
    "Say dose of ketamine, ketamine given, start noradrenaline at point one, make push dose phenylephrine, or totals.",
  list: "Say read the list, killer items, next, done, later, not needed, what's left, or waive.",
  airway: "Say blade in, out, tube in, tube confirmed, which tube, ventilator settings, or failed airway.",
  clocks: "Say clocks, oxygen on, start apnoea, next phase, start rescue, or end rescue.",
  alerts:
    "Say heard, pause alerts, alerts only, talk brief, full talk, speak louder, speak slower, how old, or margin.",
};

/** What can be said about one thing, by example. */
export const sayHelpAbout = (topic: HelpTopic): string => TOPICS[topic];
