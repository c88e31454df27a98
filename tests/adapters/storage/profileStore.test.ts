import "fake-indexeddb/auto";
import { openDB } from "idb";
import { describe, expect, it } from "vitest";
import { createProfileStore } from "../../../src/adapters/storage/profileStore.ts";
import type { VoiceProfile } from "../../../src/listener/voiceProfile.ts";

const profile: VoiceProfile = {
  version: 1,
  madeAtMs: 1_800_000_000_000,
  speechDb: -31.5,
  noiseDb: -62,
  verdict: "well",
};
let names = 0;
const freshName = () => `voice-${names++}`;

/** Puts something into the store behind its back, as an older version or a fault of the disk might. */
async function plant(name: string, value: unknown): Promise<void> {
  const database = await openDB(name, 1, { upgrade: (db) => void db.createObjectStore("profile") });
  await database.put("profile", value, "mine");
  database.close();
}

describe("the profile of a voice", () => {
  it("is not there at first, is kept for the next start, and is replaced whole", async () => {
    const name = freshName();
    expect(await createProfileStore(name).load()).toEqual({ ok: true, value: undefined });
    expect(await createProfileStore(name).save(profile)).toEqual({ ok: true, value: undefined });
    expect(await createProfileStore(name).load()).toEqual({ ok: true, value: profile });
    const worse: VoiceProfile = { ...profile, verdict: "badly", speechDb: -50 };
    await createProfileStore(name).save(worse);
    expect(await createProfileStore(name).load()).toEqual({ ok: true, value: worse });
  });

  it("is gone once it was cleared", async () => {
    const store = createProfileStore(freshName());
    await store.save(profile);
    expect(await store.clear()).toEqual({ ok: true, value: undefined });
    expect(await store.load()).toEqual({ ok: true, value: undefined });
  });

  it.each([
    [
      { ...profile, speechDb: "loud" },
      { kind: "corrupt", detail: "speechDb" },
    ],
    ["rubbish", { kind: "corrupt", detail: "not a profile" }],
    [
      { ...profile, version: 7 },
      { kind: "other-version", version: 7 },
    ],
  ])("%j is not believed, and can be replaced", async (stored, error) => {
    const name = freshName();
    await plant(name, stored);
    const store = createProfileStore(name);
    expect(await store.load()).toEqual({ ok: false, error });
    await store.save(profile);
    expect(await store.load()).toEqual({ ok: true, value: profile });
  });

  it("says why where the browser has no database", async () => {
    const { indexedDB } = globalThis;
    Object.defineProperty(globalThis, "indexedDB", { value: undefined, configurable: true });
    try {
      const store = createProfileStore(freshName());
      expect(await store.load()).toMatchObject({ ok: false, error: { kind: "unavailable" } });
      expect(await store.save(profile)).toMatchObject({ ok: false, error: { kind: "write-failed" } });
      expect(await store.clear()).toMatchObject({ ok: false, error: { kind: "write-failed" } });
    } finally {
      Object.defineProperty(globalThis, "indexedDB", { value: indexedDB, configurable: true });
    }
  });
});
