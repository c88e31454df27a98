import type { VitalCode } from "../../core/vitals.ts";
import { hasCo2Since, selectAirway } from "../../log/attempt.ts";
import type { CaseState, FindingEntry, VitalEntry } from "../../log/caseState.ts";
import { linksOf } from "../../log/chains.ts";
import type { AirwayNow, Course, Handover } from "../../log/handover.ts";
import { failureRuns } from "../../log/steps/lists.ts";
import { selectPerfusion } from "../../log/perfusion.ts";
import { selectFinding, selectLatest } from "../../log/selectors.ts";
import { selectUnconfirmed } from "../../log/unconfirmed.ts";
import { selectFluidTotals, selectGiven, selectTotals } from "../../log/totals.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import { selectLows } from "./lows.ts";

const FINDINGS = ["pupilLeft", "pupilRight", "gcsEye", "gcsVerbal", "gcsMotor"] as const;
const NUMBERS: readonly VitalCode[] = ["spo2", "etco2", "hr", "icp", "rr", "temp", "glucose"];
const BODY: readonly VitalCode[] = ["age", "weight"];
/** Steps of the lists whose answers tell of the tube. */
const STEPS = { size: "tube", depth: "tubeDepth", supraglottic: "supraglotticIn" } as const;

const textOf = (entry: VitalEntry | FindingEntry): string =>
  "value" in entry ? `${entry.value} ${entry.reaction ?? ""}` : entry.finding;

/** The newest of a code and the oldest, which is left out where it says the same. */
function courseOf(state: CaseState, code: (typeof FINDINGS)[number]): readonly Course[] {
  const all = [...[...linksOf(state.vitals[code])].map(({ entry }) => entry), ...linksOf(state.findings[code])];
  const now = selectFinding(state, code) ?? selectLatest(state, code);
  const first = all.toSorted((a, b) => a.seq - b.seq)[0];
  if (now === undefined || first === undefined) return [];
  return [{ now, first: textOf(first) === textOf(now) ? undefined : first }];
}

function airwayOf(state: CaseState): AirwayNow {
  const { attempts, tube } = selectAirway(state);
  const { steps } = state;
  return {
    attempts: attempts.length,
    tube: tube && { atMs: tube.atMs, confirmed: tube.confirmed, co2: hasCo2Since(state, tube) },
    size: steps[STEPS.size]?.value,
    depth: steps[STEPS.depth]?.value,
    supraglottic: steps[STEPS.supraglottic]?.answer === "done",
    failed: failureRuns(state),
  };
}

const latestOf = (state: CaseState, codes: readonly VitalCode[]): readonly VitalEntry[] =>
  codes.flatMap((code) => selectLatest(state, code) ?? []);

/**
 * Selects what is handed over: for the voice, the screen and the printed record alike.
 *
 * @param nowMs Unix ms: the pressures are judged up to here.
 *
 * Not for: what is due next and when a bag is empty, which the rules work out from the same state. Statements that nobody
 * affirmed stand by themselves, and are in nothing else.
 */
export const selectHandover = (state: CaseState, protocol: Protocol, nowMs: number): Handover => ({
  lows: selectLows(state, protocol, nowMs),
  patient: latestOf(state, BODY),
  sex: state.sex?.sex,
  openedAtMs: state.openedAtMs,
  cause: state.cause?.cause,
  herniation: state.herniation,
  findings: FINDINGS.flatMap((code) => courseOf(state, code)),
  given: selectTotals(state).flatMap(({ drugId, total }) => {
    const last = selectGiven(state, drugId).at(-1);
    return last === undefined ? [] : [{ drugId, drugClass: last.drugClass, total, lastAtMs: last.atMs }];
  }),
  fluids: selectFluidTotals(state).filter(({ volumeMl }) => volumeMl > 0),
  airway: airwayOf(state),
  perfusion: selectPerfusion(state, protocol, nowMs),
  numbers: latestOf(state, NUMBERS),
  infusions: Object.entries(state.care.infusions).filter(([, { rate }]) => rate.value > 0),
  unconfirmed: selectUnconfirmed(state),
});
