import { emptyCase, type CaseState } from "../../src/log/caseState.ts";
import type { Fact } from "../../src/log/facts.ts";
import { selectPhase } from "../../src/log/phase.ts";
import { reduceFact } from "../../src/log/reduceFact.ts";
import { sparesCo2 } from "../../src/log/rescue.ts";
import { rank, readLimits, severityOf, type Known, type Limits, type Rule, type Severity } from "./limits.ts";
import { BUDGET_MS, Obligations, type Crossing, type Finding } from "./obligations.ts";
import type { Shown, SimRun, SimTurn } from "./playSim.ts";
import { Readings } from "./readings.ts";

export type PerCondition = {
  readonly crossings: number;
  /** Times that it was said or sounded at all. */
  readonly announced: number;
  /** Of these, the ones that put words into the air. */
  readonly spoken: number;
  /** Spoken without a crossing of its own since the last time. */
  readonly repeats: number;
};
export type Verdict = {
  readonly crossings: readonly Crossing[];
  readonly missed: readonly Finding[];
  readonly late: readonly Finding[];
  readonly notTakenBack: readonly Finding[];
  readonly offScreen: readonly Finding[];
  /** Unix ms of every alert and prompt that was spoken. */
  readonly spokenAtMs: readonly number[];
  /** Unix ms of what was said beside them: see `NO_ALERTS`. */
  readonly calledAtMs: readonly number[];
  readonly conditions: ReadonlyMap<string, PerCondition>;
};

/**
 * Said unasked and no alerts: times that are called while hands wait for them, and what lies ready, which is said with the
 * alert that it is for.
 */
const NO_ALERTS = ["prompt:preoxygenated", "prompt:apnoea", "prompt:attempt", "prompt:pressureOffer"];
const OF_MEAN = ["map", "cpp", "cppBound"];
const UNCOUNTED = { crossings: 0, announced: 0, spoken: 0, repeats: 0, sinceSaid: 0 };

/**
 * Follows a run by its facts. What a value means is worked out anew from the numbers of the protocol; the app's rules have
 * no part in it. Only the course of the case (its phase, whether a rescue runs) is read from the app's log.
 */
class Judge {
  readonly crossings: Crossing[] = [];
  readonly notTakenBack: Finding[] = [];
  readonly offScreen: Finding[] = [];
  readonly spokenAtMs: number[] = [];
  readonly calledAtMs: number[] = [];
  readonly conditions = new Map<string, typeof UNCOUNTED>();
  readonly obligations = new Obligations();
  readonly #limits: Limits;
  readonly #readings = new Readings();
  readonly #standing = new Map<string, Severity>();
  readonly #severities = new Map<string, Severity>();
  readonly #phaseSinceMs = new Map<string, number>();
  readonly #takeBackByMs = new Map<string, number>();
  #log: CaseState = emptyCase;
  #quietUntilMs = -Infinity;

  constructor(limits: Limits) {
    this.#limits = limits;
  }

  turn(turn: SimTurn): void {
    for (const fact of turn.facts) {
      this.#log = reduceFact(this.#log, fact);
      this.#readings.take(fact);
      if (fact.type === "standBy.started" || fact.type === "alerts.paused") this.#quietUntilMs = fact.untilMs;
    }
    const known = this.#known();
    for (const rule of this.#limits.rules) this.#weigh(rule, known, turn);
    if (turn.facts.some(({ type }) => type === "entry.struck")) this.#expectTakenBack(known, turn.atMs);
    for (const fact of turn.facts) this.#takeAlert(fact, turn.atMs);
    this.obligations.settle(this.#severities, turn.atMs);
    for (const { text, priority, alertId } of turn.announcements) {
      if (text === "" || priority === "none" || alertId === undefined) continue;
      (NO_ALERTS.includes(alertId) ? this.calledAtMs : this.spokenAtMs).push(turn.atMs);
    }
  }

  /** Everything that stands, or that the values ask for, has to be on the screen. */
  screen({ atMs, alertIds }: Shown): void {
    for (const alertId of new Set([...this.#standing.keys(), ...this.#severities.keys()]))
      if (!alertIds.includes(alertId)) this.offScreen.push({ alertId, atMs, why: "stands, but is not shown" });
  }

  /** Alerts whose value was struck and that still stand past their time. */
  checkTakenBack(nowMs: number): void {
    for (const [alertId, byMs] of this.#takeBackByMs) {
      if (this.#standing.has(alertId) && nowMs <= byMs) continue;
      if (this.#standing.has(alertId)) this.notTakenBack.push({ alertId, atMs: byMs, why: "its value was struck" });
      this.#takeBackByMs.delete(alertId);
    }
  }

  #known(): Known {
    const { cause, herniation, care } = this.#log;
    return {
      ageA: this.#readings.latest("age"),
      cause: cause?.cause ?? "unknown",
      herniating: herniation?.present === true || care.rescue?.runs === true,
      co2Spared: sparesCo2(this.#log),
    };
  }

  /** Since when a rule has counted: values from before its phases are not judged by it. */
  #sinceMs({ id, phases }: Rule, atMs: number): number | undefined {
    if (phases !== undefined && !phases.includes(selectPhase(this.#log))) this.#phaseSinceMs.delete(id);
    else if (!this.#phaseSinceMs.has(id)) this.#phaseSinceMs.set(id, phases === undefined ? -Infinity : atMs);
    return this.#phaseSinceMs.get(id);
  }

  #weigh(rule: Rule, known: Known, { atMs, reply }: SimTurn): void {
    const { id: alertId, code, side } = rule;
    const sinceMs = this.#sinceMs(rule, atMs);
    const newest = this.#readings.history(code, this.#limits.lowestIcpMmHg).at(-1);
    const holds = !OF_MEAN.includes(code) || this.#readings.meanHolds(this.#limits.apartMmHg);
    const counts = sinceMs !== undefined && newest !== undefined && newest.atMs >= sinceMs && holds;
    const severity = counts ? severityOf(rule.bands(known), side, newest.value) : undefined;
    const before = this.#severities.get(alertId);
    if (severity === undefined) this.#severities.delete(alertId);
    else this.#severities.set(alertId, severity);
    if (severity === undefined || rank(severity) <= rank(before)) return;
    const crossing = { alertId, code, severity, atMs, value: newest!.value };
    this.crossings.push(crossing);
    this.#count(alertId, { crossings: 1, sinceSaid: 1 });
    if (rank(this.#standing.get(alertId)) < rank(severity)) this.obligations.owe(crossing, reply, this.#quietUntilMs);
  }

  #expectTakenBack(known: Known, atMs: number): void {
    for (const rule of this.#limits.rules) {
      const sinceMs = this.#phaseSinceMs.get(rule.id) ?? Infinity;
      const bands = rule.bands(known);
      const isFounded = this.#readings
        .history(rule.code, this.#limits.lowestIcpMmHg)
        .some((r) => r.atMs >= sinceMs && severityOf(bands, rule.side, r.value) !== undefined);
      if (this.#standing.has(rule.id) && !isFounded) this.#takeBackByMs.set(rule.id, atMs + BUDGET_MS);
    }
  }

  #takeAlert(fact: Fact, atMs: number): void {
    if (fact.type === "alert.raised") this.#standing.set(fact.alertId, fact.priority);
    if (fact.type === "alert.cleared") this.#standing.delete(fact.alertId);
    if (fact.type === "alert.raised") this.obligations.stands(this.#standing, atMs);
    if (fact.type !== "alert.announced") return;
    const { alertId, priority, unspoken } = fact;
    const code = this.#limits.rules.find(({ id }) => id === alertId)?.code ?? alertId;
    const isSpoken = unspoken !== true;
    const isRepeat = isSpoken && (this.conditions.get(alertId)?.sinceSaid ?? 0) === 0;
    this.#count(alertId, { announced: 1, spoken: isSpoken ? 1 : 0, repeats: isRepeat ? 1 : 0 });
    this.conditions.set(alertId, { ...this.conditions.get(alertId)!, sinceSaid: 0 });
    this.obligations.told(code, priority, atMs);
  }

  #count(alertId: string, more: Partial<typeof UNCOUNTED>): void {
    const before = this.conditions.get(alertId) ?? UNCOUNTED;
    const keys = Object.keys(UNCOUNTED) as (keyof typeof UNCOUNTED)[];
    const after = keys.map((key) => [key, before[key] + (more[key] ?? 0)] as const);
    this.conditions.set(alertId, Object.fromEntries(after) as typeof UNCOUNTED);
  }
}

/** Judges one run against the numbers of its protocol. Knows facts, words and the screen. */
export function judgeRun(protocol: unknown, run: SimRun): Verdict {
  const judge = new Judge(readLimits(protocol));
  const screens = [...run.shown];
  const upTo = (atMs: number): void => {
    while (screens[0] !== undefined && screens[0].atMs < atMs) judge.screen(screens.shift()!);
    judge.checkTakenBack(atMs);
  };
  for (const turn of run.turns) {
    upTo(turn.atMs);
    judge.turn(turn);
  }
  upTo(Infinity);
  judge.obligations.end(run.turns[0]!.atMs + run.lastsS * 1000);
  const { crossings, notTakenBack, offScreen, spokenAtMs, calledAtMs, conditions, obligations } = judge;
  const { missed, late } = obligations;
  return { crossings, missed, late, notTakenBack, offScreen, spokenAtMs, calledAtMs, conditions };
}

/** The most that were spoken within any stretch of this length, and the end of it. */
export function mostWithin(
  atMs: readonly number[],
  lengthMs: number,
): { readonly most: number; readonly atMs: number } {
  let most = { most: 0, atMs: 0 };
  let from = 0;
  atMs.forEach((endMs, i) => {
    while (atMs[from]! <= endMs - lengthMs) from += 1;
    if (i - from + 1 > most.most) most = { most: i - from + 1, atMs: endMs };
  });
  return most;
}

const TO_BE_WATCHED = [
  "map under",
  "sbp under",
  "cpp under",
  "cppBound under",
  "spo2 under",
  "etco2 under",
  "etco2 over",
  "hr under",
  "hr over",
  "temp under",
  "temp over",
  "glucose under",
  "glucose over",
];

/** What is to be watched and that this protocol has no alert for. */
export function unwatched(protocol: unknown): readonly string[] {
  const watched = readLimits(protocol).rules.map(({ code, side }) => `${code} ${side}`);
  return TO_BE_WATCHED.filter((name) => !watched.includes(name));
}
