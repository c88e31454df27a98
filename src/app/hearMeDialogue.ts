import type { VoiceProfile } from "../listener/voiceProfile.ts";
import type { CaseGrammars } from "./compileGrammars.ts";
import { HEAR_ME_IDLE, lineOf, stepHearMe, type HearMe, type HearMeEffect, type HearMeInput } from "./hearMe.ts";
import { commandOf, HEAR_ME_GRAMMAR, isLineOf, judgeLine } from "./hearMeLine.ts";
import { HEAR_ME_LINES } from "./hearMeLines.ts";
import { ANSWER_FIRST, FORGOTTEN, SAY_AGAIN, sayHearMe, sayProfileError, WAS_A_LINE } from "./hearMeWords.ts";
import type { Mouth } from "./mouth.ts";
import type { Clock, GrammarState, ProfileStore, Utterance } from "./ports.ts";
import type { Outcome } from "./screenView.ts";
import type { Session } from "./session.ts";
import { speechStartedAtMs } from "./speechStart.ts";

/** So long after its end one of the lines, heard once more, is taken for a repetition. */
export const AFTERWARDS_MS = 8_000;

/** What the page shows of it. */
export type HearMeTalk = {
  readonly running: { readonly line: string; readonly number: number; readonly prompt: string } | undefined;
  readonly profile: VoiceProfile | undefined;
  /** What came of the last attempt, or what is wrong with what was stored. */
  readonly notice: string;
};

export const HEAR_ME_SILENT: HearMeTalk = { running: undefined, profile: undefined, notice: "" };

export type HearMeParts = {
  readonly session: Session;
  readonly clock: Clock;
  readonly profiles: ProfileStore;
  readonly mouth: Mouth;
  /** It began, moved on or ended, or the profile is another one. */
  readonly onChange: (talk: HearMeTalk) => void;
};

type Taken = { readonly words: string; readonly outcome: Outcome };

/**
 * Runs "hear me" beside the case. While it runs nothing that is heard reaches the case, and right after it no line of it
 * does: what is repeated on request is never a fact. Errors of the store are shown. Not for: the decision what to believe.
 */
export class HearMeDialogue {
  #state: HearMe = HEAR_ME_IDLE;
  #talk = HEAR_ME_SILENT;
  /** Unix ms of its last end: what began before it was said to it. */
  #endedAtMs = -Infinity;
  #linesUntilMs = -Infinity;
  readonly #p: HearMeParts;

  constructor(parts: HearMeParts) {
    this.#p = parts;
  }

  get isRunning(): boolean {
    return this.#state.kind === "running";
  }

  get #grammars(): CaseGrammars {
    return this.#p.session.context.grammars;
  }

  /** What may be said to the case now. */
  get #caseGrammar(): GrammarState {
    return this.#p.session.grammar;
  }

  /** Reads what was learnt before. */
  async load(): Promise<void> {
    const loaded = await this.#p.profiles.load();
    if (loaded.ok) this.#show({ profile: loaded.value });
    else this.#show({ notice: sayProfileError(loaded.error) });
  }

  start(): void {
    if (this.#p.session.state.log.questions.length > 0) return this.#say(ANSWER_FIRST);
    this.#step({ kind: "start", nowMs: this.#p.clock.nowMs() });
  }

  skip(): void {
    this.#step({ kind: "skip" });
  }

  /** Something more urgent than this. */
  interrupt(): void {
    this.#step({ kind: "interrupt" });
  }

  voiceEnded(): void {
    this.#step({ kind: "voiceEnded", nowMs: this.#p.clock.nowMs() });
  }

  tick(): void {
    this.#step({ kind: "tick", nowMs: this.#p.clock.nowMs() });
  }

  async forget(): Promise<void> {
    this.skip();
    const cleared = await this.#p.profiles.clear();
    const notice = cleared.ok ? FORGOTTEN : sayProfileError(cleared.error);
    this.#show({ profile: undefined, notice });
    this.#say(notice);
  }

  /** @returns what became of the utterance, if it was for "hear me"; otherwise it is the case's. */
  take(utterance: Utterance): Taken | undefined {
    const isTyped = utterance.by === "typed";
    if (this.isRunning) return isTyped ? this.#typed(utterance) : this.#spoken(utterance);
    if (!isTyped && this.#wasForUs(utterance)) return { words: "", outcome: "refused" };
    if (utterance.overlapped) return undefined;
    const command = commandOf(this.#grammars, this.#caseGrammar, utterance);
    if (command === undefined || (command.name !== "hearMe" && command.name !== "forgetVoice")) return undefined;
    const { words } = command;
    if (!command.isSure) {
      this.#p.mouth.mark("refused");
      this.#say(SAY_AGAIN);
      return { words, outcome: "refused" };
    }
    this.#p.mouth.mark("heard");
    if (command.name === "hearMe") this.start();
    else void this.forget();
    return { words, outcome: "answered" };
  }

  /** Typing is work on the case, but for the words that end this. */
  #typed(utterance: Utterance): Taken | undefined {
    const command = commandOf(this.#grammars, HEAR_ME_GRAMMAR, utterance);
    if (command?.name !== "notNow") {
      this.interrupt();
      return this.take(utterance);
    }
    this.skip();
    return { words: command.words, outcome: "answered" };
  }

  #spoken(utterance: Utterance): Taken | undefined {
    if (this.#state.kind !== "running") return undefined;
    const heard = judgeLine(this.#grammars, lineOf(this.#state), utterance);
    const isGood = heard.kind === "line" && (heard.outcome === "right" || heard.outcome === "unsure");
    if (heard.kind !== "ownVoice") this.#p.mouth.mark(isGood || heard.kind === "command" ? "heard" : "refused");
    this.#step({ kind: "heard", heard, nowMs: this.#p.clock.nowMs() });
    return { words: utterance.candidates[0]?.words ?? "", outcome: isGood ? "answered" : "ignored" };
  }

  /** Said while it still ran, or one of its lines once more just after it. Answered, so that nothing meant is lost unnoticed. */
  #wasForUs(utterance: Utterance): boolean {
    if (utterance.candidates.length === 0) return false;
    const isLate = speechStartedAtMs(utterance) < this.#endedAtMs;
    const isLine =
      this.#p.clock.nowMs() < this.#linesUntilMs && HEAR_ME_LINES.some((l) => isLineOf(this.#grammars, l, utterance));
    if (!isLate && !isLine) return false;
    if (isLine) this.#linesUntilMs = -Infinity;
    this.#p.mouth.mark("refused");
    this.#say(isLine ? WAS_A_LINE : SAY_AGAIN);
    return true;
  }

  #step(input: HearMeInput): void {
    const wasRunning = this.isRunning;
    const [state, effects] = stepHearMe(this.#state, input);
    this.#state = state;
    if (wasRunning && !this.isRunning) {
      this.#endedAtMs = this.#p.clock.nowMs();
      this.#linesUntilMs = this.#endedAtMs + AFTERWARDS_MS;
    }
    for (const effect of effects) this.#carryOut(effect);
  }

  #carryOut(effect: HearMeEffect): void {
    const text = sayHearMe(effect);
    const state = this.#state;
    const running =
      state.kind === "running" ? { line: lineOf(state), number: state.results.length + 1, prompt: text } : undefined;
    const profile = effect.kind === "finished" ? { profile: effect.profile } : {};
    this.#show({ running, notice: running === undefined ? text : "", ...profile });
    this.#say(text);
    if (effect.kind === "finished") void this.#keep(effect.profile);
  }

  async #keep(profile: VoiceProfile): Promise<void> {
    const saved = await this.#p.profiles.save(profile);
    if (!saved.ok) this.#show({ notice: sayProfileError(saved.error) });
  }

  #say(text: string): void {
    this.#p.mouth.say({ text, priority: "none", alertId: undefined });
  }

  #show(change: Partial<HearMeTalk>): void {
    this.#talk = { ...this.#talk, ...change };
    this.#p.onChange(this.#talk);
  }
}
