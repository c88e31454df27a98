import { openDB } from "idb";
import type { FactRecord } from "../../../src/adapters/storage/factDatabase.ts";

/** Every record of the page's database, cases in the order in which they were opened; past the app's own reading. */
export async function readRecords(): Promise<readonly FactRecord[]> {
  const database = await openDB("tragus");
  const records = (await database.getAll("facts")) as readonly FactRecord[];
  database.close();
  const openings = new Map(
    records.flatMap(({ caseId, opening }) => (opening === undefined ? [] : [[caseId, opening]])),
  );
  const placeOf = ({ caseId }: FactRecord): number => openings.get(caseId) ?? Infinity;
  return [...records].sort((a, b) => placeOf(a) - placeOf(b) || a.n - b.n);
}
