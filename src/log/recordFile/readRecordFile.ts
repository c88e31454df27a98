import { fail, ok, type Result } from "../../core/result.ts";
import { checkEntries } from "../chain/checkEntries.ts";
import type { LogEntry } from "../chain/entry.ts";
import type { Sha256Hex } from "../chain/sealFacts.ts";
import type { Fact } from "../facts.ts";
import { reduceFacts } from "../reduceFact.ts";
import { RECORD_FILE_VERSION, RECORD_FORMAT, type RecordFile } from "./recordFile.ts";

/** A day of talk is a few MB; a file over this is none of ours, and reading it would stop the page. */
export const MAX_RECORD_CHARACTERS = 64 * 1024 * 1024;
/** A day of talk is some ten thousand; to hold millions against a chain would stop the page too. */
const MAX_ENTRIES = 100_000;

export type RecordFileError =
  | { readonly kind: "too-large"; readonly characters: number }
  | { readonly kind: "not-json"; readonly detail: string }
  | { readonly kind: "not-a-record" }
  | { readonly kind: "newer-version"; readonly version: number }
  /** One sentence for each entry that is missing, was altered or cannot be read. */
  | { readonly kind: "altered"; readonly faults: readonly string[] };

/** What a file holds once every entry of it was held against the chain, with its facts in the shape of now. */
export type ReadRecord = RecordFile & { readonly facts: readonly Fact[] };

/**
 * Reads the file of one case. It may come from anybody: nothing of its shape is taken for granted, and only what the chain
 * proves is handed on. The chain is no signature: it shows damage and clumsy changes, not a forger who wrote it anew.
 */
export async function readRecordFile(text: string, sha256Hex: Sha256Hex): Promise<Result<ReadRecord, RecordFileError>> {
  if (text.length > MAX_RECORD_CHARACTERS) return fail({ kind: "too-large", characters: text.length });
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (thrown) {
    return fail({ kind: "not-json", detail: thrown instanceof Error ? thrown.message : String(thrown) });
  }
  if (typeof json !== "object" || json === null) return fail({ kind: "not-a-record" });
  const { format, v, caseId, entries } = json as { readonly [K in keyof RecordFile]?: unknown };
  if (format !== RECORD_FORMAT || typeof v !== "number") return fail({ kind: "not-a-record" });
  if (v > RECORD_FILE_VERSION) return fail({ kind: "newer-version", version: v });
  if (typeof caseId !== "string" || !Array.isArray(entries)) return fail({ kind: "not-a-record" });
  if (entries.length > MAX_ENTRIES) return fail({ kind: "too-large", characters: text.length });
  const { facts, faults } = await checkEntries(caseId, entries, sha256Hex);
  const [opened] = facts;
  if (faults.length > 0) return fail({ kind: "altered", faults });
  if (opened?.type !== "case.opened" || opened.caseId !== caseId) return fail({ kind: "not-a-record" });
  if (!isReplayed(facts)) return fail({ kind: "not-a-record" });
  const { label, rehearsal } = opened;
  const record = { format: RECORD_FORMAT, v: RECORD_FILE_VERSION, caseId, label, rehearsal } as const;
  return ok({ ...record, entries: (entries as readonly LogEntry[]).map(chained), facts });
}

/** What the chain knows of an entry, and nothing that somebody put beside it. */
const chained = ({ caseId, n, caseMs, wallMs, protocolHash, fact, prev, hash }: LogEntry): LogEntry => ({
  caseId,
  n,
  caseMs,
  wallMs,
  protocolHash,
  fact,
  prev,
  hash,
});

/** Who can make a chain can put facts into it that the app never wrote. */
function isReplayed(facts: readonly Fact[]): boolean {
  try {
    reduceFacts(facts);
    return true;
  } catch {
    return false;
  }
}
