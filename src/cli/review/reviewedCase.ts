import { measureCase, type CaseMeasures } from "../../export/measures/caseMeasures.ts";
import { recordedCase } from "../../export/recordedCase.ts";
import type { Fact, ProtocolMark } from "../../log/facts.ts";
import type { Protocol } from "../../protocol/protocol.ts";

/** A record as it was read: its chain held, its facts oldest first. */
export type CaseRecord = {
  readonly caseId: string;
  readonly label: string;
  readonly rehearsal: boolean;
  readonly facts: readonly Fact[];
};

/** The protocol that judges, and its mark. */
export type Judge = { readonly protocol: Protocol; readonly mark: ProtocolMark };

/** A case once its file is closed, until its row is written. */
export type ReviewedCase = Omit<CaseRecord, "facts"> & {
  /** Relative to the folder. */
  readonly file: string;
  readonly openedAtMs: number | undefined;
  /** How many facts the record has. */
  readonly facts: number;
  /** The protocols that counted in the case, in their order. */
  readonly marks: readonly ProtocolMark[];
  /** Whether the case was recorded under the protocol that judges; `unknown`: it carries no hash. */
  readonly ownProtocol: "same" | "other" | "unknown";
  readonly measures: CaseMeasures;
};

function compared(marks: readonly ProtocolMark[], judge: ProtocolMark): ReviewedCase["ownProtocol"] {
  if (judge.hash === undefined || marks.length === 0 || marks.some(({ hash }) => hash === undefined)) return "unknown";
  return marks.every(({ hash }) => hash === judge.hash) ? "same" : "other";
}

/** Works out the measures of one case by the protocol that judges. */
export function reviewCase(file: string, record: CaseRecord, judge: Judge): ReviewedCase {
  // Named one by one: whatever else the reader hands over with a record must not outlive its file.
  const { caseId, label, rehearsal, facts } = record;
  const marks = facts.flatMap((f) => (f.type === "case.opened" || f.type === "protocol.replaced" ? [f.protocol] : []));
  return {
    caseId,
    label,
    rehearsal,
    file,
    openedAtMs: facts.find(({ type }) => type === "case.opened")?.atMs,
    facts: facts.length,
    marks,
    ownProtocol: compared(marks, judge.mark),
    measures: measureCase(recordedCase({ ...record, ...judge })),
  };
}
