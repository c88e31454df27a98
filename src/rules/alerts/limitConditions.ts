import { selectTargets } from "../../log/targets.ts";
import type { CaseState } from "../../log/caseState.ts";
import { phaseRunSinceMs } from "../../log/phase.ts";
import { beyond } from "../../protocol/alertLimits.ts";
import type { AlertRule, Protocol } from "../../protocol/protocol.ts";
import { heldPriority, priorityOf } from "./bands.ts";
import { CAUSE_OF_CODE } from "./cause.ts";
import type { Condition } from "./condition.ts";
import { ruleFor } from "./judgedRule.ts";
import { isCurrent, watchedReadings, type WatchedReading } from "./watchedReadings.ts";

/** Only what was read since the phases of an alert began: CO2 by mask says nothing of the tube. */
function* readingsSince(readings: Iterable<WatchedReading>, sinceMs: number): Generator<WatchedReading, undefined> {
  for (const reading of readings) {
    if (reading.atMs < sinceMs) return undefined;
    yield reading;
  }
  return undefined;
}

function limitCondition(state: CaseState, protocol: Protocol, rule: AlertRule): readonly Condition[] {
  const judged = ruleFor(rule, selectTargets(state, protocol));
  const sinceMs = phaseRunSinceMs(state, rule.phases);
  if (judged === undefined || sinceMs === undefined) return [];
  const readings = () => readingsSince(watchedReadings(state, protocol, rule.code), sinceMs);
  const newest = readings().next().value;
  if (newest === undefined) return [];
  const { code, side, target, worseBy } = judged;
  const { value, kind: origin, atMs } = newest;
  const bound = code === "cppBound" ? { icpAtTargetMmHg: value + protocol.assumedIcpMmHg.value.low - target } : {};
  const by = Math.max(0, beyond(value, target, side));
  return [
    {
      alertId: rule.id,
      cause: CAUSE_OF_CODE[code],
      now: isCurrent(state, protocol, code) ? priorityOf(judged, value) : undefined,
      held: heldPriority(judged, readings()),
      value,
      isWorseThan: (kept) => beyond(value, kept, side) >= worseBy,
      body: { kind: "limit", code, side, value, target, beyond: by, origin, ...bound },
      atMs,
    },
  ];
}

/** Every limit of the protocol, judged on the readings that were not struck, by the numbers that hold for the patient now. */
export const limitConditions = (state: CaseState, protocol: Protocol): readonly Condition[] =>
  protocol.alerts.flatMap((rule) => limitCondition(state, protocol, rule));
