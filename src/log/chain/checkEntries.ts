import type { Fact } from "../facts.ts";
import { readFact } from "../upgrade/readFact.ts";
import { FIRST_PREV, type ChainTail, type LogEntry } from "./entry.ts";
import { hashOf, tailWith, type Sha256Hex } from "./sealFacts.ts";

export type CheckedEntries = {
  /** Every fact that can be trusted, oldest first, in the shape of now. */
  readonly facts: readonly Fact[];
  /** One sentence for each entry that is missing, was altered or cannot be read. Such entries are set aside. */
  readonly faults: readonly string[];
  /** After the last entry, good or not; undefined where there is no good one. */
  readonly tail: ChainTail | undefined;
};

type Loose = { readonly [K in keyof LogEntry]?: unknown };

const isHash = (value: unknown): value is string => typeof value === "string" && /^[0-9a-f]{64}$/u.test(value);

const sayMissing = (from: number, to: number): string =>
  to - from === 1 ? `Entry ${from} is missing.` : `Entries ${from} to ${to - 1} are missing.`;

/** Where the entry that opened the case is lost, the case goes on all the same, its time counted from what is left. */
const withoutOpening = (caseId: string, { atMs }: Fact): ChainTail => ({
  caseId,
  n: 0,
  openedAtMs: atMs,
  setForwardMs: 0,
  protocolHash: null,
  hash: FIRST_PREV,
});

/** What is wrong with an entry taken alone, in the words that follow its number. */
export async function faultOf(caseId: string, entry: Loose, sha256Hex: Sha256Hex): Promise<string | undefined> {
  if (!isHash(entry.hash)) return "has no hash";
  const hash = await hashOf(entry as LogEntry, sha256Hex);
  if (!hash.ok) return `cannot be checked: ${hash.error}`;
  if (hash.value !== entry.hash) return "was altered";
  return entry.caseId === caseId ? undefined : "belongs to another case";
}

/**
 * Holds the entries of one case against their chain. A bad one hides itself alone: what came after it was said too.
 *
 * @param stored as they were found, by their numbers. Nothing of their shape is taken for granted.
 */
export async function checkEntries(
  caseId: string,
  stored: readonly unknown[],
  sha256Hex: Sha256Hex,
): Promise<CheckedEntries> {
  const facts: Fact[] = [];
  const faults: string[] = [];
  let tail: ChainTail | undefined;
  let next = 0;
  let lastHash = FIRST_PREV;
  // What the next good entry may name as the one before it: the last good one, or any since. Undefined: nobody can tell.
  let before: string[] | undefined = [FIRST_PREV];
  for (const item of stored) {
    const entry: Loose = typeof item === "object" && item !== null ? item : {};
    const n = typeof entry.n === "number" && Number.isSafeInteger(entry.n) ? entry.n : next;
    if (n > next) faults.push(sayMissing(next, n));
    if (n < next) {
      faults.push(`Entry ${n} stands there again.`);
      continue;
    }
    const alone = await faultOf(caseId, entry, sha256Hex);
    const fact = readFact(entry.fact);
    if (alone !== undefined) faults.push(`Entry ${n} ${alone}.`);
    else if (!fact.ok) faults.push(`Entry ${n} ${fact.error}.`);
    else {
      if (n === next && before?.includes(entry.prev as string) === false)
        faults.push(`Entry ${n} does not follow the one before it.`);
      facts.push(fact.value);
      tail = tailWith(tail ?? withoutOpening(caseId, fact.value), fact.value);
      before = [];
    }
    if (isHash(entry.hash)) {
      lastHash = entry.hash;
      before?.push(entry.hash);
    } else before = undefined;
    next = n + 1;
  }
  return { facts, faults, tail: tail && { ...tail, n: next, hash: lastHash } };
}
