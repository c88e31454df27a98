import type { WhyAbout } from "../language/intent.ts";
import type { CaseState } from "../log/caseState.ts";
import type { Statement } from "../log/facts.ts";
import { explainCpp, explainMap } from "../log/why/explainPerfusion.ts";
import type { Explanation } from "../log/why/explanation.ts";
import { explainReading } from "../log/why/explainReading.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { planDrug } from "../rules/drugPlan.ts";
import { explainDose } from "../rules/explainDose.ts";
import type { NumberCode, Topic, WhyState } from "./topic.ts";

const value = (code: NumberCode): Topic => ({ kind: "value", code });

/** The number of the alert that was said last, of those that stand. */
function topicOfAlert({ alerts }: Protocol, log: CaseState): Topic | undefined {
  const said = alerts.flatMap(({ id, code }) => {
    const atSeq = log.alerts[id]?.announcedAtSeq;
    return atSeq === undefined ? [] : [{ code, atSeq }];
  });
  const [last] = said.sort((a, b) => b.atSeq - a.atSeq);
  return last && value(last.code === "cppBound" ? "cpp" : last.code);
}

/** The number that a "why" is about; none where nothing of the kind was said. */
export function topicOf(
  about: WhyAbout,
  protocol: Protocol,
  log: CaseState,
  { lastNumber, lastDose }: WhyState,
): Topic | undefined {
  switch (about) {
    case "last":
      return lastNumber;
    case "dose":
      return lastDose;
    case "alert":
      return topicOfAlert(protocol, log);
    default:
      return value(about);
  }
}

/** Of several numbers in one breath the one that is acted on first. */
const SPOKEN_OF = ["spo2", "etco2", "hr", "rr", "glucose", "temp"] as const;

/** The number that a read-back speaks of last: the one that "why" would then mean. */
export function topicOfStatement({ vitals }: Statement): Topic | undefined {
  const has = (...codes: readonly string[]) => vitals.some((v) => codes.includes(v.code));
  if (has("icp")) return value("cpp");
  if (has("sbp", "dbp", "map")) return value("map");
  const code = SPOKEN_OF.find((one) => has(one));
  return code && value(code);
}

/** Why the number is what it is, by the state of now; none while there is no such number. */
export function explain(protocol: Protocol, log: CaseState, topic: Topic, nowMs: number): Explanation | undefined {
  if (topic.kind === "dose") {
    const plan = planDrug(log, protocol, topic.drugId, nowMs);
    return plan.ok ? explainDose(log, plan.value) : undefined;
  }
  switch (topic.code) {
    case "map":
      return explainMap(log, protocol, nowMs);
    case "cpp":
      return explainCpp(log, protocol, nowMs);
    default:
      return explainReading(log, protocol, topic.code);
  }
}

/** What "why" will mean after this turn. A dose stays the last dose while other numbers are said. */
export function nextWhy(before: WhyState, said: Topic | undefined, isShown: boolean): WhyState {
  return {
    lastNumber: said ?? before.lastNumber,
    lastDose: said?.kind === "dose" ? said : before.lastDose,
    shown: isShown ? said : before.shown,
  };
}
