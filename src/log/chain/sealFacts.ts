import canonicalize from "canonicalize";
import { fail, ok, type Result } from "../../core/result.ts";
import type { Fact } from "../facts.ts";
import { FIRST_PREV, type ChainTail, type LogEntry } from "./entry.ts";

/** 64 hexadecimal digits in lower case, of the text as UTF-8; an error is a sentence. */
export type Sha256Hex = (text: string) => Promise<Result<string, string>>;

type Unsealed = Omit<LogEntry, "hash">;

/** The hash that an entry must carry. Errors: a sentence, where this device cannot compute it or the fact is no JSON. */
export async function hashOf(entry: Unsealed, sha256Hex: Sha256Hex): Promise<Result<string, string>> {
  const { caseId, n, caseMs, wallMs, protocolHash, fact, prev } = entry;
  const text = canonicalText({ caseId, n, caseMs, wallMs, protocolHash, fact, prev });
  return text === undefined ? fail("cannot be written as JSON") : sha256Hex(text);
}

function canonicalText(value: Unsealed): string | undefined {
  try {
    return canonicalize(value);
  } catch {
    return undefined; // nested without end, or a number that is none
  }
}

/** The tail that a fact starts or carries on; nothing before a case was opened. */
export function tailWith(tail: ChainTail | undefined, fact: Fact): ChainTail | undefined {
  if (fact.type === "case.opened")
    return {
      caseId: fact.caseId,
      n: 0,
      openedAtMs: fact.atMs,
      setForwardMs: 0,
      protocolHash: fact.protocol.hash ?? null,
      hash: FIRST_PREV,
    };
  if (tail === undefined) return undefined;
  if (fact.type === "protocol.replaced") return { ...tail, protocolHash: fact.protocol.hash ?? null };
  if (fact.type === "clock.changed") return { ...tail, setForwardMs: tail.setForwardMs + fact.byMs };
  return tail;
}

/**
 * Puts facts into the chain, oldest first.
 *
 * @param from after the last entry of the case; undefined before any, when the first must be the fact that opens one.
 * Errors: a sentence saying why they cannot be put there.
 */
export async function sealFacts(
  facts: readonly Fact[],
  from: ChainTail | undefined,
  sha256Hex: Sha256Hex,
): Promise<Result<{ readonly entries: readonly LogEntry[]; readonly tail: ChainTail | undefined }, string>> {
  const entries: LogEntry[] = [];
  let tail = from;
  for (const fact of facts) {
    const at = tailWith(tail, fact);
    if (at === undefined) return fail("no case is open");
    const { caseId, n, protocolHash, openedAtMs, setForwardMs, hash: prev } = at;
    const caseMs = fact.atMs - openedAtMs;
    const unsealed = { caseId, n, caseMs, wallMs: fact.atMs + setForwardMs, protocolHash, fact, prev };
    const hash = await hashOf(unsealed, sha256Hex);
    if (!hash.ok) return hash;
    entries.push({ ...unsealed, hash: hash.value });
    tail = { ...at, n: n + 1, hash: hash.value };
  }
  return ok({ entries, tail });
}
