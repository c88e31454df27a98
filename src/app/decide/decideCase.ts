import type { CaseIntent } from "../../language/caseIntent.ts";
import { askErase, askNewCase, ERASE_FIRST, sayWhichCase } from "../../language/sentences/caseRecord.ts";
import type { CaseState } from "../../log/caseState.ts";
import { askFor } from "./care/askCare.ts";
import { askQuestion } from "./askQuestion.ts";
import { closedBy } from "./decideAct.ts";
import { answered, refused, type Decision } from "./decision.ts";
import type { Source } from "./recordStatement.ts";

/** Erasing takes two: the asking, and then the label of this very case. No other word does it. */
function erase(log: CaseState, label: string | undefined, source: Source, nowMs: number): Decision {
  const asked = log.questions.find(({ wants }) => wants?.kind === "caseLabel");
  if (label === undefined) return askFor(log, { kind: "caseLabel" }, { prompt: askErase(log), source, nowMs });
  if (asked === undefined) return refused(ERASE_FIRST);
  if (label !== log.label) return refused(asked.prompt);
  return { facts: [], outcome: "recorded", reply: { kind: "none" }, effect: { kind: "eraseCase" } };
}

/** What follows from what was said of the case as a whole. */
export function decideCase(log: CaseState, intent: CaseIntent, source: Source, nowMs: number): Decision {
  switch (intent.kind) {
    case "whichCase":
      return answered(sayWhichCase(log));
    case "eraseCase":
      return erase(log, intent.label, source, nowMs);
    case "newCase": {
      const acts = [{ kind: "newCase", rehearsal: intent.rehearsal }] as const;
      const question = { prompt: askNewCase(log, intent.rehearsal), source, nowMs };
      return askQuestion(log, question, { reason: "always-confirm", acts }, closedBy(log, acts));
    }
  }
}
