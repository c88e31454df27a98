import type { AirwayEntry } from "./careState.ts";
import type { CaseState } from "./caseState.ts";
import { linksOf } from "./chains.ts";
import { earliestOf, givenOf } from "./given.ts";
import { spokenStart } from "./spokenClock.ts";

/** `out`: the blade came out without a tube. `tubeOut`: the tube went in and came out again unproved. */
export type AttemptOutcome = "running" | "out" | "tubeIn" | "confirmed" | "tubeOut";

export type Attempt = {
  /** From 1. */
  readonly number: number;
  readonly startedAtMs: number;
  /** None while it runs. */
  readonly endedAtMs: number | undefined;
  readonly outcome: AttemptOutcome;
  /** Nobody called the blade: the start is that of the apnoea, or else the moment of the tube. */
  readonly implied: boolean;
};

/** A tube that is in: since when, and whether it was called confirmed. */
export type TubeIn = { readonly atMs: number; readonly seq: number; readonly confirmed: boolean };

export type Airway = { readonly attempts: readonly Attempt[]; readonly tube: TubeIn | undefined };

const NOTHING: Airway = { attempts: [], tube: undefined };

const withLast = ({ attempts }: Airway, change: (last: Attempt) => Attempt): readonly Attempt[] =>
  attempts.map((attempt, i) => (i === attempts.length - 1 ? change(attempt) : attempt));

/** A tube without a blade before it: the attempt began with the apnoea, where this is the first. */
function impliedAttempt(state: CaseState, { attempts }: Airway, { seq, atMs }: AirwayEntry): Attempt {
  const before = earliestOf([...givenOf(state, ["muscleRelaxant"])].filter((given) => given.seq < seq));
  const spoken = spokenStart(state, "apnoea");
  const apnoea = [before, spoken?.seq !== undefined && spoken.seq < seq ? spoken : undefined];
  const starts = attempts.length > 0 ? [] : apnoea.flatMap((start) => (start === undefined ? [] : [start.atMs]));
  const startedAtMs = Math.min(atMs, ...starts);
  return { number: attempts.length + 1, startedAtMs, endedAtMs: undefined, outcome: "running", implied: true };
}

function tubeGoesIn(state: CaseState, airway: Airway, event: AirwayEntry, confirmed: boolean): Airway {
  const outcome = confirmed ? "confirmed" : "tubeIn";
  if (airway.tube !== undefined) {
    if (!confirmed || airway.tube.confirmed) return airway;
    return { attempts: withLast(airway, (last) => ({ ...last, outcome })), tube: { ...airway.tube, confirmed } };
  }
  const runs = airway.attempts.at(-1)?.outcome === "running";
  const attempts = runs ? airway.attempts : [...airway.attempts, impliedAttempt(state, airway, event)];
  const { atMs, seq } = event;
  const ended = withLast({ ...airway, attempts }, (last) => ({ ...last, outcome, endedAtMs: atMs }));
  return { attempts: ended, tube: { atMs, seq, confirmed } };
}

/** A tube that was never proved counts as failed once it is out; one that was proved did its work. */
const tubeComesOut = (airway: Airway): Airway => ({
  attempts: withLast(airway, (last) => (last.outcome === "tubeIn" ? { ...last, outcome: "tubeOut" } : last)),
  tube: undefined,
});

function afterEvent(state: CaseState, airway: Airway, event: AirwayEntry): Airway {
  const last = airway.attempts.at(-1);
  switch (event.event) {
    case "bladeIn": {
      if (last?.outcome === "running") return airway;
      // A blade goes in again over a tube that nobody proved: that tube is given up.
      const before = airway.tube?.confirmed === false ? tubeComesOut(airway) : airway;
      const number = before.attempts.length + 1;
      const startedAtMs = event.atMs;
      const attempt = { number, startedAtMs, endedAtMs: undefined, outcome: "running", implied: false } as const;
      return { ...before, attempts: [...before.attempts, attempt] };
    }
    case "out":
      if (last?.outcome !== "running") return airway;
      return { ...airway, attempts: withLast(airway, (a) => ({ ...a, outcome: "out", endedAtMs: event.atMs })) };
    case "tubeIn":
      return tubeGoesIn(state, airway, event, false);
    case "tubeConfirmed":
      return tubeGoesIn(state, airway, event, true);
    case "tubeOut":
      return tubeComesOut(airway);
  }
}

/** The attempts at the tube, oldest first, and the tube that is in now. From the calls at the airway alone. */
export function selectAirway(state: CaseState): Airway {
  const events = [...linksOf(state.care.airway)].reverse();
  return events.reduce((airway, event) => afterEvent(state, airway, event), NOTHING);
}

/** The attempt under way. */
export function selectRunningAttempt(state: CaseState): Attempt | undefined {
  const last = selectAirway(state).attempts.at(-1);
  return last?.outcome === "running" ? last : undefined;
}

/** How long it lasted, or lasts so far, ms. Never negative, whatever became of the clock. */
export const attemptLength = ({ startedAtMs, endedAtMs }: Attempt, nowMs: number): number =>
  Math.max(0, (endedAtMs ?? nowMs) - startedAtMs);

/** Whether CO2 was measured since this tube went in: the newest value tells, however many there are. */
export function hasCo2Since({ vitals }: CaseState, tube: TubeIn): boolean {
  const newest = vitals.etco2?.entry;
  return newest !== undefined && newest.seq > tube.seq;
}
