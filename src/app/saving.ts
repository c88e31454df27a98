import { showNotSaved } from "../language/sentences/caseRecord.ts";
import type { Report } from "./session.ts";
import type { Outcome, ShownOutcome } from "./screenView.ts";
import type { TalkState } from "./talkState.ts";

/** Whether the record is kept, as the page shows it. */
export type Saving = Pick<TalkState, "saveText" | "saveFailed"> & {
  /** Facts wait for a write that works. */
  readonly unwritten: boolean;
};

/** What a report makes of it: nothing where nothing had to be written. */
export function savingAfter(before: Saving, { saved, facts }: Pick<Report, "saved" | "facts">): Saving {
  if (saved.kind === "failed") {
    const isUnread = saved.error.kind === "corrupt";
    const saveText = isUnread ? "Part of the record could not be read" : showNotSaved(saved.heard);
    return { saveFailed: true, saveText, unwritten: !isUnread };
  }
  return facts.length > 0 || before.unwritten ? { saveFailed: false, saveText: "Saved", unwritten: false } : before;
}

/** What came of an utterance: "recorded" only where the record has it. */
export const shownOutcome = (outcome: Outcome, saved: Report["saved"]): ShownOutcome =>
  outcome === "recorded" && saved.kind === "failed" ? "not saved" : outcome;
