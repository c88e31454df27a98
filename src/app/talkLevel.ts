import type { VitalCode } from "../core/vitals.ts";
import type { NewFact, Statement } from "../log/facts.ts";
import type { Perfusion } from "../log/perfusion.ts";
import type { TalkLevel } from "../log/talkFacts.ts";
import type { Decision } from "./decide/decision.ts";

/** What doses and targets rest on: a slip in it would be noticed too late, so it is read back at every level. */
const BODY: readonly VitalCode[] = ["weight", "height", "age"];

const isOfPatient = ({ vitals, sex, cause, herniation }: Statement): boolean =>
  vitals.some(({ code }) => BODY.includes(code)) || [sex, cause, herniation].some((said) => said !== undefined);

/** Entries without a number, which the soft sound alone can acknowledge. */
function isPlain(fact: NewFact): boolean {
  switch (fact.type) {
    case "step.answered":
      return fact.value === undefined && fact.answer !== "waived";
    case "phase.entered":
    case "clock.started":
    case "clock.stopped":
      return true;
    default:
      return false;
  }
}

/**
 * Whether the soft sound alone is the answer. Only where the user wants nothing but alerts, and only to what was recorded
 * and asks nothing back: questions, refusals, drugs, and what was asked for are said at every level.
 */
export function isMarkEnough(level: TalkLevel, { outcome, reply, facts }: Decision): boolean {
  if (level !== "alerts" || outcome !== "recorded") return false;
  if (reply.kind === "words") return facts.every(isPlain);
  return reply.kind === "recorded" && reply.then === undefined && !reply.statements.some(isOfPatient);
}

/** Whether a read-back goes on to what it means for perfusion: in brief talk only where that is under target. */
export function saysConsequence(level: TalkLevel, { map, cpp }: Perfusion): boolean {
  const isUnder = (map?.deficitMmHg ?? 0) > 0 || (cpp.kind === "measured" && cpp.deficitMmHg > 0);
  return level === "full" || isUnder;
}
