import { emptyCase, type CaseState } from "../log/caseState.ts";
import type { Fact, ProtocolMark } from "../log/facts.ts";
import { reduceFacts } from "../log/reduceFact.ts";
import type { Protocol } from "../protocol/protocol.ts";

/** One case as everything that leaves the device is made from it: handover, printed record, exports, measures. */
export type RecordedCase = {
  readonly caseId: string;
  /** What the case is called aloud; it says nothing of the patient. */
  readonly label: string;
  /** Not a patient. Said wherever the case is shown. */
  readonly rehearsal: boolean;
  /** Every fact, oldest first. */
  readonly facts: readonly Fact[];
  /** Ids of facts that were struck out: they stay in `facts` and count for nothing. */
  readonly struckIds: ReadonlySet<string>;
  /** Ids of facts whose write failed and is tried again: they count, and are not safe yet. */
  readonly unsavedIds: ReadonlySet<string>;
  readonly state: CaseState;
  /** The protocol that counts now, and its mark: name, version, hash. */
  readonly protocol: Protocol;
  readonly mark: ProtocolMark;
};

type About = Pick<RecordedCase, "caseId" | "label" | "rehearsal" | "facts" | "protocol" | "mark"> &
  Partial<Pick<RecordedCase, "unsavedIds">>;

/** Works out once what every export needs. */
export const recordedCase = (about: About): RecordedCase => ({
  unsavedIds: new Set(),
  ...about,
  struckIds: new Set(about.facts.flatMap((fact) => (fact.type === "entry.struck" ? fact.targetIds : []))),
  state: reduceFacts(about.facts, emptyCase),
});
