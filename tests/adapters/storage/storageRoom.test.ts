import { expect, it } from "vitest";
import { askForRoom } from "../../../src/adapters/storage/storageRoom.ts";

const refuse = () => Promise.reject(new Error("refused"));

it.each([
  [
    "keeps it",
    { persist: async () => true, estimate: async () => ({ quota: 900, usage: 100 }) },
    { isKept: true, freeBytes: 800 },
  ],
  ["may evict it", { persist: async () => false, estimate: async () => ({}) }, { isKept: false }],
  [
    "is over its quota",
    { persist: async () => true, estimate: async () => ({ quota: 1, usage: 2 }) },
    { isKept: true, freeBytes: 0 },
  ],
  ["refuses to answer", { persist: refuse, estimate: refuse }, {}],
  ["cannot be asked", undefined, {}],
])("a browser that %s", async (_what, storage, room) => {
  expect(await askForRoom(storage)).toEqual(room);
});
