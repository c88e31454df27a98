import "fake-indexeddb/auto";
import { openDB } from "idb";
import { afterEach, describe, expect, it, vi } from "vitest";
import { createIndexedDbProtocolStore } from "../../../src/adapters/storage/indexedDbProtocolStore.ts";

let made = 0;
const named = (): string => `protocol-${made++}`;
const file = { name: "a.json", bytes: new Uint8Array([1, 2, 3]), signature: new Uint8Array(64) };

afterEach(() => vi.unstubAllGlobals());

describe("the chosen protocol file", () => {
  it("is nothing before one was chosen", async () => {
    expect(await createIndexedDbProtocolStore(named()).load()).toEqual({ ok: true, value: {} });
  });

  it("comes back as it was kept, in another page too", async () => {
    const name = named();
    expect(await createIndexedDbProtocolStore(name).save({ file, trustedKey: "PEM" })).toMatchObject({ ok: true });
    expect(await createIndexedDbProtocolStore(name).load()).toEqual({ ok: true, value: { file, trustedKey: "PEM" } });
  });

  it("takes the place of the one before, all of it", async () => {
    const store = createIndexedDbProtocolStore(named());
    await store.save({ file, trustedKey: "PEM" });
    await store.save({ file: { name: "b.json", bytes: new Uint8Array([4]) } });
    expect(await store.load()).toEqual({ ok: true, value: { file: { name: "b.json", bytes: new Uint8Array([4]) } } });
  });

  it("is forgotten, key included", async () => {
    const store = createIndexedDbProtocolStore(named());
    await store.save({ file, trustedKey: "PEM" });
    expect(await store.clear()).toMatchObject({ ok: true });
    expect(await store.load()).toEqual({ ok: true, value: {} });
  });

  it.each([["text"], [7], [{ file: 1, trustedKey: 2 }], [{ file: { name: "a", bytes: "b" } }]])(
    "is not there where %j stands in its place",
    async (stored) => {
      const name = named();
      const store = createIndexedDbProtocolStore(name);
      await store.load();
      const database = await openDB(name, 1);
      await database.put("chosen", stored, "protocol");
      database.close();
      expect(await store.load()).toEqual({ ok: true, value: {} });
    },
  );

  it("is an error where the browser keeps nothing", async () => {
    const refuse = () => {
      throw new DOMException("private window", "SecurityError");
    };
    vi.stubGlobal("indexedDB", { open: refuse });
    const store = createIndexedDbProtocolStore(named());
    const detail = "private window";
    expect(await store.load()).toEqual({ ok: false, error: { kind: "unavailable", detail } });
    expect(await store.save({})).toEqual({ ok: false, error: { kind: "write-failed", detail } });
    expect(await store.clear()).toEqual({ ok: false, error: { kind: "write-failed", detail } });
  });

  it("is an error where the browser never answers", async () => {
    vi.useFakeTimers();
    vi.stubGlobal("indexedDB", {
      open: () =>
        Object.assign(Object.create(IDBOpenDBRequest.prototype), { addEventListener() {}, removeEventListener() {} }),
    });
    const loading = createIndexedDbProtocolStore(named()).load();
    await vi.advanceTimersByTimeAsync(5_000);
    vi.useRealTimers();
    expect(await loading).toEqual({
      ok: false,
      error: { kind: "unavailable", detail: "the browser's database does not answer" },
    });
  });
});
