import { placesOf } from "./readCase.ts";
import type { FactDatabase } from "./factDatabase.ts";

type Buckets = {
  open(name: string, options: { readonly durability: "strict" }): Promise<{ readonly indexedDB: IDBFactory }>;
};

/**
 * Databases in files apart from those of the page's other databases (Storage Buckets). Chromium was seen to begin a database
 * anew, empty, about once in a hundred times that it was killed while it wrote: with a second copy, written after the first,
 * no single moment can tear both.
 *
 * @returns undefined in browsers that have none, which then keep one copy.
 */
export async function secondFactory(): Promise<IDBFactory | undefined> {
  const { storageBuckets } = navigator as Navigator & { readonly storageBuckets?: Buckets };
  try {
    return (await storageBuckets?.open("second-copy", { durability: "strict" }))?.indexedDB;
  } catch {
    return undefined;
  }
}

/** Copies what one database has and the other lacks, all of it or nothing. */
async function copyMissing(from: FactDatabase, to: FactDatabase): Promise<void> {
  const there = new Set((await to.getAllKeys("facts")).map((key) => JSON.stringify(key)));
  const missing = (await from.getAllKeys("facts")).filter((key) => !there.has(JSON.stringify(key)));
  if (missing.length === 0) return;
  const records = await Promise.all(missing.map((key) => from.get("facts", key)));
  const write = to.transaction("facts", "readwrite", { durability: "strict" });
  await Promise.all([...records.flatMap((record) => (record ? [write.store.put(record)] : [])), write.done]);
}

/** Makes two copies one again, whichever of them has lost something. */
export async function makeWhole(first: FactDatabase, second: FactDatabase): Promise<void> {
  await copyMissing(second, first);
  await copyMissing(first, second);
}

/** Removes a case from a copy. */
export async function eraseCopy(copy: FactDatabase, caseId: string): Promise<void> {
  const erase = copy.transaction("facts", "readwrite", { durability: "strict" });
  await Promise.all([erase.store.delete(placesOf(caseId)), erase.done]);
}
