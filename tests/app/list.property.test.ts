import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { freshState } from "../../src/app/context.ts";
import { takeTick, takeUtterance, type Turn } from "../../src/app/takeTurn.ts";
import { emptyCase, type CaseState } from "../../src/log/caseState.ts";
import type { Fact, StepAnswer } from "../../src/log/facts.ts";
import { reduceFacts } from "../../src/log/reduceFact.ts";
import { selectList, selectToRead } from "../../src/log/steps/currentList.ts";
import { answerOf, isClosed, selectCalled, selectOpen } from "../../src/log/steps/openSteps.ts";
import { placeOf, placesOf } from "../../src/log/steps/lists.ts";
import { isSatisfied } from "../../src/log/steps/satisfied.ts";
import { isStandingBy } from "../../src/rules/standBy.ts";
import { once } from "./once.ts";
import { testContext } from "./playCase.ts";
import { moves, type Move } from "./randomCase.ts";

const context = testContext();
const { protocol } = context;
const T0 = 1_800_000_000_000;

type Played = { readonly move: Move; readonly before: CaseState; readonly turn: Turn; readonly nowMs: number };

function play(script: readonly Move[]): readonly Played[] {
  let state = freshState(emptyCase);
  let nowMs = T0;
  return script.map((move) => {
    const before = state.log;
    if (move.kind === "wait") nowMs += move.seconds * 1000;
    const typed = { by: "typed", candidates: [{ words: move.kind === "say" ? move.words : "", score: 0 }] } as const;
    const turn =
      move.kind === "wait"
        ? takeTick(context, state, nowMs)
        : takeUtterance(context, state, { ...typed, endedAtMs: nowMs }, nowMs);
    state = turn.state;
    return { move, before, turn, nowMs };
  });
}

const playOnce = once(play);
const always = (check: (played: readonly Played[]) => void): void =>
  fc.assert(
    fc.property(moves, (script) => void check(playOnce(script))),
    { numRuns: 100 },
  );

const isHeld = (log: CaseState, nowMs: number): boolean => log.questions.length > 0 || isStandingBy(log, nowMs);
const everyStep = protocol.groups.flatMap(({ steps }) => steps);
/** The answers that stand by the facts alone: the last of each step that was not struck. */
function standingAnswers(facts: readonly Fact[]): ReadonlyMap<string, StepAnswer> {
  const struck = facts.flatMap((f) => (f.type === "entry.struck" ? f.targetIds : []));
  const standing = facts.filter((f) => f.type === "step.answered").filter((f) => !struck.includes(f.id));
  return new Map(standing.map((f) => [f.stepId, f.answer]));
}

describe("what is played here", () => {
  it("comes to everything that the properties below speak of", () => {
    const turns = fc.sample(moves, { numRuns: 150, seed: 1 }).flatMap(play);
    const kinds = turns.flatMap(({ turn }) =>
      turn.facts.map((f) =>
        f.type === "list.read" ? `list ${f.mode}` : f.type === "step.answered" ? f.answer : f.type,
      ),
    );
    for (const kind of [
      "list all",
      "list killer",
      "list off",
      "done",
      "later",
      "not-needed",
      "waived",
      "entry.struck",
      "failure.called",
      "step.called",
    ])
      expect([kind, kinds.filter((k) => k === kind).length]).toEqual([kind, expect.toSatisfy((n: number) => n >= 8)]);
    const replies = turns.map(({ turn }) => turn.answer?.reply ?? "");
    for (const part of ["Back to", "Put off", "complete", "Waived"])
      expect([part, replies.some((reply) => reply.includes(part))]).toEqual([part, true]);
  });
});

describe("whatever is said while lists are read", () => {
  it("no step is lost: each is open, or closed by an answer that stands or by the record", () => {
    always((played) => {
      const facts: Fact[] = [];
      for (const { turn, nowMs } of played) {
        facts.push(...turn.facts);
        const { log } = turn.state;
        const answers = standingAnswers(facts);
        for (const list of ["prepare", "afterTube", "rescue"] as const) {
          const open = selectOpen(log, protocol, list, nowMs).map(({ step }) => step.id);
          expect(new Set(open).size).toBe(open.length);
          for (const { step } of placesOf(protocol, list)) {
            const answer = answers.get(step.id);
            const closed = (answer !== undefined && answer !== "later") || isSatisfied(log, protocol, step, nowMs);
            expect([step.id, open.includes(step.id)]).toEqual([step.id, !closed]);
          }
        }
      }
    });
  });

  it("a step is only ever called while it is open", () => {
    always((played) => {
      for (const { before, turn, nowMs } of played) {
        let log = before;
        for (const fact of turn.facts) {
          const place = fact.type === "step.called" ? placeOf(protocol, fact.stepId) : undefined;
          if (place !== undefined)
            expect([place.step.id, isClosed(log, protocol, place, nowMs)]).toEqual([place.step.id, false]);
          log = reduceFacts([fact], log);
        }
      }
    });
  });

  it("a bare answer never answers a step that is closed", () => {
    always((played) => {
      for (const { move, before, turn, nowMs } of played) {
        if (move.kind !== "say" || !["done", "later", "not needed", "not needed no time"].includes(move.words))
          continue;
        const answered = turn.facts.flatMap((f) => (f.type === "step.answered" ? [f.stepId] : []));
        const called = selectCalled(before, protocol, nowMs)?.step.id;
        expect(answered).toEqual(answered.length === 0 ? [] : [called]);
      }
    });
  });

  it("a list that is read and not held has always called a step that waits", () => {
    always((played) => {
      for (const { turn, nowMs } of played) {
        const { log } = turn.state;
        const outcome = turn.answer?.outcome;
        if (log.care.list === "off" || isHeld(log, nowMs) || outcome === "ignored" || outcome === "refused") continue;
        const called = selectCalled(log, protocol, nowMs);
        expect(selectToRead(log, protocol, nowMs).map(({ step }) => step.id)).toContain(called?.step.id);
      }
    });
  });

  it("what it adds is the step that waits, by its name or its challenge, at the end of what is said", () => {
    always((played) => {
      for (const { before, turn, nowMs } of played) {
        const { log } = turn.state;
        if (before.care.list === "off" || log.care.list === "off" || isHeld(log, nowMs)) continue;
        const outcome = turn.answer?.outcome;
        if (outcome === "ignored" || outcome === "refused" || turn.facts.length === 0) continue;
        if (!turn.facts.some(({ type }) => type === "step.called")) continue;
        const step = selectCalled(log, protocol, nowMs)?.step;
        const spoken = turn.answer?.reply ?? turn.announcements.at(-1)?.text ?? "";
        const end = [`Back to ${step?.name ?? "?"}.`, step?.challenge ?? "?", `${step?.challenge ?? "?"}.`];
        expect([spoken, end.some((words) => spoken.endsWith(words))]).toEqual([spoken, true]);
      }
    });
  });

  it("a list ends only when nothing of it is open but what was put off while it was read, or when it is told to", () => {
    always((played) => {
      for (const { move, before, turn, nowMs } of played) {
        const isOver = turn.facts.some((f) => f.type === "list.read" && f.mode === "off");
        const isTold = move.kind === "say" && move.words === "pause the list";
        if (!isOver || isTold) continue;
        const list = selectList(before, protocol, nowMs);
        const { log } = turn.state;
        const isKiller = before.care.list === "killer";
        const struckCall = turn.facts.some(({ type }) => type === "entry.struck");
        const left = selectOpen(log, protocol, list, nowMs).filter(({ step }) => !isKiller || step.killer);
        const unread = left.filter((place) => (answerOf(log, place)?.seq ?? -1) < before.care.listSeq);
        if (!struckCall) expect(unread.map(({ step }) => step.id)).toEqual([]);
      }
    });
  });

  it("a struck answer brings back what stood before it", () => {
    always((played) => {
      const facts: Fact[] = [];
      for (const { turn } of played) {
        facts.push(...turn.facts);
        const answers = standingAnswers(facts);
        for (const { id } of everyStep) expect([id, turn.state.log.steps[id]?.answer]).toEqual([id, answers.get(id)]);
      }
    });
  });
});
