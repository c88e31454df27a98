import { repeatState } from "../core/doseRepeat.ts";
import type { GivenEntry } from "../log/careState.ts";
import type { CaseState } from "../log/caseState.ts";
import { linksOf } from "../log/chains.ts";
import { givenOf, latestOf, SEDATIVES } from "../log/given.ts";
import { findMedicine } from "../protocol/findMedicine.ts";
import type { Dose, Protocol } from "../protocol/protocol.ts";
import type { Clock } from "./clock.ts";
import { paralysisAt } from "./paralysis.ts";

/** The step by which running sedation is answered where no rate was recorded. */
const SEDATION_STEP = "sedationRunning";

/** The dose of the protocol that a given one was held against; else the first of its drug that may be given again. */
function repeatedDose(protocol: Protocol, { drugId, doseId }: GivenEntry): Dose | undefined {
  const doses = findMedicine(protocol, drugId)?.doses ?? [];
  return doses.find(({ id }) => id === doseId) ?? doses.find(({ repeatAfterS }) => repeatAfterS !== undefined);
}

/** When the push dose given last may be given again. None where the protocol names no interval, or no more may be given. */
export function pushDoseClock(state: CaseState, protocol: Protocol): (Clock & { readonly seq: number }) | undefined {
  const last = latestOf(givenOf(state, ["vasopressor"]));
  const dose = last && repeatedDose(protocol, last);
  if (last === undefined || dose === undefined) return undefined;
  const all = [...linksOf(state.care.given[last.drugId])].filter(({ doseId }) => doseId === last.doseId);
  const { earliestNextAtMs } = repeatState(
    dose,
    all.map(({ atMs }) => atMs),
  );
  if (earliestNextAtMs === undefined) return undefined;
  const subject = findMedicine(protocol, last.drugId)?.spokenName ?? last.drugId;
  return { id: "pushDose", startedAtMs: last.atMs, endsAtMs: earliestNextAtMs, subject, seq: last.seq };
}

const isSedated = (state: CaseState, sinceSeq: number): boolean => {
  const step = state.steps[SEDATION_STEP];
  const runs = Object.values(state.care.infusions).some((i) => SEDATIVES.includes(i.drugClass) && i.rate.value > 0);
  return runs || (step?.answer === "done" && step.seq > sinceSeq);
};

/**
 * When the next sedation is due: before the sedative given last wears off under a paralytic that acts longer. `subject` is
 * that paralytic. None while sedation runs.
 */
export function sedationClock(state: CaseState, protocol: Protocol, nowMs: number): Clock | undefined {
  const paralysis = paralysisAt(state, protocol, { atMs: nowMs });
  if (paralysis === undefined) return undefined;
  const asleep = latestOf(givenOf(state, SEDATIVES));
  const start = asleep ?? paralysis.given;
  if (isSedated(state, start.seq)) return undefined;
  const asleepS = protocol.drugs.find(({ id }) => id === asleep?.drugId)?.durationS?.value.low ?? 0;
  const paralysedS = paralysis.drug.durationS?.value.low ?? Infinity;
  if (paralysedS <= asleepS) return undefined;
  const subject = paralysis.drug.names[protocol.region.drugNames];
  const endsAtMs = start.atMs + protocol.timers.sedationDueS.value * 1000;
  return { id: "sedationDue", startedAtMs: start.atMs, endsAtMs, subject };
}
