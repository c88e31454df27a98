import { freshState, type AppContext, type AppState } from "../../../src/app/context.ts";
import { takeUtterance, type Turn } from "../../../src/app/takeTurn.ts";
import type { VitalCode } from "../../../src/core/vitals.ts";
import { emptyCase } from "../../../src/log/caseState.ts";
import type { Question, VitalValue } from "../../../src/log/facts.ts";
import type { Random } from "../random.ts";
import type { Ears } from "./ears.ts";
import { type Hearing } from "./measured.ts";

/** What people do, as shares of 1. */
export type Habits = {
  /** Notices that a number read back or asked about is not the one that was said. */
  readonly notices: number;
  /** Takes a right read-back for a wrong one. */
  readonly mishears: number;
};

/** One value to be brought into the record. */
export type Task = {
  readonly words: string;
  readonly values: readonly (readonly [VitalCode, number])[];
};

export type Played = {
  /** Things said by the user. */
  readonly turns: number;
  /** From the first word said to the moment in which the right value is on record; undefined: it never was. */
  readonly seconds: number | undefined;
  /** A value that was not said stands in the record at the end. */
  readonly wrongStays: boolean;
};

/** @param replyS how long our voice takes for a reply. */
export type Times = {
  readonly wordS: number;
  readonly answerS: number;
  readonly thinkS: number;
  readonly silenceS: number;
  readonly replyS: (text: string) => number;
};

export const MOST_TURNS = 4;
const START_MS = 1_800_000_000_000;

const isSame = (values: readonly Pick<VitalValue, "code" | "value">[], task: Task): boolean =>
  values.length === task.values.length &&
  task.values.every(([code, value]) => values.some((v) => v.code === code && Math.abs(v.value - value) < 0.01));

/** What stands in the record of the codes that were ever entered. */
const standing = (state: AppState): readonly VitalValue[] =>
  Object.values(state.log.vitals).flatMap((history) => (history === undefined ? [] : [history.entry]));

/** Plays one user who follows the rules until the value stands, is taken for right, or patience ends. Pure but for chance. */
export function playTask(
  context: AppContext,
  task: Task,
  hearing: Hearing,
  habits: Habits,
  times: Times,
  ears: Ears,
  random: Random,
): Played {
  let state: AppState = freshState(emptyCase);
  let seconds = 0;
  let doneAtS: number | undefined;
  let says: string | undefined = task.words;
  let turns = 0;
  while (says !== undefined && turns < MOST_TURNS) {
    turns++;
    seconds += says.split(" ").length * times.wordS + times.answerS;
    const nowMs = START_MS + Math.round(seconds * 1000);
    const [question] = state.log.questions;
    const isAnswer = question !== undefined && says !== task.words;
    const counts = isAnswer ? hearing.answers : hearing.values;
    const turn: Turn = takeUtterance(
      context,
      state,
      ears.hear(state, says, counts, hearing.besideAnother, nowMs),
      nowMs,
    );
    state = turn.state;
    if (isSame(standing(state), task)) doneAtS ??= seconds;
    else doneAtS = undefined;
    const reply = turn.answer?.reply ?? "";
    seconds += reply === "" ? times.silenceS : times.replyS(reply) + times.thinkS;
    says = next(turn, task, habits, random);
  }
  const stands = standing(state);
  return { turns, seconds: doneAtS, wrongStays: stands.length > 0 && !isSame(stands, task) };
}

/** What the user says next; nothing when content. */
function next(turn: Turn, task: Task, habits: Habits, random: Random): string | undefined {
  const notices = () => random.next() < habits.notices;
  const mishears = () => random.next() < habits.mishears;
  switch (turn.answer?.outcome) {
    case "recorded": {
      const recorded = turn.facts.flatMap((f) => (f.type === "vital.recorded" ? [f] : []));
      const looksWrong = isSame(recorded, task) ? mishears() : notices();
      return looksWrong ? `correction ${task.words}` : undefined;
    }
    case "asked":
      return answerTo(turn.state.log.questions[0], task, notices, mishears);
    default:
      return task.words;
  }
}

function answerTo(question: Question | undefined, task: Task, notices: () => boolean, mishears: () => boolean): string {
  const [first, ...others] = question?.candidates ?? [];
  const isProposed = question !== undefined && first !== undefined && isSame(first.statement.vitals, task);
  // A choice of which is answered by saying the value again.
  if (first === undefined || (others.length > 0 && question?.reason !== "sound-alike")) return task.words;
  const looksRight = isProposed ? !mishears() : !notices();
  return looksRight ? "affirm" : task.words;
}
