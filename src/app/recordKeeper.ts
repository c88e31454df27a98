import { fail, type Result } from "../core/result.ts";
import type { Fact } from "../log/facts.ts";
import type { DeviceFault } from "../rules/alerts/condition.ts";
import { sayStoreError } from "./deviceFault.ts";
import type { FactStore, StoreError } from "./ports.ts";

/** What became of the facts of a turn. */
export type Saved =
  | { readonly kind: "saved" }
  /** `heard`: the words behind what could not be written, oldest first. */
  | { readonly kind: "failed"; readonly error: StoreError; readonly heard: readonly string[] };

const heardIn = (facts: readonly Fact[]): readonly string[] => [
  ...new Set(facts.flatMap((fact) => ("heard" in fact ? fact.heard : []))),
];

/** A store that breaks its promise is one more failed store: it must not stop the case. */
async function settled<T>(call: () => Promise<Result<T, StoreError>>): Promise<Result<T, StoreError>> {
  try {
    return await call();
  } catch (error) {
    return fail({ kind: "unavailable", detail: error instanceof Error ? error.message : String(error) });
  }
}

/** Keeps facts in a store that may fail: what could not be written stays here, in order, and is tried again with the next. */
export class RecordKeeper {
  #unsaved: readonly Fact[] = [];
  #notSaved: DeviceFault | undefined;
  /** What was stored could not be read: so it stays, though the record is kept from here on. */
  #unread: DeviceFault | undefined;
  /** Another tab keeps the record: this one shows what stood there, and takes nothing. */
  #isReadOnly = false;
  readonly #store: FactStore;

  constructor(store: FactStore) {
    this.#store = store;
  }

  get isReadOnly(): boolean {
    return this.#isReadOnly;
  }

  /** The last write worked. */
  get isKept(): boolean {
    return this.#notSaved === undefined;
  }

  get fault(): DeviceFault | undefined {
    return this.#notSaved ?? this.#unread;
  }

  async load(nowMs: number): Promise<{ readonly stored: readonly Fact[]; readonly error: StoreError | undefined }> {
    const loaded = await settled(() => this.#store.load());
    if (loaded.ok) return { stored: loaded.value, error: undefined };
    const { error } = loaded;
    this.#isReadOnly = error.kind === "other-tab";
    this.#unread = { kind: "recordNotSaved", sinceMs: nowMs, text: sayStoreError(error) };
    return { stored: "facts" in error ? error.facts : [], error };
  }

  /** These are to be written with the next ones. */
  add(facts: readonly Fact[]): void {
    this.#unsaved = [...this.#unsaved, ...facts];
  }

  async save(facts: readonly Fact[], nowMs: number): Promise<Saved> {
    if (this.#isReadOnly) return { kind: "saved" };
    this.add(facts);
    if (this.#unsaved.length === 0) return { kind: "saved" };
    const written = await settled(() => this.#store.append(this.#unsaved));
    if (written.ok) {
      this.#unsaved = [];
      this.#notSaved = undefined;
      return { kind: "saved" };
    }
    const { error } = written;
    this.#notSaved = { kind: "recordNotSaved", sinceMs: this.#notSaved?.sinceMs ?? nowMs, text: sayStoreError(error) };
    return { kind: "failed", error, heard: heardIn(this.#unsaved) };
  }

  /** Writes these now or never. False: nothing of them is kept. */
  async addAtOnce(facts: readonly Fact[]): Promise<boolean> {
    if (this.#unsaved.length > 0 || this.#isReadOnly) return false;
    return (await settled(() => this.#store.append(facts))).ok;
  }

  /** Removes a case, and what waits to be written of it. */
  async erase(caseId: string): Promise<boolean> {
    if (this.#isReadOnly) return false;
    const erased = await settled(() => this.#store.erase(caseId));
    if (erased.ok) this.#unsaved = [];
    return erased.ok;
  }
}
