import { cushingPattern, type PressureAndRate } from "../core/cushing.ts";
import { vitalQuantity } from "../core/vitalQuantity.ts";
import { checkedMmHg } from "../core/mmHg.ts";
import { percent, perMin } from "../core/quantities.ts";
import type { CaseState, History, VitalEntry } from "../log/caseState.ts";
import { pressurePairs } from "../log/meanReadings.ts";
import type { Protocol } from "../protocol/protocol.ts";

function oldest(history: History | undefined): VitalEntry | undefined {
  let entry: VitalEntry | undefined;
  for (let link = history; link !== undefined; link = link.earlier) entry = link.entry;
  return entry;
}

function asReading(pair: { sbp: VitalEntry; dbp: VitalEntry } | undefined, hr: VitalEntry | undefined) {
  const rate = hr && vitalQuantity("hr", hr.value);
  if (pair === undefined || rate?.ok !== true) return undefined;
  const [sbpMmHg, dbpMmHg] = [checkedMmHg(pair.sbp.value), checkedMmHg(pair.dbp.value)];
  return { sbpMmHg, dbpMmHg, hrPerMin: rate.value } satisfies PressureAndRate;
}

/**
 * Whether pressure and rate have moved, since the first ones of the case, as they do when the brainstem is pressed upon.
 * False where the protocol has the rule switched off; then the case is not walked either.
 */
export function hasCushingPattern(state: CaseState, protocol: Protocol): boolean {
  const { enabled, sbpRisePct, hrFallPct, hrBelowPerMin } = protocol.trend.cushing;
  if (!enabled.value) return false;
  const pairs = [...pressurePairs(state, protocol)];
  const first = asReading(pairs.at(-1), oldest(state.vitals.hr));
  const now = asReading(pairs[0], state.vitals.hr?.entry);
  const limits = [percent(sbpRisePct.value), percent(hrFallPct.value), perMin(hrBelowPerMin.value)] as const;
  const [rise, fall, low] = limits;
  if (first === undefined || now === undefined || !rise.ok || !fall.ok || !low.ok) return false;
  const at = { sbpRisePct: rise.value, hrFallPct: fall.value, hrBelowPerMin: low.value };
  return cushingPattern(first, now, at, false).fires;
}
