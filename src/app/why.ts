import type { WhyAbout } from "../language/intent.ts";
import type { CaseState } from "../log/caseState.ts";
import type { Statement } from "../log/facts.ts";
import { explainCpp, explainMap, explainReading } from "../log/why/explainPerfusion.ts";
import type { Explanation } from "../log/why/explanation.ts";
import type { Protocol, WatchedCode } from "../protocol/protocol.ts";
import { planDrug } from "../rules/drugPlan.ts";
import { explainDose } from "../rules/explainDose.ts";
import type { Topic, WhyState } from "./topic.ts";

const value = (code: WatchedCode): Topic => ({ kind: "value", code });

/** The number that a "why" is about; none where nothing of the kind was said. */
export const topicOf = (about: WhyAbout, { lastNumber, lastDose }: WhyState): Topic | undefined =>
  about === "last" ? lastNumber : about === "dose" ? lastDose : value(about);

/** The number that a read-back speaks of last: the one that "why" would then mean. */
export function topicOfStatement({ vitals }: Statement): Topic | undefined {
  const has = (...codes: readonly string[]) => vitals.some((v) => codes.includes(v.code));
  if (has("icp")) return value("cpp");
  if (has("sbp", "dbp", "map")) return value("map");
  return has("spo2") ? value("spo2") : undefined;
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
    case "sbp":
    case "spo2":
      return explainReading(log, protocol, topic.code);
  }
}
