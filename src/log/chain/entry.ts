import type { Fact } from "../facts.ts";

/**
 * A fact in its place in the record of a case. Entries of a case form a chain: each holds the hash of the one before it, so
 * that one which was altered, lost or put elsewhere is found. The hash is no signature: who can write the whole chain anew
 * can hide a change.
 */
export type LogEntry = {
  readonly caseId: string;
  /** From 0. */
  readonly n: number;
  /** ms since the case was opened, by the running clock. */
  readonly caseMs: number;
  /** Unix ms that the device's own clock showed: another than the fact's where it was set in mid-case. */
  readonly wallMs: number;
  /** SHA-256 of the protocol that counted; null where the record does not say. */
  readonly protocolHash: string | null;
  readonly fact: Fact;
  /** `hash` of the entry before; `FIRST_PREV` for the first of a case. */
  readonly prev: string;
  /** SHA-256, 64 hexadecimal digits, of the canonical JSON (RFC 8785) of all the others. */
  readonly hash: string;
};

export const FIRST_PREV = "0".repeat(64);

/** Where the next entry goes, and what it must carry. */
export type ChainTail = Pick<LogEntry, "caseId" | "n" | "protocolHash"> & {
  readonly openedAtMs: number;
  /** How far the device's clock has been set forward since the opening, ms; under 0: back. */
  readonly setForwardMs: number;
  readonly hash: string;
};
