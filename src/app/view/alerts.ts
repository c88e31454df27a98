import { showStandingAlert } from "../../language/sentences/alert.ts";
import { showPrompt } from "../../language/sentences/shownPrompt.ts";
import type { CaseState } from "../../log/caseState.ts";
import { isWorse } from "../../protocol/priority.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import type { DeviceFault } from "../../rules/alerts/condition.ts";
import { standingAlerts } from "../../rules/alerts/standing.ts";
import { promptsStanding } from "../../rules/promptsDue.ts";
import type { ScreenView } from "../screenView.ts";

type Row = ScreenView["alerts"][number];

/** Prompts that something is overdue or runs out stand on the screen too; the times that are called out have their clocks. */
function promptRows(log: CaseState, protocol: Protocol, nowMs: number): readonly Row[] {
  return promptsStanding(log, protocol, nowMs)
    .filter(({ callOut }) => callOut !== true)
    .map((prompt) => ({
      id: `prompt:${prompt.promptId}`,
      priority: prompt.priority,
      text: showPrompt(prompt, protocol.region),
      news: prompt.key,
      acknowledged: log.care.prompts[prompt.promptId]?.acknowledgedKey === prompt.key,
    }));
}

/** Everything that stands, whatever is said of it: the most pressing first, then in the order of the protocol. */
export function viewAlerts(
  log: CaseState,
  protocol: Protocol,
  nowMs: number,
  devices: readonly DeviceFault[] = [],
): readonly Row[] {
  const alerts = standingAlerts(log, protocol, nowMs, devices).map((alert) => ({
    id: alert.alertId,
    priority: alert.priority,
    text: showStandingAlert(alert, protocol.region),
    news: String(log.alerts[alert.alertId]?.raisedAtSeq ?? ""),
    acknowledged: alert.acknowledged,
  }));
  return [...alerts, ...promptRows(log, protocol, nowMs)].sort((a, b) =>
    a.priority === b.priority ? 0 : isWorse(a.priority, b.priority) ? -1 : 1,
  );
}
