import { selectAirway, attemptLength, hasCo2Since, type Attempt } from "./attempt.ts";
import type { CaseState, History } from "./caseState.ts";
import { selectInductionMs, selectInductionWindow, WINDOW_BEFORE_MS, type Window } from "./inductionWindow.ts";
import { meanReadings } from "./meanReadings.ts";
import { selectTargets } from "./targets.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { dropSince, type Drop } from "../core/trendSince.ts";
import { checkedMmHg } from "../core/mmHg.ts";

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

function mapDrop(state: CaseState, protocol: Protocol, lowest: number | undefined, beforeMs: number | undefined) {
  if (lowest === undefined || beforeMs === undefined) return undefined;
  const first = [...means(state, protocol)].find(({ atMs }) => atMs <= beforeMs);
  return first && dropSince(checkedMmHg(first.value), checkedMmHg(lowest));
}

/** Every attempt with its length and its lowest values, oldest first: for the voice and for the record. */
export function selectAttempts(state: CaseState, protocol: Protocol, nowMs: number): readonly AttemptRecord[] {
  const { attempts } = selectAirway(state);
  const beforeMs = selectInductionMs(state);
  return attempts.map((attempt) => {
    const lengthMs = attemptLength(attempt, nowMs);
    const { startedAtMs } = attempt;
    const lowest = lowestOf(state, protocol, { fromMs: startedAtMs - WINDOW_BEFORE_MS, toMs: startedAtMs + lengthMs });
    return { attempt, lengthMs, lowest, mapDrop: mapDrop(state, protocol, lowest.mapMmHg, beforeMs) };
  });
}

/** The lowest values around induction; none before it or a blade was called. */
export function selectInductionLows(state: CaseState, protocol: Protocol): Lowest | undefined {
  const window = selectInductionWindow(state);
  return window && lowestOf(state, protocol, window);
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
  // What was well before the drugs went in says nothing of what they did.
  const window = selectInductionWindow(state);
  const since = window && lowestOf(state, protocol, { fromMs: window.inductionMs, toMs: window.toMs });
  const isKnown = firstPass === "yes" && since?.spo2Pct !== undefined && since.sbpMmHg !== undefined;
  return { firstPass, withoutLow: isKnown ? "yes" : "unknown" };
}
