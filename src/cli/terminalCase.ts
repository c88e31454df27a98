import type { Announcement } from "../app/announcement.ts";
import type { AppContext } from "../app/context.ts";
import type { FactStore, GrammarState, Utterance } from "../app/ports.ts";
import { Session } from "../app/session.ts";
import type { Fact } from "../log/facts.ts";
import type { Outcome } from "../app/screenView.ts";
import { showCaseTime } from "./talkLine.ts";

/** The line for an utterance, as `--json` prints it. */
export type AnswerLine = {
  readonly at: string;
  readonly heard: string;
  readonly outcome: Outcome;
  readonly facts: readonly Fact[];
  readonly reply: string;
};
/** The line for anything said unasked. */
export type SpokeLine = {
  readonly at: string;
  readonly spoke: string;
  readonly priority: "high" | "medium" | "low" | "none";
};

const STEP_MS = 1000;

/** A tone alone cannot be printed. */
const isWords = ({ text }: Announcement): boolean => text !== "";

/** One case in a terminal: its clock stands still until it is moved, and whatever falls due on the way is said on time. */
export class TerminalCase {
  readonly #session: Session;
  readonly #startMs: number;
  #nowMs: number;

  constructor(context: AppContext, store: FactStore, caseId: string, startMs: number) {
    let opened = 0;
    const newCaseId = (): string => (++opened === 1 ? caseId : `${caseId}-${opened}`);
    this.#session = new Session({ context, store, newCaseId });
    this.#startMs = startMs;
    this.#nowMs = startMs;
  }

  /** Opens the case, and returns what is said first. */
  async start(): Promise<readonly SpokeLine[]> {
    const { announcements } = await this.#session.start(this.#nowMs);
    return this.#spoken(announcements);
  }

  /** What may be said now. */
  get grammar(): GrammarState {
    return this.#session.grammar;
  }

  get caseMs(): number {
    return this.#nowMs - this.#startMs;
  }

  /** Moves the case clock forward, second by second, and returns what was said on the way. */
  async advanceTo(caseMs: number): Promise<readonly SpokeLine[]> {
    const spoke: SpokeLine[] = [];
    const untilMs = this.#startMs + caseMs;
    while (this.#nowMs < untilMs) {
      this.#nowMs = Math.min(this.#nowMs + STEP_MS, untilMs);
      const { announcements } = await this.#session.tick(this.#nowMs);
      spoke.push(...(await this.#spoken(announcements)));
    }
    return spoke;
  }

  /** @param heard what the line shows as heard: the typed line, or the words of the recogniser. */
  async hear(utterance: Utterance, heard: string): Promise<{ answer: AnswerLine; spoke: readonly SpokeLine[] }> {
    const report = await this.#session.hear(utterance, this.#nowMs);
    const { outcome = "ignored", reply = "" } = report.answer ?? {};
    const answer = { at: showCaseTime(this.caseMs), heard, outcome, facts: report.facts, reply };
    const parts = report.answer?.parts ?? (reply === "" ? [] : [reply]);
    for (const text of parts) await this.#record({ text, priority: "none", alertId: undefined });
    return { answer, spoke: await this.#spoken(report.announcements) };
  }

  async #spoken(announcements: readonly Announcement[]): Promise<readonly SpokeLine[]> {
    const at = showCaseTime(this.caseMs);
    for (const announcement of announcements.filter(isWords)) await this.#record(announcement);
    return announcements.filter(isWords).map(({ text, priority }) => ({ at, spoke: text, priority }));
  }

  /** What is printed counts as said. */
  async #record({ text, priority, alertId }: Announcement): Promise<void> {
    const named = alertId === undefined ? {} : { alertId };
    await this.#session.record({ type: "speech.started", text, priority, ...named }, this.#nowMs);
  }
}
