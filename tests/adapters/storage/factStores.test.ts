import "fake-indexeddb/auto";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { FactStore } from "../../../src/app/ports.ts";
import { sha256HexHere } from "../../../src/adapters/files/webCrypto.ts";
import { createIndexedDbFactStore } from "../../../src/adapters/storage/indexedDbFactStore.ts";
import { createMemoryFactStore } from "../../../src/adapters/storage/memoryFactStore.ts";
import { opened, rate } from "./someFacts.ts";

let made = 0;
const PARTS = { sha256Hex: sha256HexHere(), locks: undefined, storage: undefined };
const STORES: readonly [string, () => FactStore][] = [
  ["memory", createMemoryFactStore],
  ["IndexedDB", () => createIndexedDbFactStore({ name: `contract-${made++}`, ...PARTS })],
];

describe.each(STORES)("a fact store in %s", (_name, makeStore) => {
  it("holds nothing before the first case", async () => {
    expect(await makeStore().load()).toEqual({ ok: true, value: [] });
  });

  it("gives facts back in the order in which they were appended", async () => {
    const store = makeStore();
    await store.append([opened("a"), rate(90)]);
    await store.append([rate(91)]);
    expect(await store.load()).toEqual({ ok: true, value: [opened("a"), rate(90), rate(91)] });
  });

  it("keeps the order of appends that nobody waited for", async () => {
    const store = makeStore();
    const outcomes = [store.append([opened("a")]), ...[1, 2, 3, 4, 5].map((value) => store.append([rate(value)]))];
    expect((await Promise.all(outcomes)).every((outcome) => outcome.ok)).toBe(true);
    expect(await store.load()).toEqual({ ok: true, value: [opened("a"), ...[1, 2, 3, 4, 5].map(rate)] });
  });

  it("gives back only the newest case, whatever the clock said when it was opened", async () => {
    const store = makeStore();
    await store.append([{ ...opened("z"), atMs: 9_000 }, rate(90)]);
    await store.append([{ ...opened("b"), atMs: 100 }, rate(60)]);
    expect(await store.load()).toEqual({ ok: true, value: [{ ...opened("b"), atMs: 100 }, rate(60)] });
  });

  it("refuses a fact while no case is open", async () => {
    const store = makeStore();
    expect(await store.append([rate(90)])).toMatchObject({ ok: false, error: { kind: "write-failed" } });
    expect(await store.load()).toEqual({ ok: true, value: [] });
  });

  it("takes an append of nothing", async () => {
    expect(await makeStore().append([])).toEqual({ ok: true, value: undefined });
  });

  it("gives back any facts however they were grouped into appends", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.array(fc.integer({ min: 0, max: 300 }), { maxLength: 5 }), { maxLength: 8 }),
        async (groups) => {
          const store = makeStore();
          await store.append([opened("a")]);
          for (const group of groups) await store.append(group.map(rate));
          expect(await store.load()).toEqual({ ok: true, value: [opened("a"), ...groups.flat().map(rate)] });
        },
      ),
      { numRuns: 25 },
    );
  });
});
