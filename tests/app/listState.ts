import { freshState, type AppState } from "../../src/app/context.ts";
import { takeTick, takeUtterance, type Turn } from "../../src/app/takeTurn.ts";
import { stamp } from "../../src/app/decide/stamp.ts";
import type { NewFact } from "../../src/log/facts.ts";
import { reduceFacts } from "../../src/log/reduceFact.ts";
import { CaseBuilder } from "../log/caseBuilder.ts";
import { testContext } from "./playCase.ts";

export const context = testContext();
export const SAID = { heard: "as said", by: "typed" } as const;

/** A case that begins with these facts, talked on in typed lines. */
export class TalkedCase {
  state: AppState;
  private nowMs = 0;

  constructor(...facts: readonly NewFact[]) {
    const builder = new CaseBuilder();
    builder.add(...facts);
    this.state = freshState(builder.state);
  }

  say(words: string): Turn {
    const utterance = { by: "typed", candidates: [{ words, score: 0 }], endedAtMs: this.nowMs } as const;
    return this.took(takeUtterance(context, this.state, utterance, this.nowMs));
  }

  /** The time that passes, in seconds, and what is said by itself at its end. */
  wait(seconds: number): readonly string[] {
    this.nowMs += seconds * 1000;
    return this.took(takeTick(context, this.state, this.nowMs)).announcements.map(({ text }) => text);
  }

  /** Facts that come in by another way than by what is said here. */
  add(...facts: readonly NewFact[]): void {
    this.state = { ...this.state, log: reduceFacts(stamp(this.state.log, facts, this.nowMs), this.state.log) };
  }

  reply(words: string): string | undefined {
    return this.say(words).answer?.reply;
  }

  private took(turn: Turn): Turn {
    this.state = turn.state;
    return turn;
  }
}

/** A question whose "affirm" puts these facts into the record, as drugs and a rescue do. */
export const asking = (...facts: Extract<NewFact, { readonly type: "drug.given" | "rescue.started" }>[]): NewFact => ({
  type: "question.asked",
  question: {
    id: "question-x",
    reason: "always-confirm",
    about: [],
    prompt: "Affirm?",
    ...SAID,
    askedAtMs: 0,
    strikes: [],
    candidates: [],
    acts: [{ kind: "record", facts }],
  },
});

export const ketamine = {
  type: "drug.given",
  drugId: "ketamine",
  drugClass: "induction",
  amount: { value: 80, unit: "mg" },
  ...SAID,
} as const;
export const rocuronium = { ...ketamine, drugId: "rocuronium", drugClass: "muscleRelaxant" } as const;
