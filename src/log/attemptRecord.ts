import { selectAirway, attemptLength, hasCo2Since, type Attempt } from "./attempt.ts";
import type { CaseState, History } from "./caseState.ts";
import { earliestOf, givenOf } from "./given.ts";
import { meanReadings } from "./meanReadings.ts";
import { selectTargets } from "./targets.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { dropSince, type Drop } from "../core/trendSince.ts";
import { checkedMmHg } from "../core/mmHg.ts";

/**
 * Values count from this long before the blade or the induction, and to this long after it. Published windows differ (2, 30
 * and 60 minutes): this project's choice, no source. They only look back on the case; nothing is prompted by them.
 */
const BEFORE_MS = 2 * 60_000;
const AFTER_MS = 10 * 60_000;

type Window = { readonly fromMs: number; readonly toMs: number };
type Value = { readonly value: number; readonly atMs: number };

/** The lowest values called in a stretch of time; what was not called is not there. */
export type Lowest = {
  readonly spo2Pct: number | undefined;
  readonly sbpMmHg: number | undefined;
  readonly mapMmHg: number | undefined;
};

export type AttemptRecord = {
  readonly attempt: Attempt;
  readonly lengthMs: number;
  readonly lowest: Lowest;
  /** Lowest mean of the attempt against the last one before induction; none where either is not known. */
  readonly mapDrop: Drop<"mmHg"> | undefined;
};

type Judged = "yes" | "no" | "unknown";
export type FirstAttempt = {
  /** The first attempt put a tube in that was confirmed or gave CO2. `unknown`: not over, or no proof yet. */
  readonly firstPass: Judged;
  /** First pass, no SpO2 and no systolic under its limit from before induction on. `unknown`: values are missing. */
  readonly withoutLow: Judged;
};

function* recorded(history: History | undefined): Generator<Value> {
  for (let link = history; link !== undefined; link = link.earlier)
    yield { value: link.entry.value, atMs: link.entry.atMs };
}

function* means(state: CaseState, protocol: Protocol): Generator<Value> {
  for (const { mapMmHg, atMs } of meanReadings(state, protocol)) yield { value: mapMmHg, atMs };
}

function lowestIn(newestFirst: Iterable<Value>, { fromMs, toMs }: Window): number | undefined {
  const values = [...newestFirst].filter(({ atMs }) => atMs >= fromMs && atMs <= toMs).map(({ value }) => value);
  return values.length === 0 ? undefined : Math.min(...values);
}

const lowestOf = (state: CaseState, protocol: Protocol, window: Window): Lowest => ({
  spo2Pct: lowestIn(recorded(state.vitals.spo2), window),
  sbpMmHg: lowestIn(recorded(state.vitals.sbp), window),
  mapMmHg: lowestIn(means(state, protocol), window),
});

/** When the drugs went in; where none was recorded, the first attempt. */
function inductionMs(state: CaseState, [first]: readonly Attempt[]): number | undefined {
  return earliestOf(givenOf(state, ["induction", "muscleRelaxant"]))?.atMs ?? first?.startedAtMs;
}

function mapDrop(state: CaseState, protocol: Protocol, lowest: number | undefined, beforeMs: number | undefined) {
  if (lowest === undefined || beforeMs === undefined) return undefined;
  const first = [...means(state, protocol)].find(({ atMs }) => atMs <= beforeMs);
  return first && dropSince(checkedMmHg(first.value), checkedMmHg(lowest));
}

/** Every attempt with its length and its lowest values, oldest first: for the voice and for the record. */
export function selectAttempts(state: CaseState, protocol: Protocol, nowMs: number): readonly AttemptRecord[] {
  const { attempts } = selectAirway(state);
  const beforeMs = inductionMs(state, attempts);
  return attempts.map((attempt) => {
    const lengthMs = attemptLength(attempt, nowMs);
    const { startedAtMs } = attempt;
    const lowest = lowestOf(state, protocol, { fromMs: startedAtMs - BEFORE_MS, toMs: startedAtMs + lengthMs });
    return { attempt, lengthMs, lowest, mapDrop: mapDrop(state, protocol, lowest.mapMmHg, beforeMs) };
  });
}

/** The lowest values around induction: from two minutes before it to ten after it, or to the tube if that was later. */
export function selectInductionLows(state: CaseState, protocol: Protocol): Lowest | undefined {
  const { attempts, tube } = selectAirway(state);
  const atMs = inductionMs(state, attempts);
  if (atMs === undefined) return undefined;
  return lowestOf(state, protocol, { fromMs: atMs - BEFORE_MS, toMs: Math.max(atMs + AFTER_MS, tube?.atMs ?? atMs) });
}

function firstPassOf(state: CaseState, [first, ...others]: readonly Attempt[]): Judged {
  if (first === undefined || first.outcome === "running") return "unknown";
  if (first.outcome === "out" || first.outcome === "tubeOut" || others.length > 0)
    return first.outcome === "confirmed" ? "yes" : "no";
  if (first.outcome === "confirmed") return "yes";
  const { tube } = selectAirway(state);
  return tube !== undefined && hasCo2Since(state, tube) ? "yes" : "unknown";
}

/**
 * How the first attempt went: the two measures that are published of it. Limits are the protocol's: the critical
 * saturation, and the systolic floor of the publications.
 */
export function selectFirstAttempt(state: CaseState, protocol: Protocol): FirstAttempt {
  const { attempts } = selectAirway(state);
  const firstPass = firstPassOf(state, attempts);
  const lows = selectInductionLows(state, protocol);
  const spo2Limit = selectTargets(state, protocol).spo2Pct.critical.value;
  const sbpLimit = protocol.lowPressure.publishedSbpFloorMmHg.value;
  const isLow = (lows?.spo2Pct ?? Infinity) < spo2Limit || (lows?.sbpMmHg ?? Infinity) < sbpLimit;
  if (firstPass === "no" || isLow) return { firstPass, withoutLow: "no" };
  const isKnown = firstPass === "yes" && lows?.spo2Pct !== undefined && lows.sbpMmHg !== undefined;
  return { firstPass, withoutLow: isKnown ? "yes" : "unknown" };
}
