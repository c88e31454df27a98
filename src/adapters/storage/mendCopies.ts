import { faultOf } from "../../log/chain/checkEntries.ts";
import type { Sha256Hex } from "../../log/chain/sealFacts.ts";
import type { FactDatabase, FactRecord } from "./factDatabase.ts";
import { newestCaseId, placesOf } from "./readCase.ts";

/** Mends the case that was opened last: where one copy holds a bad entry and the other a good one, the good one counts. */
export async function mendCopies(first: FactDatabase, second: FactDatabase, sha256Hex: Sha256Hex): Promise<void> {
  // Where the entry that tells which case is the newest is itself the bad one, only the other copy knows.
  const newest = new Set([await newestCaseId(first), await newestCaseId(second)]);
  for (const caseId of newest) if (caseId !== undefined) await mendCase(first, second, caseId, sha256Hex);
}

async function mendCase(
  first: FactDatabase,
  second: FactDatabase,
  caseId: string,
  sha256Hex: Sha256Hex,
): Promise<void> {
  const ours = await first.getAll("facts", placesOf(caseId));
  const theirs = new Map((await second.getAll("facts", placesOf(caseId))).map((record) => [record.n, record]));
  const isGood = async (record: FactRecord) => (await faultOf(caseId, record, sha256Hex)) === undefined;
  const forFirst: FactRecord[] = [];
  const forSecond: FactRecord[] = [];
  for (const our of ours) {
    const their = theirs.get(our.n);
    if (their === undefined || JSON.stringify(our) === JSON.stringify(their)) continue;
    const [isOurs, isTheirs] = [await isGood(our), await isGood(their)];
    if (isTheirs && !isOurs) forFirst.push(their);
    if (isOurs && !isTheirs) forSecond.push(our);
  }
  await putAll(first, forFirst);
  await putAll(second, forSecond);
}

async function putAll(copy: FactDatabase, records: readonly FactRecord[]): Promise<void> {
  if (records.length === 0) return;
  const write = copy.transaction("facts", "readwrite", { durability: "strict" });
  await Promise.all([...records.map((record) => write.store.put(record)), write.done]);
}
