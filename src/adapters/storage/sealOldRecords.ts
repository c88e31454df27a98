import type { Fact } from "../../log/facts.ts";
import { FIRST_PREV, type ChainTail } from "../../log/chain/entry.ts";
import { sealFacts, type Sha256Hex } from "../../log/chain/sealFacts.ts";
import type { FactDatabase, FactRecord } from "./factDatabase.ts";

/** The first version of the app wrote no chain, and facts of version 1. */
const isOld = ({ hash, fact }: Partial<FactRecord>): boolean =>
  hash === undefined && (fact as { readonly v?: unknown } | undefined)?.v === 1;

/**
 * Puts the records of the first version into a chain, each in its own place and with its fact untouched, all or none of them.
 * It shows what was altered from now on; what happened to them before nobody can tell.
 *
 * @returns the records as they now stand; the same ones where there was nothing to do, or where it failed.
 */
export async function sealOldRecords(
  database: FactDatabase,
  stored: readonly FactRecord[],
  sha256Hex: Sha256Hex,
): Promise<readonly FactRecord[]> {
  if (!stored.some(isOld)) return stored;
  let tail: ChainTail | undefined;
  const sealed: FactRecord[] = [];
  for (const record of stored) {
    const { caseId, n, opening } = record;
    const fact = record.fact as Fact | undefined;
    const start = { caseId, n, openedAtMs: fact?.atMs ?? 0, setForwardMs: 0, protocolHash: null, hash: FIRST_PREV };
    const next = isOld(record) ? await sealFacts([record.fact], { ...(tail ?? start), n }, sha256Hex) : undefined;
    const entry = next?.ok === true ? next.value.entries[0] : undefined;
    if (next?.ok === true) tail = next.value.tail;
    sealed.push(entry === undefined ? record : { ...entry, ...(opening === undefined ? {} : { opening }) });
  }
  const write = database.transaction("facts", "readwrite", { durability: "strict" });
  await Promise.all([...sealed.map((record) => write.store.put(record)), write.done]);
  return sealed;
}
