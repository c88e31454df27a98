import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import type { CaseRecord, Judge } from "../../../src/cli/review/reviewedCase.ts";
import { runReview, type Review } from "../../../src/cli/review/runReview.ts";
import { fail, ok } from "../../../src/core/result.ts";
import type { Fact, ProtocolMark } from "../../../src/log/facts.ts";
import { defaultProtocol } from "../../../src/protocol/defaultProtocol.ts";
import { airway, BuiltCase, given } from "../../export/measures/builtCase.ts";

export const MARK: ProtocolMark = { name: "Judge", version: "3", hash: "a".repeat(64) };
export const JUDGE: Judge = { protocol: defaultProtocol, mark: MARK };

/** A case that went well, opened under this protocol; more may be done to it. Invented. */
export function caseOf(
  caseId: string,
  mark: ProtocolMark = MARK,
  more: (b: BuiltCase) => unknown = () => 0,
): CaseRecord {
  const b = new BuiltCase();
  b.add({ type: "case.opened", caseId, label: "kilo four seven", rehearsal: false, protocol: mark });
  b.min(0).patient({ ageA: 40 });
  b.min(5).say({ sbp: 130, dbp: 85, spo2: 98 });
  b.min(8).add(given("induction"), given("muscleRelaxant"));
  b.min(9).add(airway("bladeIn"));
  b.min(9.5).add(airway("tubeConfirmed"));
  b.min(10).say({ sbp: 120, dbp: 80, spo2: 97, etco2: 38 });
  b.min(13.5).add(given("benzodiazepine"));
  more(b);
  return { caseId, label: "kilo four seven", rehearsal: false, facts: b.facts };
}

export function write(folder: string, name: string, record: CaseRecord | string): void {
  mkdirSync(dirname(join(folder, name)), { recursive: true });
  writeFileSync(join(folder, name), typeof record === "string" ? record : JSON.stringify(record));
}

/** Takes files of `write` for records: what a chain proves is judged elsewhere. */
export const readStub: Review["readRecord"] = async (text) => {
  const json = JSON.parse(text) as CaseRecord | { readonly refuse: string };
  return "refuse" in json ? fail(json.refuse) : ok(json);
};

export type Reviewed = { readonly lines: readonly string[]; readonly csv: string };

export async function review(folder: string, more: Partial<Review> = {}): Promise<Reviewed> {
  let [printed, csv] = ["", ""];
  const done = await runReview({
    folder,
    judge: JUDGE,
    mostBytes: 2 ** 20,
    readRecord: readStub,
    rehearsals: false,
    print: async (text) => void (printed += text),
    csv: async (text) => void (csv += text),
    progressOf: () => ({ step: () => undefined, clear: () => undefined }),
    ...more,
  });
  if (!done.ok) throw new Error(done.error);
  return { lines: printed.split("\n"), csv };
}

export const withFacts = (record: CaseRecord, change: (facts: readonly Fact[]) => readonly Fact[]): CaseRecord => ({
  ...record,
  facts: change(record.facts),
});
