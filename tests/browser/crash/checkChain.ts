import { createHash } from "node:crypto";
import canonicalize from "canonicalize";
import type { FactRecord } from "../../../src/adapters/storage/factDatabase.ts";
import { FIRST_PREV } from "../../../src/log/chain/entry.ts";

/** The hash that a record must carry, by Node and not by the app. */
export const hashOfRecord = ({ hash: _hash, opening: _opening, ...sealed }: FactRecord): string =>
  createHash("sha256")
    .update(canonicalize(sealed) ?? "")
    .digest("hex");

/** What does not fit in the chains of hashes, one for each case. */
export const checkChain = (records: readonly FactRecord[]): readonly string[] =>
  records.flatMap((record, i) => {
    const before = records[i - 1];
    const prev = before?.caseId === record.caseId ? before.hash : FIRST_PREV;
    const name = `entry ${record.n} of ${record.caseId}`;
    return [
      ...(record.hash === hashOfRecord(record) ? [] : [`${name}: its hash`]),
      ...(record.prev === prev ? [] : [`${name}: the hash before it`]),
    ];
  });
