import { selectAirway, type Attempt, type AttemptOutcome } from "../../log/attempt.ts";
import { selectFirstAttempt } from "../../log/attemptRecord.ts";
import { selectInductionWindow } from "../../log/inductionWindow.ts";
import type { RecordedCase } from "../recordedCase.ts";
import { DEFINITIONS } from "./definitions.ts";
import { within } from "./lowest.ts";
import { known, unknown, type Measured } from "./measured.ts";
import { readingsOf } from "./readings.ts";

/** One attempt: when its blade was called in, and how long it lasted. */
export type AttemptMeasure = {
  /** From 1. */
  readonly number: number;
  readonly startedAtMs: Measured<number>;
  readonly lengthS: Measured<number>;
  readonly outcome: AttemptOutcome;
};

function attemptMeasure({ number, startedAtMs, endedAtMs, outcome, implied }: Attempt): AttemptMeasure {
  // Where nobody called the blade the log takes a likely start; a measure is not made of it.
  if (implied)
    return { number, outcome, startedAtMs: unknown("start-not-called"), lengthS: unknown("start-not-called") };
  if (endedAtMs === undefined)
    return { number, outcome, startedAtMs: known(startedAtMs), lengthS: unknown("attempt-not-ended") };
  if (endedAtMs < startedAtMs)
    return { number, outcome, startedAtMs: known(startedAtMs), lengthS: unknown("times-out-of-order") };
  return { number, outcome, startedAtMs: known(startedAtMs), lengthS: known((endedAtMs - startedAtMs) / 1000) };
}

/** Every attempt, oldest first. */
export function selectAttemptMeasures({ state }: RecordedCase): Measured<readonly AttemptMeasure[]> {
  const { attempts } = selectAirway(state);
  return attempts.length === 0 ? unknown("no-attempt") : known(attempts.map(attemptMeasure));
}

/** Whether the first attempt put a tube in that was confirmed or gave CO2. */
export function selectFirstPass({ state, protocol }: RecordedCase): Measured<boolean> {
  const { firstPass } = selectFirstAttempt(state, protocol);
  if (firstPass !== "unknown") return known(firstPass === "yes");
  const [first] = selectAirway(state).attempts;
  if (first === undefined) return unknown("no-attempt");
  return unknown(first.outcome === "running" ? "attempt-not-ended" : "tube-not-proved");
}

/**
 * First pass with neither hypoxia nor hypotension around induction, as published: see `DEFINITIONS.withoutLow`. It is not
 * so from the first low value on; that it is so needs a saturation and a systolic from induction on.
 */
export function selectFirstPassWithoutLow(recorded: RecordedCase): Measured<boolean> {
  const { spo2BelowPct, sbpBelowMmHg } = DEFINITIONS.withoutLow.value;
  const firstPass = selectFirstPass(recorded);
  const window = selectInductionWindow(recorded.state);
  if (window === undefined) return firstPass;
  const spo2 = within(readingsOf(recorded, "spo2"), window);
  const sbp = within(readingsOf(recorded, "sbp"), window);
  const isLow = spo2.some(({ value }) => value < spo2BelowPct) || sbp.some(({ value }) => value < sbpBelowMmHg);
  const isTried = !("unknown" in firstPass && firstPass.unknown === "no-attempt");
  if (isLow && isTried) return known(false);
  if ("unknown" in firstPass || !firstPass.value) return firstPass;
  const isSince = ({ atMs }: { readonly atMs: number }): boolean => atMs >= window.inductionMs;
  return spo2.some(isSince) && sbp.some(isSince) ? known(true) : unknown("not-measured-since-induction");
}
