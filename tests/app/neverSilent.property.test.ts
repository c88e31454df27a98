import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { VITALS } from "../../src/core/vitals.ts";
import { freshState, type AppState } from "../../src/app/context.ts";
import { takeTick, takeUtterance, type Turn } from "../../src/app/takeTurn.ts";
import { emptyCase, type CaseState } from "../../src/log/caseState.ts";
import type { Fact, NewFact, Question } from "../../src/log/facts.ts";
import { reduceFacts } from "../../src/log/reduceFact.ts";
import { once } from "./once.ts";
import { testContext } from "./playCase.ts";
import { talking, utteranceOf, type Said } from "./saying.ts";

const context = testContext();
const T0 = 1_800_000_000_000;

type Played = { readonly said: Said; readonly before: CaseState; readonly turn: Turn; readonly outcome: string };

/** Plays a case through the pure decisions, with the ticks that would come between. */
function play(talk: readonly Said[]): {
  readonly turns: readonly Played[];
  readonly facts: readonly Fact[];
  readonly log: CaseState;
} {
  const facts: Fact[] = [];
  let state: AppState = freshState(emptyCase);
  let nowMs = T0;
  const turns: Played[] = [];
  for (const said of talk) {
    nowMs += said.afterS * 1000;
    const tick = takeTick(context, state, nowMs);
    const turn = takeUtterance(context, tick.state, utteranceOf(said, nowMs), nowMs);
    turns.push({ said, before: tick.state.log, turn, outcome: turn.answer?.outcome ?? "none" });
    facts.push(...tick.facts, ...turn.facts);
    state = turn.state;
  }
  return { turns, facts, log: state.log };
}

const playOnce = once(play);
const always = (check: (played: ReturnType<typeof play>, talk: readonly Said[]) => void): void =>
  fc.assert(
    fc.property(talking, (talk) => void check(playOnce(talk), talk)),
    { numRuns: 250 },
  );

type Recorded = Extract<Fact, { readonly type: "vital.recorded" }>;
const vitalsOf = (facts: readonly Fact[]): readonly Recorded[] =>
  facts.flatMap((f) => (f.type === "vital.recorded" ? [f] : []));

/** All values that stand in the state, by fact id. */
function standing(log: CaseState): readonly (readonly [string, number])[] {
  return Object.values(log.vitals).flatMap((history) => {
    const values: (readonly [string, number])[] = [];
    for (let link: typeof history | undefined = history; link !== undefined; link = link.earlier)
      values.push([link.entry.id, link.entry.value]);
    return values;
  });
}

const READINGS: readonly NewFact["type"][] = [
  "vital.recorded",
  "finding.recorded",
  "sex.recorded",
  "cause.recorded",
  "herniation.recorded",
];
const RECORDS: readonly NewFact["type"][] = [...READINGS, "step.answered"];

describe("what is said here", () => {
  it("comes to everything that the properties below speak of", () => {
    const facts = fc.sample(talking, { numRuns: 300, seed: 1 }).flatMap((talk) => play(talk).facts);
    const kinds = facts.map((f) => {
      if (f.type === "question.asked") return `asked ${f.question.reason}`;
      return f.type === "question.closed" ? `closed ${f.outcome}` : f.type;
    });
    for (const kind of [
      "asked sound-alike",
      "asked acoustic",
      "asked unit",
      "asked implausible",
      "asked jump",
      "closed affirmed",
      "closed denied",
      "closed restated",
      "closed unconfirmed",
      "vital.recorded",
      "cause.recorded",
      "herniation.recorded",
      "entry.struck",
      "alert.raised",
      "alert.cleared",
      "standBy.started",
      "alert.acknowledged",
      "alerts.paused",
      "talk.set",
      "voice.set",
    ])
      expect([kind, kinds.filter((k) => k === kind).length]).toEqual([kind, expect.toSatisfy((n: number) => n >= 8)]);
  });
});

describe("whatever is said", () => {
  it("every value that stands was recorded and not struck, and every other one was struck", () => {
    always(({ facts, log }) => {
      const struck = facts.flatMap((f) => (f.type === "entry.struck" ? f.targetIds : []));
      const expected = vitalsOf(facts).filter((f) => !struck.includes(f.id));
      expect(standing(log).toSorted()).toEqual(expected.map((f) => [f.id, f.value] as const).toSorted());
    });
  });

  it("only what exists is struck, once, and only by a correction, an answer to one, or disregard", () => {
    always(({ facts, turns }) => {
      const ids = new Set(facts.flatMap((f) => (RECORDS.includes(f.type) ? [f.id] : [])));
      const struck = facts.flatMap((f) => (f.type === "entry.struck" ? f.targetIds : []));
      for (const id of struck) expect(ids.has(id)).toBe(true);
      for (const { said, turn, before } of turns) {
        if (!turn.facts.some((f) => f.type === "entry.struck")) continue;
        const mayStrike =
          /^correction|^negative|^disregard/.test(said.words) ||
          before.questions.some((q) => q.strikes.length > 0 || q.acts?.some((act) => act.kind === "disregard"));
        expect(mayStrike).toBe(true);
      }
    });
  });

  it("nothing is entered by what was ignored, refused or only answered", () => {
    always(({ turns }) => {
      for (const { turn, outcome } of turns) {
        if (outcome === "recorded" || outcome === "asked") continue;
        expect(turn.facts.filter((f) => RECORDS.includes(f.type) || f.type === "entry.struck")).toEqual([]);
        if (outcome !== "answered") expect(turn.facts.filter((f) => !f.type.startsWith("alert."))).toEqual([]);
      }
    });
  });

  it("every reply says something, except to what was ignored, or recorded where only alerts are to be said", () => {
    always(({ turns }) => {
      for (const { turn, outcome } of turns) {
        const mayBeSilent = turn.state.log.talk.level === "alerts" && outcome === "recorded";
        if (!mayBeSilent) expect([outcome, turn.answer?.reply === ""]).toEqual([outcome, outcome === "ignored"]);
      }
    });
  });

  it("the facts alone give the state back", () => {
    always(({ facts, log }) => expect(reduceFacts(facts)).toEqual(log));
  });

  it("the same words at the same times give the same case", () => {
    always((first, talk) => expect(play(talk)).toEqual(first));
  });

  it("no id is given twice", () => {
    always(({ facts }) => {
      const ids = facts.map((f) => f.id);
      const questions = facts.flatMap((f) => (f.type === "question.asked" ? [f.question.id] : []));
      expect([new Set(ids).size, new Set(questions).size]).toEqual([ids.length, questions.length]);
    });
  });

  it("diastolic lies under mean under systolic in every reading, and every value within its limits", () => {
    always(({ facts }) => {
      const all = vitalsOf(facts);
      for (const readingId of new Set(all.map((f) => f.readingId))) {
        const reading = all.filter((f) => f.readingId === readingId);
        const of = (code: string) => reading.find((f) => f.code === code)?.value;
        const given = [of("dbp"), of("map"), of("sbp")].filter((p) => p !== undefined);
        expect(given).toEqual(given.toSorted((a, b) => a - b));
        expect(new Set(given).size).toBe(given.length);
        for (const { code, value, unit } of reading) {
          expect(unit).toBe(VITALS[code].unit);
          expect(value).toBeGreaterThanOrEqual(VITALS[code].limits.min);
          expect(value).toBeLessThanOrEqual(VITALS[code].limits.max);
        }
      }
    });
  });

  it("a value taken by an answer is one that the question offered", () => {
    always(({ turns }) => {
      for (const { turn, before } of turns) {
        const closed = turn.facts.find((f) => f.type === "question.closed" && f.outcome === "affirmed");
        if (closed?.type !== "question.closed") continue;
        const question = before.questions.find((q): q is Question => q.id === closed.questionId);
        const values = question?.candidates.map((c) => c.statement.vitals.map((v) => [v.code, v.value]));
        const offered = question?.acts === undefined ? values : [[]];
        expect(offered).toContainEqual(vitalsOf(turn.facts).map((v) => [v.code, v.value]));
      }
    });
  });

  it("sound that left a doubt is never entered at once", () => {
    always(({ turns }) => {
      for (const { said, turn } of turns) {
        const doubtful = said.costPerPhone < 0 || said.overlapped;
        if (said.by !== "listener" || !doubtful) continue;
        const entered = turn.facts.filter((f) => READINGS.includes(f.type));
        const answeredOpenly = turn.facts.some((f) => f.type === "question.closed" && f.outcome === "affirmed");
        if (entered.length > 0) expect(answeredOpenly && said.costPerPhone === 0).toBe(true);
      }
    });
  });

  it("a question that is closed is closed once, and was asked", () => {
    always(({ facts }) => {
      const open = new Set<string>();
      for (const fact of facts) {
        if (fact.type === "question.asked") open.add(fact.question.id);
        if (fact.type === "question.closed") expect(open.delete(fact.questionId)).toBe(true);
      }
    });
  });

  it("no question about a vital outlives a newer value of it", () => {
    always(({ turns }) => {
      for (const { turn } of turns) {
        // A correction carries the other half of a pressure along: a question about that half still stands.
        if (turn.facts.some((f) => f.type === "entry.struck")) continue;
        const asked = turn.facts.flatMap((f) => (f.type === "question.asked" ? [f.question.id] : []));
        const recorded = vitalsOf(turn.facts).map((f) => f.code);
        const older = turn.state.log.questions.filter((q) => !asked.includes(q.id));
        for (const { about } of older) expect(about.some((code) => recorded.includes(code))).toBe(false);
      }
    });
  });
});
