import { emptyCase, type CaseState } from "../../src/log/caseState.ts";
import type { Fact } from "../../src/log/facts.ts";
import { selectPhase } from "../../src/log/phase.ts";
import { reduceFact } from "../../src/log/reduceFact.ts";
import { sparesCo2 } from "../../src/log/rescue.ts";
import { readLimits, severityOf, type Known, type Rule, type Severity } from "./limits.ts";
import type { SimRun, SimTurn } from "./playSim.ts";
import { Readings } from "./readings.ts";

/** From the moment a value counts to the alert, and from a strike to its being taken back. */
const BUDGET_MS = 1000;

export type Finding = { readonly alertId: string; readonly atMs: number; readonly why: string };
/** One time that a value came into a band, or into a worse one. */
export type Crossing = {
  readonly alertId: string;
  readonly severity: Severity;
  readonly atMs: number;
  readonly value: number;
};
export type PerCondition = {
  readonly crossings: number;
  /** Times that it was said or sounded at all. */
  readonly announced: number;
  /** Of these, the ones that put words into the air. */
  readonly spoken: number;
  /** Spoken without a crossing of their own since the last time. */
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
  readonly conditions: ReadonlyMap<string, PerCondition>;
};

const RANK: Readonly<Record<Severity, number>> = { low: 1, medium: 2, high: 3 };
const rank = (severity: Severity | undefined): number => (severity === undefined ? 0 : RANK[severity]);

/** Values that tell of the same thing: an alert for one of them is one for all that cross with it. */
const groupOf = (code: string): string => (["map", "sbp", "cpp", "cppBound"].includes(code) ? "pressure" : code);

const SPOKEN_NAMES: Readonly<Record<string, string>> = {
  map: "MAP",
  cpp: "CPP",
  cppBound: "CPP",
  sbp: "systolic",
  spo2: "sats",
  etco2: "end tidal",
  hr: "heart rate",
  temp: "temperature",
  glucose: "glucose",
  icp: "ICP",
};

/** "MAP seventy three, seventeen under ninety": the read-back itself gives the number against its target. */
function isToldInReply(reply: string, code: string): boolean {
  const said = String.raw`${SPOKEN_NAMES[code] ?? code} [a-z ]+, (?:(?!pressure)[a-z ])+ (?:under|over) `;
  return new RegExp(said, "iu").test(reply);
}

type Obligation = Crossing & {
  readonly rule: Rule;
  /** It has to stand before, and be told before. */
  readonly standByMs: number;
  readonly tellByMs: number;
  stands: boolean;
  told: boolean;
  stoodLate: boolean;
  toldLate: boolean;
};

/** Judges one run against the numbers of its protocol. Knows facts, words and the screen; knows nothing of the rules. */
export function judgeRun(protocol: unknown, run: SimRun): Verdict {
  const { rules, apartMmHg, lowestIcpMmHg } = readLimits(protocol);
  const readings = new Readings();
  const standing = new Map<string, Severity>();
  const severities = new Map<string, Severity>();
  const phaseSinceMs = new Map<string, number>();
  const crossings: Crossing[] = [];
  const open: Obligation[] = [];
  const takeBack = new Map<string, number>();
  const missed: Finding[] = [];
  const late: Finding[] = [];
  const notTakenBack: Finding[] = [];
  const offScreen: Finding[] = [];
  const spokenAtMs: number[] = [];
  const counts = new Map<
    string,
    { crossings: number; announced: number; spoken: number; repeats: number; due: number }
  >();
  const count = (alertId: string) => {
    const before = counts.get(alertId) ?? { crossings: 0, announced: 0, spoken: 0, repeats: 0, due: 0 };
    counts.set(alertId, before);
    return before;
  };
  let log: CaseState = emptyCase;
  let quietUntilMs = -Infinity;
  const screens = [...run.shown];

  /** What the values say now, by themselves. */
  const severityNow = (rule: Rule, known: Known, atMs: number): { severity: Severity | undefined; value: number } => {
    const phase = selectPhase(log);
    if (rule.phases !== undefined && !rule.phases.includes(phase)) phaseSinceMs.delete(rule.id);
    else if (!phaseSinceMs.has(rule.id)) phaseSinceMs.set(rule.id, rule.phases === undefined ? -Infinity : atMs);
    const sinceMs = phaseSinceMs.get(rule.id);
    const newest = readings.history(rule.code, lowestIcpMmHg).at(-1);
    if (sinceMs === undefined || newest === undefined || newest.atMs < sinceMs)
      return { severity: undefined, value: NaN };
    const isOfMean = ["map", "cpp", "cppBound"].includes(rule.code);
    if (isOfMean && !readings.meanHolds(apartMmHg)) return { severity: undefined, value: newest.value };
    return { severity: severityOf(rule.bands(known), rule.side, newest.value), value: newest.value };
  };

  /** Obligations that are met, failed or void at this time. */
  const settle = (atMs: number): void => {
    for (const due of [...open]) {
      const isDone = due.stands && due.told;
      const isOver = rank(severities.get(due.alertId)) < rank(due.severity);
      if (!isDone && !isOver) continue;
      open.splice(open.indexOf(due), 1);
      const inTime = atMs <= due.tellByMs;
      if (isDone && !due.stoodLate && !due.toldLate) continue;
      const why = `${due.severity} at ${due.value.toFixed(1)}`;
      if (isDone)
        late.push({ alertId: due.alertId, atMs: due.atMs, why: `${why}: ${Math.round((atMs - due.atMs) / 1000)} s` });
      else if (!inTime)
        missed.push({
          alertId: due.alertId,
          atMs: due.atMs,
          why: `${why}: ${due.stands ? "never told" : "never stood"}`,
        });
    }
  };

  const evaluate = (turn: SimTurn, struck: boolean): void => {
    const known: Known = {
      ageA: readings.latest("age"),
      cause: log.cause?.cause ?? "unknown",
      herniating: log.herniation?.present === true || log.care.rescue?.runs === true,
      co2Spared: sparesCo2(log),
    };
    for (const rule of rules) {
      const before = severities.get(rule.id);
      const { severity, value } = severityNow(rule, known, turn.atMs);
      if (severity === undefined) severities.delete(rule.id);
      else severities.set(rule.id, severity);
      if (severity !== undefined && rank(severity) > rank(before)) {
        const crossing = { alertId: rule.id, severity, atMs: turn.atMs, value };
        crossings.push(crossing);
        count(rule.id).crossings += 1;
        count(rule.id).due += 1;
        const stoodBefore = rank(standing.get(rule.id)) >= rank(severity);
        const tellFromMs = severity === "high" ? turn.atMs : Math.max(turn.atMs, quietUntilMs);
        if (!stoodBefore)
          open.push({
            ...crossing,
            rule,
            standByMs: turn.atMs + BUDGET_MS,
            tellByMs: tellFromMs + BUDGET_MS,
            stands: false,
            told: isToldInReply(turn.reply, rule.code),
            stoodLate: false,
            toldLate: false,
          });
      }
      if (!struck || !standing.has(rule.id)) continue;
      const sinceMs = phaseSinceMs.get(rule.id) ?? Infinity;
      const bands = rule.bands(known);
      const isFounded = readings
        .history(rule.code, lowestIcpMmHg)
        .some((r) => r.atMs >= sinceMs && severityOf(bands, rule.side, r.value) !== undefined);
      if (!isFounded) takeBack.set(rule.id, turn.atMs + BUDGET_MS);
    }
  };

  const takeAlertFact = (fact: Fact, atMs: number): void => {
    if (fact.type === "alert.raised") standing.set(fact.alertId, fact.priority);
    if (fact.type === "alert.cleared") standing.delete(fact.alertId);
    for (const due of open) {
      if (!due.stands && rank(standing.get(due.alertId)) >= rank(due.severity)) {
        due.stands = true;
        due.stoodLate = atMs > due.standByMs;
      }
    }
    if (fact.type !== "alert.announced") return;
    const code = rules.find(({ id }) => id === fact.alertId)?.code ?? fact.alertId;
    const counted = count(fact.alertId);
    counted.announced += 1;
    if (fact.unspoken !== true) {
      counted.spoken += 1;
      if (counted.due === 0) counted.repeats += 1;
    }
    counted.due = 0;
    for (const due of open) {
      if (due.told || groupOf(due.rule.code) !== groupOf(code)) continue;
      if (rank(fact.priority) < rank(due.severity)) continue;
      due.told = true;
      due.toldLate = atMs > due.tellByMs;
    }
  };

  const checkScreens = (untilMs: number): void => {
    while (screens[0] !== undefined && screens[0].atMs < untilMs) {
      const { atMs, alertIds } = screens.shift()!;
      for (const alertId of new Set([...standing.keys(), ...severities.keys()]))
        if (!alertIds.includes(alertId)) offScreen.push({ alertId, atMs, why: "stands, but is not shown" });
    }
  };

  const checkTakenBack = (nowMs: number): void => {
    for (const [alertId, byMs] of takeBack) {
      if (!standing.has(alertId)) takeBack.delete(alertId);
      else if (nowMs > byMs) {
        notTakenBack.push({ alertId, atMs: byMs, why: "its value was struck" });
        takeBack.delete(alertId);
      }
    }
  };

  for (const turn of run.turns) {
    checkScreens(turn.atMs);
    checkTakenBack(turn.atMs);
    const ofAlerts = (fact: Fact): boolean => fact.type.startsWith("alert.") && fact.type !== "alert.acknowledged";
    for (const fact of turn.facts) {
      log = reduceFact(log, fact);
      readings.take(fact);
      if (fact.type === "standBy.started" || fact.type === "alerts.paused") quietUntilMs = fact.untilMs;
    }
    evaluate(
      turn,
      turn.facts.some(({ type }) => type === "entry.struck"),
    );
    for (const fact of turn.facts.filter(ofAlerts)) takeAlertFact(fact, turn.atMs);
    settle(turn.atMs);
    for (const { text, priority, alertId } of turn.announcements)
      if (text !== "" && priority !== "none" && alertId !== undefined) spokenAtMs.push(turn.atMs);
  }
  const endMs = run.turns[0]!.atMs + run.lastsS * 1000;
  checkScreens(Infinity);
  checkTakenBack(Infinity);
  for (const due of open)
    if (endMs > due.tellByMs)
      missed.push({
        alertId: due.alertId,
        atMs: due.atMs,
        why: `${due.severity} at ${due.value.toFixed(1)}: never told`,
      });
  return { crossings, missed, late, notTakenBack, offScreen, spokenAtMs, conditions: counts };
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

const ISSUE_WATCHES = [
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
  return ISSUE_WATCHES.filter((name) => !watched.includes(name));
}
