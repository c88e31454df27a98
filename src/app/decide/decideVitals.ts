import type { VitalCode } from "../../core/vitals.ts";
import { slotOf, type SaidItem, type SaidVital } from "../../language/intent.ts";
import { sayQuestion, sayHeard } from "../../language/sentences/question.ts";
import { sentences } from "../../language/sentences/sentence.ts";
import type { CaseState } from "../../log/caseState.ts";
import type { NewFact, Question, Statement } from "../../log/facts.ts";
import { selectLatest } from "../../log/selectors.ts";
import { strike } from "../../log/strike.ts";
import type { AppContext } from "../context.ts";
import { checkGroup, inDoubt, type Check } from "./checkGroup.ts";
import {
  PRESSURES,
  replacedBy,
  replacedFindings,
  replacedThrough,
  slotsOfQuestion,
  type Replaced,
} from "./correction.ts";
import { refused, type Decision } from "./decision.ts";
import { findingsOf, recordStatements, type Source } from "./recordStatement.ts";
import { relabels, type Relabel } from "./relabel.ts";
import { asSaidVital } from "./saidVital.ts";

/** Values that stand or fall together: a pressure with its mean, or one vital. */
function groupsOf(items: readonly SaidItem[]): readonly (readonly SaidVital[])[] {
  const groups = new Map<string, SaidVital[]>();
  for (const item of items) {
    if (item.kind !== "vital") continue;
    const key = PRESSURES.includes(item.code) ? "pressure" : item.code;
    const group = groups.get(key) ?? [];
    if (!group.some((g) => g.code === item.code && g.value === item.value)) group.push(item);
    groups.set(key, group);
  }
  return [...groups.values()];
}

/** The same vital twice with different values, as in "rate ninety, no, rate one ten": never chosen between in silence. */
const contradicts = (group: readonly SaidVital[]): boolean => new Set(group.map((v) => v.code)).size < group.length;

type Asked = {
  readonly check: Check & { kind: "ask" };
  readonly codes: readonly VitalCode[];
  readonly strikes: readonly string[];
  /** The value before, where there is one. */
  readonly last: number | undefined;
};

export type HowSaid = {
  /** What was said replaces the values that it names. */
  readonly correction: boolean;
  /** The sound left a doubt: what would be taken is asked back. */
  readonly unsure?: boolean;
};

/** Open questions that these values answer by being said again. */
const answeredBy = (log: CaseState, slots: readonly string[]): readonly Question[] =>
  log.questions.filter((q) => slotsOfQuestion(q).some((slot) => slots.includes(slot)));

const NOT_HEARD_SURELY: readonly Question["reason"][] = ["acoustic", "ambiguous"];

/**
 * The doubtful half of a pressure said again ("diastolic five zero"): its other half was not in doubt and stays with it.
 * Nothing is added where the whole was in doubt.
 */
function otherHalf(log: CaseState, items: readonly SaidItem[]): readonly SaidVital[] {
  const codes = items.flatMap((i) => (i.kind === "vital" ? [i.code] : []));
  const question = log.questions.find((q) => q.about[0] !== undefined && codes.includes(q.about[0]));
  const [first] = question?.candidates ?? [];
  if (question === undefined || first === undefined || NOT_HEARD_SURELY.includes(question.reason)) return [];
  return first.statement.vitals.filter((v) => !codes.includes(v.code)).map(asSaidVital);
}

/** A systolic that was felt has no diastolic: that of the pressure which it corrects goes with it. */
const isPalpated = ({ code, method }: SaidVital): boolean => code === "sbp" && method === "palpated";

const nothingReplaced: Replaced = { strikes: [], carried: [] };
const notRelabelled: Relabel = { kind: "no" };

/**
 * Takes what can be taken of one breath and asks about the rest. Questions about any of these values are closed: they were
 * said anew.
 */
export function decideVitals(
  context: AppContext,
  log: CaseState,
  said: readonly SaidItem[],
  source: Source,
  nowMs: number,
  { correction, unsure }: HowSaid,
): Decision {
  const items = [...said, ...otherHalf(log, said)];
  const relabel = correction ? relabels(log, said, context.protocol.region) : notRelabelled;
  if (relabel.kind === "refuse") return refused(relabel.words);
  const relabelled = relabel.kind === "strike" ? relabel.ids : [];
  const taken: Statement[] = [];
  const asked: Asked[] = [];
  const strikes: string[] = [];
  for (const group of groupsOf(items)) {
    if (contradicts(group)) return refused("Two values. Say it again.");
    const codes: VitalCode[] = group.map((v) => v.code);
    const closes = answeredBy(log, codes);
    const corrected = correction ? replacedBy(log, codes) : nothingReplaced;
    const replaced = closes.length > 0 ? replacedThrough(log, closes, codes) : corrected;
    const toStrike = [...new Set([...replaced.strikes, ...relabelled])];
    // A value that replaces another is not measured against that one: it was wrong.
    const remaining = toStrike.length === 0 ? log : strike(log, toStrike);
    const carried = group.some(isPalpated) ? replaced.carried.filter(({ code }) => code !== "dbp") : replaced.carried;
    const checked = checkGroup(remaining, context.protocol, source.by, group, carried, nowMs);
    const check = unsure === true ? inDoubt(checked) : checked;
    if (check.kind === "take") {
      taken.push({ vitals: check.values, findings: [] });
      strikes.push(...toStrike);
    } else {
      asked.push({ check, codes, strikes: toStrike, last: selectLatest(remaining, check.about.code)?.value });
    }
  }
  const rest = findingsOf(items);
  const answeredFindings = answeredBy(
    log,
    items.flatMap((i) => (i.kind === "vital" ? [] : [slotOf(i)])),
  );
  const restStrikes = [
    ...new Set([
      ...answeredFindings.flatMap((q) => q.strikes),
      ...(correction ? [...replacedFindings(log, items), ...relabelled] : []),
    ]),
  ];
  if (rest !== undefined && unsure !== true) {
    taken.push(rest);
    strikes.push(...restStrikes);
  }
  const facts: NewFact[] = [];
  const saidAnew = answeredBy(log, items.map(slotOf));
  for (const { id } of saidAnew) facts.push({ type: "question.closed", questionId: id, outcome: "restated" });
  if (taken.length > 0) facts.push(...recordStatements(log, taken, source, strikes, facts.length));
  const questions = asked.map((a, i) => ask(log, source, a, nowMs, facts.length + i));
  if (rest !== undefined && unsure === true)
    questions.push(askFindings(log, source, rest, restStrikes, nowMs, facts.length + questions.length));
  // The newest question is the one that "affirm" answers, so the one spoken now goes in last.
  facts.push(...[...questions].reverse().map((question): NewFact => ({ type: "question.asked", question })));
  const prompt = questions[0]?.prompt;
  const then = relabel.kind === "strike" && prompt === undefined ? sentences(relabel.words) : prompt;
  return {
    facts,
    outcome: prompt === undefined ? "recorded" : "asked",
    reply: taken.length > 0 ? { kind: "recorded", statements: taken, then } : { kind: "words", text: prompt ?? "" },
  };
}

function ask(
  log: CaseState,
  source: Source,
  { check, codes, strikes, last }: Asked,
  nowMs: number,
  n: number,
): Question {
  return {
    id: `question-${log.factCount + n}`,
    reason: check.reason,
    about: [check.about.code, ...codes.filter((code) => code !== check.about.code)],
    prompt: sentences(sayQuestion(check.reason, check.about, check.candidates, check.together, last)),
    heard: source.heard,
    by: source.by,
    askedAtMs: nowMs,
    strikes,
    candidates: check.candidates,
  };
}

/** Findings whose words left a doubt. They have no number, so only affirm and negative settle it. */
function askFindings(
  log: CaseState,
  source: Source,
  statement: Statement,
  strikes: readonly string[],
  nowMs: number,
  n: number,
): Question {
  const choose = sayHeard(statement);
  return {
    id: `question-${log.factCount + n}`,
    reason: "acoustic",
    about: statement.findings.map((finding) => finding.code),
    prompt: sentences(`${choose}?`),
    heard: source.heard,
    by: source.by,
    askedAtMs: nowMs,
    strikes,
    candidates: [{ choose, number: undefined, statement }],
  };
}
