import { fail, type Result } from "../core/result.ts";
import { emptyCase, type CaseState } from "../log/caseState.ts";
import type { Fact, NewFact } from "../log/facts.ts";
import { reduceFacts } from "../log/reduceFact.ts";
import { sentences } from "../language/sentences/sentence.ts";
import { freshState, grammarState, type AppContext, type AppState } from "./context.ts";
import { stamp } from "./decide/stamp.ts";
import type { DeviceFault } from "../rules/alerts/condition.ts";
import { sayStoreError } from "./deviceFault.ts";
import { followHandover, sayAgainOf } from "./handover.ts";
import { outdatedBetween } from "./outdated.ts";
import type { FactStore, GrammarState, StoreError, Utterance } from "./ports.ts";
import { markOf, type LoadedProtocol } from "./protocolFile.ts";
import { announceProtocol, firstFacts, isSameMark, replacingFacts } from "./protocolFileMark.ts";
import type { Announcement } from "./announcement.ts";
import { takeTick, takeUtterance, type Turn } from "./takeTurn.ts";
import { unannounced } from "./unannounced.ts";

/** What became of the facts of a turn. */
export type Saved = { readonly kind: "saved" } | { readonly kind: "failed"; readonly error: StoreError };
export type Report = Turn & {
  readonly atMs: number;
  readonly saved: Saved;
  /** Codes of which there are newer numbers now, or none any more. */
  readonly outdated: readonly string[];
};
/** Words that begin to sound, or end before their end. */
export type SpeechFact = Extract<NewFact, { readonly type: "speech.started" | "speech.cut" }>;
/** How a case began, and what is to be said of it. */
export type Started = Saved & { readonly resumed: boolean; readonly announcements: readonly Announcement[] };

export type SessionOptions = {
  readonly context: AppContext;
  readonly store: FactStore;
  readonly newCaseId: () => string;
};

/** A store that breaks its promise is one more failed store: it must not stop the case. */
async function settled<T>(call: () => Promise<Result<T, StoreError>>): Promise<Result<T, StoreError>> {
  try {
    return await call();
  } catch (error) {
    return fail({ kind: "unavailable", detail: error instanceof Error ? error.message : String(error) });
  }
}

/** Where facts could not be read, the next number is still past that of every fact in the store: no id is given twice. */
function resumed(facts: readonly Fact[]): CaseState {
  const log = reduceFacts(facts);
  const numbers = facts.map(({ id }) => Number(/\d+$/u.exec(id)?.[0] ?? -1));
  return { ...log, factCount: numbers.reduce((next, n) => Math.max(next, n + 1), log.factCount) };
}

/**
 * One case: takes utterances and the passing of time one after another, makes what follows durable, and only then reports
 * it. A failed write loses nothing: the facts stay, are tried again with the next ones, and the report says so.
 */
export class Session {
  #state: AppState = freshState(emptyCase);
  #unsaved: readonly Fact[] = [];
  #last: Promise<unknown> = Promise.resolve();
  #context: AppContext;
  #notSaved: DeviceFault | undefined;
  /** What was stored could not be read: so it stays, though the record is kept from here on. */
  #unread: DeviceFault | undefined;
  #microphone: DeviceFault | undefined;
  readonly #store: FactStore;
  readonly #newCaseId: () => string;

  constructor({ context, store, newCaseId }: SessionOptions) {
    this.#context = context;
    this.#store = store;
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
    return [this.#notSaved ?? this.#unread, this.#microphone].flatMap((fault) => fault ?? []);
  }

  /** The microphone has failed, or (`undefined`) works. A fault that lasts keeps its first time. */
  setMicrophone(fault: DeviceFault | undefined): void {
    this.#microphone = fault && { ...fault, sinceMs: this.#microphone?.sinceMs ?? fault.sinceMs };
  }

  /** Resumes the stored case, or opens a new one. Must settle before the first utterance is accepted. */
  start(nowMs: number): Promise<Started> {
    return this.#inTurn(async () => {
      const { protocol, mark } = this.#context;
      const loaded = await settled(() => this.#store.load());
      const stored = loaded.ok ? loaded.value : "facts" in loaded.error ? loaded.error.facts : [];
      const isResumed = stored.length > 0;
      const log = resumed(stored);
      const facts = stamp(log, firstFacts(stored, mark, this.#newCaseId), nowMs);
      const announcements = announceProtocol(protocol, isResumed && facts.length > 0);
      this.#state = { ...freshState(reduceFacts(facts, log)), lastSaid: announcements[0]?.text };
      const saved = await this.#save(facts, nowMs);
      if (!loaded.ok) this.#unread = { kind: "recordNotSaved", sinceMs: nowMs, text: sayStoreError(loaded.error) };
      const started: Saved = loaded.ok ? saved : { kind: "failed", error: loaded.error };
      return { ...started, resumed: isResumed, announcements };
    });
  }

  hear(utterance: Utterance, nowMs: number): Promise<Report> {
    return this.#inTurn(() =>
      this.#carryOut(takeUtterance(this.#context, this.#state, utterance, nowMs, this.faults), nowMs),
    );
  }

  tick(nowMs: number): Promise<Report> {
    return this.#inTurn(() => this.#carryOut(takeTick(this.#context, this.#state, nowMs, this.faults), nowMs));
  }

  /** Puts into the record what our voice does; it changes nothing else. The report holds the one fact. */
  record(speech: SpeechFact, nowMs: number): Promise<Report> {
    return this.#inTurn(() => {
      const { log } = this.#state;
      const facts = stamp(log, [speech], nowMs);
      const handover = followHandover(this.#state.handover, facts);
      const lastSaid = sayAgainOf(handover, this.#state.handover) ?? this.#state.lastSaid;
      const state = { ...this.#state, log: reduceFacts(facts, log), handover, lastSaid };
      return this.#carryOut({ state, facts, answer: undefined, announcements: [], withdrawn: [] }, nowMs);
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
      const saved = await this.#save(all, nowMs);
      this.#context = context;
      this.#state = { ...due.state, lastSaid: sentences(...announcements.map((a) => a.text)) };
      const withdrawn = [...cleared, ...due.withdrawn];
      return { ...due, state: this.#state, facts: all, announcements, withdrawn, atMs: nowMs, saved, outdated: [] };
    });
  }

  async #carryOut(turn: Turn, nowMs: number): Promise<Report> {
    const wasKept = this.#notSaved === undefined;
    const saved = await this.#save(turn.facts, nowMs);
    const outdated = outdatedBetween(this.#state.log, turn.state.log);
    const told = saved.kind === "failed" && wasKept ? this.#withFaults(turn, nowMs) : turn;
    this.#state = told.state;
    return { ...told, atMs: nowMs, saved, outdated };
  }

  /** A write has just failed: that is said before what was to be said of the turn. Its facts wait with the others. */
  #withFaults(turn: Turn, nowMs: number): Turn {
    const due = takeTick(this.#context, turn.state, nowMs, this.faults);
    this.#unsaved = [...this.#unsaved, ...due.facts];
    const announcements = [...due.announcements, ...turn.announcements];
    return { ...turn, state: due.state, facts: [...turn.facts, ...due.facts], announcements };
  }

  async #save(facts: readonly Fact[], nowMs: number): Promise<Saved> {
    const all = [...this.#unsaved, ...facts];
    if (all.length === 0) return { kind: "saved" };
    const written = await settled(() => this.#store.append(all));
    if (written.ok) {
      this.#unsaved = [];
      this.#notSaved = undefined;
      return { kind: "saved" };
    }
    this.#unsaved = all;
    const { error } = written;
    this.#notSaved = { kind: "recordNotSaved", sinceMs: this.#notSaved?.sinceMs ?? nowMs, text: sayStoreError(error) };
    return { kind: "failed", error };
  }

  /** One input at a time, in the order they came: the second sees the state that the first left. */
  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    const result = this.#last.then(work);
    this.#last = result.catch(() => undefined);
    return result;
  }
}
