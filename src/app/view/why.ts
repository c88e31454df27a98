import { showWhy } from "../../language/sentences/shownWhy.ts";
import { sayWhy } from "../../language/sentences/why.ts";
import type { CaseState } from "../../log/caseState.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import type { WhyView } from "../screenView.ts";
import type { Topic } from "../topic.ts";
import { explain } from "../why.ts";

/** The number last explained, whole: its formula, every input with age and kind, the target, and all their sources. */
export function viewWhy(
  protocol: Protocol,
  log: CaseState,
  topic: Topic | undefined,
  nowMs: number,
): WhyView | undefined {
  const explanation = topic && explain(protocol, log, topic, nowMs);
  return explanation && { text: sayWhy(explanation, nowMs), lines: showWhy(explanation, nowMs) };
}
