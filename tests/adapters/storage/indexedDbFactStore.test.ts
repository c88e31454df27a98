import { IDBFactory, IDBObjectStore, IDBOpenDBRequest as FakeOpenRequest } from "fake-indexeddb";
import "fake-indexeddb/auto";
import { openDB } from "idb";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Fact } from "../../../src/log/facts.ts";
import { createIndexedDbFactStore } from "../../../src/adapters/storage/indexedDbFactStore.ts";
import type { Locks } from "../../../src/adapters/storage/singleWriter.ts";
import { opened, rate } from "./someFacts.ts";

// The fake keeps everything in memory: that a strict commit outlives a crash or a power cut cannot be shown with it.
// What can be shown is that a strict commit is what is asked for.

const NAME = "case-record";
const makeStore = (parts: Partial<Parameters<typeof createIndexedDbFactStore>[0]> = {}) =>
  createIndexedDbFactStore({ name: NAME, locks: undefined, storage: undefined, ...parts });

/** A method as it was before being spied on; to be called with its own `this`. */
const methodOf = <T, K extends keyof T>(prototype: T, name: K): T[K] => prototype[name];

/** Writes straight into the database, past the store's own door. */
async function tamper(change: (facts: IDBObjectStore) => void): Promise<void> {
  const database = await openDB(NAME);
  const write = database.transaction("facts", "readwrite");
  change(write.objectStore("facts") as unknown as IDBObjectStore);
  await write.done;
  database.close();
}

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});
afterEach(() => {
  vi.restoreAllMocks();
  vi.useRealTimers();
});

describe("an append", () => {
  it("asks for strict durability, once per append", async () => {
    const asked = vi.spyOn(IDBDatabase.prototype, "transaction");
    const store = makeStore();
    await store.append([opened("a"), rate(90), rate(91)]);
    const writes = asked.mock.calls.filter(([, mode]) => mode === "readwrite");
    expect(writes).toEqual([[["facts"], "readwrite", { durability: "strict" }]]);
  });

  it("keeps none of its facts when one of them cannot be stored", async () => {
    const store = makeStore();
    await store.append([opened("a")]);
    const unstorable = { ...rate(91), heard: (() => undefined) as unknown as string } as Fact;
    expect(await store.append([rate(90), unstorable, rate(92)])).toMatchObject({
      ok: false,
      error: { kind: "write-failed", detail: expect.stringContaining("DataCloneError") as string },
    });
    expect(await store.load()).toEqual({ ok: true, value: [opened("a")] });
  });

  it("works again after one that failed, in the next place", async () => {
    const store = makeStore();
    await store.append([opened("a")]);
    await store.append([{ ...rate(91), heard: (() => undefined) as unknown as string } as Fact]);
    await store.append([rate(92)]);
    expect(await makeStore().load()).toEqual({ ok: true, value: [opened("a"), rate(92)] });
  });

  it("never writes one place twice", async () => {
    const [one, other] = [makeStore(), makeStore()];
    await one.append([opened("a")]);
    await other.load();
    await one.append([rate(90)]);
    expect(await other.append([rate(40)])).toMatchObject({
      error: { kind: "write-failed", detail: expect.stringContaining("ConstraintError") as string },
    });
    expect(await makeStore().load()).toEqual({ ok: true, value: [opened("a"), rate(90)] });
  });

  it("says that the device is full, and keeps nothing of it", async () => {
    const store = makeStore();
    await store.append([opened("a")]);
    const add = methodOf(IDBObjectStore.prototype, "add");
    vi.spyOn(IDBObjectStore.prototype, "add").mockImplementation(function (this: IDBObjectStore, value, key) {
      if ((value as { n: number }).n === 2) throw new DOMException("full", "QuotaExceededError");
      return add.call(this, value, key);
    });
    expect(await store.append([rate(90), rate(91)])).toEqual({ ok: false, error: { kind: "quota-exceeded" } });
    vi.restoreAllMocks();
    expect(await makeStore().load()).toEqual({ ok: true, value: [opened("a")] });
  });

  it("opens a new connection when the old one was closed under it", async () => {
    const connections: IDBDatabase[] = [];
    const transaction = methodOf(IDBDatabase.prototype, "transaction");
    vi.spyOn(IDBDatabase.prototype, "transaction").mockImplementation(function (this: IDBDatabase, ...args) {
      connections.push(this);
      return transaction.apply(this, args);
    });
    const store = makeStore();
    await store.append([opened("a")]);
    connections.at(-1)?.close();
    expect(await store.append([rate(90)])).toEqual({ ok: true, value: undefined });
    expect(await store.load()).toEqual({ ok: true, value: [opened("a"), rate(90)] });
  });
});

describe("a reload", () => {
  it("goes on where the last page stopped", async () => {
    await makeStore().append([opened("a"), rate(90)]);
    const next = makeStore();
    expect(await next.load()).toEqual({ ok: true, value: [opened("a"), rate(90)] });
    await next.append([rate(91)]);
    expect(await makeStore().load()).toEqual({ ok: true, value: [opened("a"), rate(90), rate(91)] });
  });

  const BAD: readonly [string, unknown, string][] = [
    ["from a newer version", { ...rate(91), v: 2 }, "entry 2 was written by a newer version (2)"],
    ["without a version", { ...rate(91), v: undefined }, "entry 2 has no version"],
    ["without an id", { ...rate(91), id: undefined }, "entry 2 has no id, type or time"],
    ["with a time that is no number", { ...rate(91), atMs: Number.NaN }, "entry 2 has no id, type or time"],
    ["that is no record", "torn", "entry 2 is not a record"],
  ];
  it.each(BAD)("tells of a fact %s, and gives the others back", async (_what, fact, detail) => {
    await makeStore().append([opened("a"), rate(90), rate(91), rate(92)]);
    await tamper((facts) => facts.put({ caseId: "a", n: 2, fact }));
    const facts = [opened("a"), rate(90), rate(92)];
    expect(await makeStore().load()).toEqual({ ok: false, error: { kind: "corrupt", detail, readable: 3, facts } });
  });

  it("tells of a missing fact", async () => {
    await makeStore().append([opened("a"), rate(90), rate(91), rate(92)]);
    await tamper((facts) => facts.delete(["a", 1]));
    expect(await makeStore().load()).toMatchObject({ error: { detail: "entry 1 is missing", readable: 3 } });
    await tamper((facts) => facts.delete(["a", 2]));
    expect(await makeStore().load()).toMatchObject({ error: { detail: "entries 1 to 2 are missing", readable: 2 } });
  });

  it("leaves an unreadable fact where it is and writes after it", async () => {
    await makeStore().append([opened("a"), rate(90)]);
    await tamper((facts) => facts.put({ caseId: "a", n: 1, fact: { ...rate(90), v: 2 } }));
    const store = makeStore();
    await store.append([rate(91)]);
    expect(await store.load()).toMatchObject({ error: { readable: 2, facts: [opened("a"), rate(91)] } });
    const kept = await openDB(NAME);
    expect(await kept.get("facts", ["a", 1])).toMatchObject({ fact: { v: 2 } });
    kept.close();
  });
});

describe("a database that cannot be had", () => {
  it("is unavailable when the browser refuses to open one", async () => {
    vi.spyOn(indexedDB, "open").mockImplementation(() => {
      throw new DOMException("denied in this mode", "SecurityError");
    });
    expect(await makeStore().load()).toMatchObject({
      error: { kind: "unavailable", detail: expect.stringContaining("denied in this mode") as string },
    });
  });

  it("is unavailable when the browser never answers", async () => {
    vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
    vi.spyOn(indexedDB, "open").mockImplementation(() => new FakeOpenRequest());
    const loading = makeStore().load();
    await vi.advanceTimersByTimeAsync(5_000);
    expect(await loading).toMatchObject({
      error: { kind: "unavailable", detail: expect.stringContaining("not answer") as string },
    });
  });

  it("is unavailable when it was made by a newer version of the app", async () => {
    (await openDB(NAME, 7)).close();
    expect(await makeStore().load()).toMatchObject({ error: { kind: "unavailable" } });
  });
});

it("gives way to a newer version of the app, and then says that it has no database", async () => {
  const store = makeStore();
  await store.append([opened("a")]);
  (await openDB(NAME, 7)).close();
  expect(await store.append([rate(90)])).toMatchObject({ ok: false, error: { kind: "unavailable" } });
});

describe("two tabs", () => {
  /** Web Locks as far as they are used: one holder a name, others wait until their signal ends the wait. */
  const makeLocks = (): Locks => {
    const held = new Set<string>();
    const request = (name: string, { signal }: { signal: AbortSignal }, hold: () => Promise<unknown>) => {
      if (!held.has(name)) {
        held.add(name);
        return hold();
      }
      return new Promise((_resolve, reject) =>
        signal.addEventListener("abort", () => reject(new DOMException("waited", "AbortError"))),
      );
    };
    return { request } as Locks;
  };

  it("lets only the first one have the record", async () => {
    vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
    const locks = makeLocks();
    const first = makeStore({ locks });
    const opening = first.append([opened("a")]);
    await vi.advanceTimersByTimeAsync(100);
    await opening;
    const second = makeStore({ locks });
    const [loading, appending] = [second.load(), second.append([rate(40)])];
    await vi.advanceTimersByTimeAsync(5_000);
    const refusal = { ok: false, error: { kind: "unavailable", detail: "open in another tab" } };
    expect([await loading, await appending]).toEqual([refusal, refusal]);
  });
});

it("asks the browser once not to evict the record, and works where it refuses", async () => {
  const persist = vi.fn(() => Promise.reject(new Error("refused")));
  const store = makeStore({ storage: { persist } });
  await store.append([opened("a")]);
  await store.load();
  expect(persist).toHaveBeenCalledTimes(1);
});
