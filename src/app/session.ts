import { labelFrom } from "../log/caseLabel.ts";
import { emptyCase, type CaseState } from "../log/caseState.ts";
import type { Fact } from "../log/facts.ts";
import { reduceFacts } from "../log/reduceFact.ts";
import { NOT_CLOSED, NOT_ERASED, sayClosed, sayErased, sayOpened } from "../language/sentences/caseRecord.ts";
import { sentences } from "../language/sentences/sentence.ts";
import { clockNews } from "./clockNews.ts";
import { freshState, grammarState, type AppContext, type AppState } from "./context.ts";
import { stamp } from "./decide/stamp.ts";
import type { DeviceFault } from "../rules/alerts/condition.ts";
import { endPart } from "./handover.ts";
import { outdatedBetween } from "./outdated.ts";
import { RecordKeeper, type Saved } from "./recordKeeper.ts";
import { onResuming, resumed } from "./resuming.ts";
import { emptyTurn, refusedTurn, withReply } from "./quietTurn.ts";
import type { ClockMoved, FactStore, GrammarState, Utterance } from "./ports.ts";
import { markOf, type LoadedProtocol } from "./protocolFile.ts";
import { announceProtocol, firstFacts, isSameMark, replacingFacts, type NewCase } from "./protocolFileMark.ts";
import type { Announcement } from "./announcement.ts";
import { withdrawnOf } from "./speakDue.ts";
import { takeSpeech, type SpeechFact } from "./takeSpeech.ts";
import { takeTick, takeUtterance, type Turn } from "./takeTurn.ts";
import { unannounced } from "./unannounced.ts";

export type Report = Omit<Turn, "effect"> & {
  readonly atMs: number;
  readonly saved: Saved;
  /** Codes of which there are newer numbers now, or none any more. */
  readonly outdated: readonly string[];
  /** Another case is open from here on: nothing of the last one is to be shown or said. */
  readonly begun?: true;
};
/** How a case began, and what is to be said of it. */
export type Started = Saved & { readonly resumed: boolean; readonly announcements: readonly Announcement[] };

export type SessionOptions = {
  readonly context: AppContext;
  readonly store: FactStore;
  readonly newCaseId: () => string;
};

/**
 * One case: takes utterances and the passing of time one after another, makes what follows durable, and only then reports
 * it. A failed write loses nothing: the facts stay, are tried again with the next ones, and the report says so.
 */
export class Session {
  #state: AppState = freshState(emptyCase);
  #last: Promise<unknown> = Promise.resolve();
  #context: AppContext;
  #microphone: DeviceFault | undefined;
  readonly #keeper: RecordKeeper;
  readonly #newCaseId: () => string;

  constructor({ context, store, newCaseId }: SessionOptions) {
    this.#context = context;
    this.#keeper = new RecordKeeper(store);
    this.#newCaseId = newCaseId;
  }

  get state(): AppState {
    return this.#state;
  }

  /** What the case runs on now. */
  get context(): AppContext {
    return this.#context;
  }

  /** What may be said now. */
  get grammar(): GrammarState {
    return grammarState(this.#context.protocol, this.#state.log);
  }

  /** What is wrong with the device now. */
  get faults(): readonly DeviceFault[] {
    return [this.#keeper.fault, this.#microphone].flatMap((fault) => fault ?? []);
  }

  /** The microphone has failed, or (`undefined`) works. A fault that lasts keeps its first time. */
  setMicrophone(fault: DeviceFault | undefined): void {
    this.#microphone = fault && { ...fault, sinceMs: this.#microphone?.sinceMs ?? fault.sinceMs };
  }

  /**
   * Resumes the stored case, or opens a new one. Must settle before the first utterance is accepted.
   *
   * @param wallMs Unix ms by the device's own clock.
   */
  start(wallMs: number): Promise<Started> {
    return this.#inTurn(async () => {
      const { protocol, mark } = this.#context;
      const { stored, error } = await this.#keeper.load(wallMs);
      const isResumed = stored.length > 0;
      const log = resumed(stored);
      const { facts, nowMs } = onResuming(log, stored, wallMs);
      const first = stamp(log, [...facts, ...firstFacts(stored, mark, this.#opening(false))], nowMs);
      const isReplaced = first.some(({ type }) => type === "protocol.replaced");
      const announcements = announceProtocol(protocol, isReplaced);
      this.#state = { ...freshState(reduceFacts(first, log)), lastSaid: announcements[0]?.text };
      const saved = await this.#keeper.save(first, nowMs);
      const started: Saved = error === undefined ? saved : { kind: "failed", error, heard: [] };
      return { ...started, resumed: isResumed, announcements };
    });
  }

  hear(utterance: Utterance, nowMs: number): Promise<Report> {
    return this.#inTurn(() => {
      if (this.#keeper.isReadOnly) return this.#carryOut(refusedTurn(this.#state, utterance), nowMs);
      return this.#carryOut(takeUtterance(this.#context, this.#state, utterance, nowMs, this.faults), nowMs);
    });
  }

  tick(nowMs: number): Promise<Report> {
    return this.#inTurn(() => {
      if (this.#keeper.isReadOnly) return this.#carryOut(emptyTurn(this.#state), nowMs);
      return this.#carryOut(takeTick(this.#context, this.#state, nowMs, this.faults), nowMs);
    });
  }

  /** The device's clock was set, or the device slept: that is recorded, and said. */
  clockMoved({ nowMs, ...move }: ClockMoved): Promise<Report> {
    return this.#inTurn(() => {
      const { fact, announcements } = clockNews(move);
      const facts = stamp(this.#state.log, [fact], nowMs);
      const state = { ...this.#state, log: reduceFacts(facts, this.#state.log) };
      return this.#carryOut({ ...emptyTurn(state), facts, announcements }, nowMs);
    });
  }

  /** Puts into the record what our voice does. The report holds the one fact, or none where another case is open by now. */
  record(speech: SpeechFact, nowMs: number): Promise<Report> {
    return this.#inTurn(() => this.#carryOut(takeSpeech(this.#state, speech, nowMs), nowMs));
  }

  /** The words that began with this fact were said to their end: only what can be gone on with needs to know. */
  spoken(startedId: string): Promise<void> {
    return this.#inTurn(() => {
      this.#state = { ...this.#state, handover: endPart(this.#state.handover, startedId) };
      return Promise.resolve();
    });
  }

  /** These were announced and could not be said in time: the rules announce anew what of it still holds. */
  takeBack(alertIds: readonly string[]): Promise<void> {
    return this.#inTurn(() => {
      this.#state = { ...this.#state, log: unannounced(this.#state.log, alertIds) };
      return Promise.resolve();
    });
  }

  /**
   * Another protocol counts from here on: a fact says so, and the report holds what is due under its targets. The same
   * one again leaves the record as it is.
   */
  useProtocol(loaded: LoadedProtocol, nowMs: number): Promise<Report> {
    return this.#inTurn(async () => {
      const { protocol } = loaded;
      const mark = markOf(loaded);
      const { log } = this.#state;
      const isSame = isSameMark(this.#context.mark, mark);
      const facts = stamp(log, isSame ? [] : replacingFacts(log, protocol, mark), nowMs);
      const context = { ...this.#context, protocol, mark };
      const due = takeTick(context, { ...this.#state, log: reduceFacts(facts, log) }, nowMs, this.faults);
      const announcements = [...announceProtocol(protocol, true), ...due.announcements];
      const cleared = facts.flatMap((f) => (f.type === "alert.cleared" ? [f.alertId] : []));
      const all = [...facts, ...due.facts];
      const saved = await this.#keeper.save(all, nowMs);
      this.#context = context;
      this.#state = { ...due.state, lastSaid: sentences(...announcements.map((a) => a.text)) };
      const withdrawn = [...cleared, ...due.withdrawn];
      return { ...due, state: this.#state, facts: all, announcements, withdrawn, atMs: nowMs, saved, outdated: [] };
    });
  }

  #opening(rehearsal: boolean): NewCase {
    const caseId = this.#newCaseId();
    return { caseId, label: labelFrom(caseId), rehearsal };
  }

  async #carryOut(turn: Turn, nowMs: number): Promise<Report> {
    const wasKept = this.#keeper.isKept;
    const saved = await this.#keeper.save(turn.facts, nowMs);
    const outdated = outdatedBetween(this.#state.log, turn.state.log);
    const { effect, ...told } = saved.kind === "failed" && wasKept ? this.#withFaults(turn, nowMs) : turn;
    this.#state = told.state;
    const report = { ...told, atMs: nowMs, saved, outdated };
    switch (effect?.kind) {
      case "newCase":
        return this.#close(report, effect.rehearsal);
      case "eraseCase":
        return this.#erase(report);
      case undefined:
        return report;
    }
  }

  /** Closes the open case and opens another, both or neither. */
  async #close(report: Report, rehearsal: boolean): Promise<Report> {
    const { log } = this.#state;
    const closed = stamp(log, [{ type: "case.closed" }], report.atMs);
    const opened = this.#openingFacts(log, rehearsal, report.atMs);
    if (!(await this.#keeper.addAtOnce([...closed, ...opened]))) return withReply(report, NOT_CLOSED);
    return this.#begun(report, [...closed, ...opened], sayClosed(log));
  }

  /** Removes the open case from the store and from memory, and opens another. */
  async #erase(report: Report): Promise<Report> {
    const { log } = this.#state;
    if (!(await this.#keeper.erase(log.caseId ?? ""))) return withReply(report, NOT_ERASED);
    const opened = this.#openingFacts(log, false, report.atMs);
    const saved = await this.#keeper.save(opened, report.atMs);
    return this.#begun({ ...report, facts: [], saved }, opened, sayErased(log));
  }

  /** A new case goes by the device's clock as it is now. */
  #openingFacts(log: CaseState, rehearsal: boolean, nowMs: number): readonly Fact[] {
    const opening = firstFacts([], this.#context.mark, this.#opening(rehearsal));
    return stamp(emptyCase, opening, nowMs + log.setForwardMs);
  }

  #begun(report: Report, facts: readonly Fact[], text: string): Report {
    const before = this.#state.log;
    this.#state = freshState(reduceFacts(facts));
    const withdrawn = [...report.withdrawn, ...withdrawnOf(Object.keys(before.alerts))];
    const all = [...report.facts, ...facts];
    const begun = { ...report, facts: all, withdrawn, announcements: [], state: this.#state, begun: true } as const;
    return withReply(begun, sentences(text, sayOpened(this.#state.log)));
  }

  /** A write has just failed: that is said before what was to be said of the turn. Its facts wait with the others. */
  #withFaults(turn: Turn, nowMs: number): Turn {
    const due = takeTick(this.#context, turn.state, nowMs, this.faults);
    this.#keeper.add(due.facts);
    const announcements = [...due.announcements, ...turn.announcements];
    return { ...turn, state: due.state, facts: [...turn.facts, ...due.facts], announcements };
  }

  /** One input at a time, in the order they came: the second sees the state that the first left. */
  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    const result = this.#last.then(work);
    this.#last = result.catch(() => undefined);
    return result;
  }
}
