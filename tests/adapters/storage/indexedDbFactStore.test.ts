import { forceCloseDatabase, IDBFactory, IDBObjectStore, IDBOpenDBRequest as FakeOpenRequest } from "fake-indexeddb";
import "fake-indexeddb/auto";
import { openDB } from "idb";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { labelFrom } from "../../../src/log/caseLabel.ts";
import { FIRST_PREV, type LogEntry } from "../../../src/log/chain/entry.ts";
import type { Fact } from "../../../src/log/facts.ts";
import { sha256HexHere } from "../../../src/adapters/files/webCrypto.ts";
import { createIndexedDbFactStore } from "../../../src/adapters/storage/indexedDbFactStore.ts";
import type { Locks } from "../../../src/adapters/storage/singleWriter.ts";
import { opened, rate } from "./someFacts.ts";

// The fake keeps everything in memory: that a strict commit outlives a crash or a power cut cannot be shown with it.
// What can be shown is that a strict commit is what is asked for.

const NAME = "case-record";
const makeStore = (parts: Partial<Parameters<typeof createIndexedDbFactStore>[0]> = {}) =>
  createIndexedDbFactStore({ name: NAME, sha256Hex: sha256HexHere(), locks: undefined, ...parts });

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

async function storedEntries(): Promise<readonly LogEntry[]> {
  const database = await openDB(NAME);
  const entries = (await database.getAll("facts")) as readonly LogEntry[];
  database.close();
  return entries;
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

  it.each([
    ["with another value", (entry: LogEntry) => ({ ...entry, fact: { ...rate(91), value: 19 } }), "was altered"],
    ["with another time", (entry: LogEntry) => ({ ...entry, caseMs: entry.caseMs + 1 }), "was altered"],
    ["that lost its hash", ({ hash: _hash, ...entry }: LogEntry) => entry, "has no hash"],
    ["torn in two", ({ caseId, n }: LogEntry) => ({ caseId, n }), "has no hash"],
    ["that is no record", ({ caseId, n, hash }: LogEntry) => ({ caseId, n, hash, fact: "torn" }), "was altered"],
  ])("tells of an entry %s, and gives the others back", async (_what, spoil, fault) => {
    await makeStore().append([opened("a"), rate(90), rate(91), rate(92)]);
    const [, , third] = await storedEntries();
    await tamper((facts) => facts.put(spoil(third!)));
    const facts = [opened("a"), rate(90), rate(92)];
    const detail = `Entry 2 ${fault}.`;
    expect(await makeStore().load()).toEqual({ ok: false, error: { kind: "corrupt", detail, readable: 3, facts } });
  });

  it("tells of a fact from a newer version, and gives the others back", async () => {
    await makeStore().append([opened("a"), { ...rate(90), v: 3 } as unknown as Fact, rate(91)]);
    const detail = "Entry 1 was written by a newer version (3).";
    expect(await makeStore().load()).toMatchObject({ error: { detail, facts: [opened("a"), rate(91)] } });
  });

  it("tells of entries that changed places", async () => {
    await makeStore().append([opened("a"), rate(90), rate(91), rate(92)]);
    const [, second, third] = await storedEntries();
    await tamper((facts) => {
      facts.put({ ...second!, n: 2 });
      facts.put({ ...third!, n: 1 });
    });
    expect(await makeStore().load()).toMatchObject({
      error: { detail: "Entry 1 was altered. Entry 2 was altered.", facts: [opened("a"), rate(92)] },
    });
  });

  it("tells of a missing entry", async () => {
    await makeStore().append([opened("a"), rate(90), rate(91), rate(92)]);
    await tamper((facts) => facts.delete(["a", 1]));
    expect(await makeStore().load()).toMatchObject({ error: { detail: "Entry 1 is missing.", readable: 3 } });
    await tamper((facts) => facts.delete(["a", 2]));
    expect(await makeStore().load()).toMatchObject({ error: { detail: "Entries 1 to 2 are missing.", readable: 2 } });
  });

  it("leaves a bad entry where it is and goes on after it, in the chain", async () => {
    await makeStore().append([opened("a"), rate(90)]);
    const [, second] = await storedEntries();
    const bad = { ...second!, fact: { ...rate(90), value: 9 } };
    await tamper((facts) => facts.put(bad));
    const store = makeStore();
    await store.append([rate(91)]);
    expect(await store.load()).toMatchObject({
      error: { detail: "Entry 1 was altered.", facts: [opened("a"), rate(91)] },
    });
    expect((await storedEntries())[1]).toEqual(bad);
  });

  it("goes on with a case of the first version, which had no chain, and seals it", async () => {
    const old = [opened("a"), rate(90), rate(91)].map((fact, n) => {
      const { label: _label, rehearsal: _rehearsal, ...rest } = fact as Fact & { label?: string; rehearsal?: boolean };
      return { caseId: "a", n, fact: { ...rest, v: 1 }, ...(n === 0 ? { opening: 1 } : {}) };
    });
    await makeStore().load();
    await tamper((facts) => old.forEach((record) => facts.put(record)));
    const store = makeStore();
    const upgraded = [{ ...opened("a"), label: labelFrom("a") }, rate(90), rate(91)];
    expect(await store.load()).toEqual({ ok: true, value: upgraded });
    await store.append([rate(92)]);
    expect(await makeStore().load()).toEqual({ ok: true, value: [...upgraded, rate(92)] });
    const [first] = await storedEntries();
    expect(first).toMatchObject({ ...old[0], prev: FIRST_PREV });
    await tamper((facts) => facts.put({ ...first!, fact: { ...old[0]!.fact, caseId: "b" } }));
    expect(await makeStore().load()).toMatchObject({ error: { detail: "Entry 0 was altered." } });
  });

  it("holds nothing after a case that was closed, until the next is opened", async () => {
    const closed: Fact = { v: 2, id: "a-1", atMs: 3_000, type: "case.closed" };
    const store = makeStore();
    await store.append([opened("a"), closed]);
    expect(await makeStore().load()).toEqual({ ok: true, value: [] });
    const next = makeStore();
    await next.append([opened("b"), rate(90)]);
    expect(await makeStore().load()).toEqual({ ok: true, value: [opened("b"), rate(90)] });
    expect(await next.cases()).toMatchObject({
      value: [
        { caseId: "b", isClosed: false, entries: 2 },
        { caseId: "a", isClosed: true, entries: 2, label: "kilo four seven" },
      ],
    });
  });
});

describe("a record that the browser clears in mid-case", () => {
  const clear = () => {
    const connections = vi.spyOn(IDBDatabase.prototype, "transaction").mock.contexts as IDBDatabase[];
    globalThis.indexedDB = new IDBFactory();
    // Typed by the author's own classes; what it is given is one of them.
    new Set(connections).forEach((connection) => forceCloseDatabase(connection as never));
  };

  it("is written again whole, at once, and it is told", async () => {
    const cleared = vi.fn();
    vi.spyOn(IDBDatabase.prototype, "transaction");
    const store = makeStore({ onCleared: cleared });
    await store.append([opened("old")]);
    await store.append([opened("a"), rate(90)]);
    await store.append([rate(91)]);
    const before = await store.read("a");
    clear();
    await vi.waitFor(() => expect(cleared).toHaveBeenCalledTimes(1));
    expect(await makeStore().load()).toEqual({ ok: true, value: [opened("a"), rate(90), rate(91)] });
    expect(await store.append([rate(92)])).toEqual({ ok: true, value: undefined });
    expect(await makeStore().load()).toEqual({ ok: true, value: [opened("a"), rate(90), rate(91), rate(92)] });
    expect(before).toMatchObject({ value: { faults: [] } });
    expect(cleared).toHaveBeenCalledTimes(1);
  });

  it("is written again whole by a page that resumed it", async () => {
    await makeStore().append([opened("a"), rate(90)]);
    vi.spyOn(IDBDatabase.prototype, "transaction");
    const store = makeStore();
    await store.load();
    clear();
    await store.append([rate(91)]);
    expect(await makeStore().load()).toEqual({ ok: true, value: [opened("a"), rate(90), rate(91)] });
  });

  it("fails until it can be written again, and loses nothing then", async () => {
    vi.spyOn(IDBDatabase.prototype, "transaction");
    const store = makeStore();
    await store.append([opened("a"), rate(90)]);
    const adding = vi.spyOn(IDBObjectStore.prototype, "add").mockImplementation(() => {
      throw new DOMException("full", "QuotaExceededError");
    });
    clear();
    expect(await store.append([rate(91)])).toEqual({ ok: false, error: { kind: "quota-exceeded" } });
    adding.mockRestore();
    expect(await store.append([rate(91)])).toEqual({ ok: true, value: undefined });
    expect(await makeStore().load()).toEqual({ ok: true, value: [opened("a"), rate(90), rate(91)] });
  });

  it("brings no case back that was erased", async () => {
    vi.spyOn(IDBDatabase.prototype, "transaction");
    const store = makeStore();
    await store.append([opened("a"), rate(90)]);
    await store.erase("a");
    clear();
    await store.append([opened("b")]);
    expect((await storedEntries()).map(({ caseId }) => caseId)).toEqual(["b"]);
  });
});

describe("two copies", () => {
  const withCopy = () => {
    const copies = new IDBFactory();
    return { secondFactory: () => Promise.resolve(copies), copies };
  };
  const entriesOf = async (factory: IDBFactory): Promise<readonly LogEntry[]> => {
    const first = globalThis.indexedDB;
    globalThis.indexedDB = factory;
    const entries = await storedEntries();
    globalThis.indexedDB = first;
    return entries;
  };
  const spoil = async (factory: IDBFactory, n: number): Promise<void> => {
    const first = globalThis.indexedDB;
    const entry = (await entriesOf(factory)).find((each) => each.n === n)!;
    globalThis.indexedDB = factory;
    await tamper((facts) => facts.put({ ...entry, fact: { ...entry.fact, atMs: 7 } }));
    globalThis.indexedDB = first;
  };
  const all = [opened("a"), rate(90), rate(91)];

  it.each(["first", "second"] as const)("mend the %s from the other where its last entry is bad", async (which) => {
    const { copies, ...parts } = withCopy();
    await makeStore(parts).append(all);
    const good = await storedEntries();
    await spoil(which === "first" ? globalThis.indexedDB : copies, 2);
    expect(await makeStore(parts).load()).toEqual({ ok: true, value: all });
    expect(await storedEntries()).toEqual(good);
    expect(await entriesOf(copies)).toEqual(good);
  });

  it.each([0, 1])("mend each other where both are bad in another place, %d and the last", async (n) => {
    const { copies, ...parts } = withCopy();
    await makeStore(parts).append(all);
    await spoil(globalThis.indexedDB, n);
    await spoil(copies, 2);
    expect(await makeStore(parts).load()).toEqual({ ok: true, value: all });
  });

  it("leave an entry alone that is bad in both, and tell of it", async () => {
    const { copies, ...parts } = withCopy();
    await makeStore(parts).append(all);
    await spoil(globalThis.indexedDB, 2);
    await spoil(copies, 2);
    expect(await makeStore(parts).load()).toMatchObject({ error: { kind: "corrupt", detail: "Entry 2 was altered." } });
  });
});

describe("erasing a case", () => {
  it("leaves nothing of it, and all of the others", async () => {
    const store = makeStore();
    await store.append([opened("a"), rate(90)]);
    await store.append([opened("b"), rate(60)]);
    expect(await store.erase("b")).toEqual({ ok: true, value: undefined });
    const left = await openDB(NAME);
    expect((await left.getAll("facts")).map(({ caseId }: LogEntry) => caseId)).toEqual(["a", "a"]);
    left.close();
    expect(await makeStore().load()).toEqual({ ok: true, value: [opened("a"), rate(90)] });
  });

  it("writes nothing after it but a new case", async () => {
    const store = makeStore();
    await store.append([opened("a"), rate(90)]);
    await store.erase("a");
    expect(await store.append([rate(91)])).toMatchObject({ error: { kind: "write-failed" } });
    await store.append([opened("b"), rate(60)]);
    expect(await makeStore().load()).toEqual({ ok: true, value: [opened("b"), rate(60)] });
  });
});

describe("a case from a file", () => {
  it("stands beside the others, and only once", async () => {
    const store = makeStore();
    await store.append([opened("a"), rate(90)]);
    const read = await store.read("a");
    if (!read.ok) throw new Error(read.error.kind);
    globalThis.indexedDB = new IDBFactory();
    const other = makeStore();
    await other.append([opened("b")]);
    expect(await other.add({ caseId: "a", entries: read.value.entries })).toEqual({ ok: true, value: undefined });
    expect(await other.add({ caseId: "a", entries: read.value.entries })).toMatchObject({
      error: { kind: "case-exists" },
    });
    expect(await other.read("a")).toEqual(read);
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
  const makeLocks = () => {
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
    const query = () => Promise.resolve({ held: [...held].map((name) => ({ name })) });
    return { request, query, held } as unknown as Locks & { readonly held: Set<string> };
  };

  /** Lets little time pass at once: the database answers by the clock of the machine. */
  const passUntil = async (work: Promise<unknown>): Promise<void> => {
    let settled = false;
    void work.finally(() => (settled = true));
    while (!settled) await vi.advanceTimersByTimeAsync(500);
  };

  it("lets only the first one write; the other reads what stands there", async () => {
    vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
    const locks = makeLocks();
    const first = makeStore({ locks });
    const opening = first.append([opened("a")]);
    await vi.advanceTimersByTimeAsync(100);
    await opening;
    const second = makeStore({ locks });
    const [loading, appending, erasing] = [second.load(), second.append([rate(40)]), second.erase("c")];
    await passUntil(Promise.all([loading, appending, erasing]));
    expect(await loading).toEqual({ ok: false, error: { kind: "other-tab", facts: [opened("a")] } });
    expect(await appending).toMatchObject({ ok: false, error: { kind: "other-tab" } });
    expect(await erasing).toMatchObject({ ok: false, error: { kind: "other-tab" } });
    expect(await storedEntries()).toHaveLength(1);
  });

  it("tell the other when the first is closed, and not when it is merely reloaded; that one stays read only", async () => {
    vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
    const locks = makeLocks();
    locks.held.add(NAME);
    const onFree = vi.fn();
    const second = makeStore({ locks, onFree });
    const loading = second.load();
    await passUntil(loading);
    expect(await loading).toMatchObject({ error: { kind: "other-tab" } });
    locks.held.delete(NAME);
    await vi.advanceTimersByTimeAsync(2_000);
    locks.held.add(NAME);
    await vi.advanceTimersByTimeAsync(60_000);
    expect(onFree).not.toHaveBeenCalled();
    locks.held.delete(NAME);
    await vi.advanceTimersByTimeAsync(60_000);
    expect(onFree).toHaveBeenCalledTimes(1);
    expect(await second.append([opened("a")])).toMatchObject({ error: { kind: "other-tab" } });
  });
});
