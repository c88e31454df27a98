import { fail, type Result } from "../core/result.ts";
import { emptyCase, type CaseState } from "../log/caseState.ts";
import type { Fact } from "../log/facts.ts";
import { reduceFacts } from "../log/reduceFact.ts";
import type { AppContext, AppState } from "./context.ts";
import { stamp } from "./decide/stamp.ts";
import type { FactStore, StoreError, Utterance } from "./ports.ts";
import { takeTick, takeUtterance, type Turn } from "./takeTurn.ts";

/** What became of the facts of a turn. */
export type Saved = { readonly kind: "saved" } | { readonly kind: "failed"; readonly error: StoreError };
export type Report = Turn & { readonly atMs: number; readonly saved: Saved };

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
  #state: AppState = { log: emptyCase, lastSaid: undefined };
  #unsaved: readonly Fact[] = [];
  #last: Promise<unknown> = Promise.resolve();
  readonly #context: AppContext;
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

  /** Resumes the stored case, or opens a new one. Must settle before the first utterance is accepted. */
  start(nowMs: number): Promise<Saved & { readonly resumed: boolean }> {
    return this.#inTurn(async () => {
      const loaded = await settled(() => this.#store.load());
      const facts = loaded.ok ? loaded.value : "facts" in loaded.error ? loaded.error.facts : [];
      this.#state = { log: resumed(facts), lastSaid: undefined };
      const isResumed = facts.length > 0;
      const saved = isResumed ? ({ kind: "saved" } as const) : await this.#open(nowMs);
      return { ...(loaded.ok ? saved : { kind: "failed", error: loaded.error }), resumed: isResumed };
    });
  }

  hear(utterance: Utterance, nowMs: number): Promise<Report> {
    return this.#inTurn(() => this.#carryOut(takeUtterance(this.#context, this.#state, utterance, nowMs), nowMs));
  }

  tick(nowMs: number): Promise<Report> {
    return this.#inTurn(() => this.#carryOut(takeTick(this.#context, this.#state, nowMs), nowMs));
  }

  #open(nowMs: number): Promise<Saved> {
    const { name, version } = this.#context.protocol;
    const opened = { type: "case.opened", caseId: this.#newCaseId(), protocol: { name, version } } as const;
    const facts = stamp(emptyCase, [opened], nowMs);
    this.#state = { ...this.#state, log: reduceFacts(facts) };
    return this.#save(facts);
  }

  async #carryOut(turn: Turn, nowMs: number): Promise<Report> {
    const saved = await this.#save(turn.facts);
    this.#state = turn.state;
    return { ...turn, atMs: nowMs, saved };
  }

  async #save(facts: readonly Fact[]): Promise<Saved> {
    const all = [...this.#unsaved, ...facts];
    if (all.length === 0) return { kind: "saved" };
    const written = await settled(() => this.#store.append(all));
    this.#unsaved = written.ok ? [] : all;
    return written.ok ? { kind: "saved" } : { kind: "failed", error: written.error };
  }

  /** One input at a time, in the order they came: the second sees the state that the first left. */
  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    const result = this.#last.then(work);
    this.#last = result.catch(() => undefined);
    return result;
  }
}
