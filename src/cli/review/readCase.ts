import { readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { fail, ok, type Result } from "../../core/result.ts";
import { VITALS } from "../../core/vitals.ts";
import type { Fact } from "../../log/facts.ts";
import { reviewCase, type CaseRecord, type Judge, type ReviewedCase } from "./reviewedCase.ts";

export type ReadCaseOptions = {
  readonly folder: string;
  readonly judge: Judge;
  /** A larger file is not opened. */
  readonly mostBytes: number;
  /** The text of a file as a record. Errors: why it is none, as the end of a sentence about the file. */
  readonly readRecord: (text: string) => Promise<Result<CaseRecord, string>>;
};

const MIB = 2 ** 20;

const isTrue = (value: number, { min, max }: { min: number; max: number }): boolean => value >= min && value <= max;

/** The chain tells whether a record was altered, not whether it was ever one of ours. */
function oddFact(facts: readonly Fact[]): string | undefined {
  for (const fact of facts) {
    if (fact.type !== "vital.recorded") continue;
    const vital = Object.hasOwn(VITALS, fact.code) ? VITALS[fact.code] : undefined;
    if (vital === undefined || vital.unit !== fact.unit) return "holds a vital sign that this version does not know";
    if (typeof fact.value !== "number" || !isTrue(fact.value, vital.limits))
      return `holds a value that cannot be: ${vital.label}`;
  }
  return undefined;
}

function readText(path: string, mostBytes: number): Result<string, string> {
  try {
    const { size } = statSync(path);
    if (size > mostBytes) return fail(`is too large: ${Math.ceil(size / MIB)} MiB, at most ${mostBytes / MIB}`);
    return ok(new TextDecoder("utf-8", { fatal: true }).decode(readFileSync(path)));
  } catch (error) {
    if (error instanceof TypeError) return fail("is not text in UTF-8");
    return fail(`cannot be read: ${error instanceof Error ? error.message : String(error)}`);
  }
}

/**
 * One file, read and measured. Only what a row needs outlives the call.
 *
 * Errors: why the file is skipped, as the end of a sentence about it.
 */
export async function readCase(file: string, options: ReadCaseOptions): Promise<Result<ReviewedCase, string>> {
  const text = readText(join(options.folder, file), options.mostBytes);
  if (!text.ok) return text;
  try {
    const record = await options.readRecord(text.value);
    if (!record.ok) return record;
    const odd = oddFact(record.value.facts);
    return odd === undefined ? ok(reviewCase(file, record.value, options.judge)) : fail(odd);
  } catch (error) {
    // A record may come from anybody: one that breaks the reading must not end the review of the others.
    return fail(`cannot be used: ${error instanceof Error ? error.message : String(error)}`);
  }
}
