import { LIST_TITLES } from "../../language/sentences/list.ts";
import { showStepValue } from "../../language/sentences/stepValue.ts";
import type { StepEntry } from "../../log/careState.ts";
import type { CaseState } from "../../log/caseState.ts";
import { selectNextStep, selectProgress } from "../../log/steps/currentList.ts";
import type { Place } from "../../log/steps/lists.ts";
import { answerOf, isClosed, selectCalled } from "../../log/steps/openSteps.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import type { ScreenView, StepRow } from "../screenView.ts";

const ANSWERS = { done: "done", "not-needed": "not needed", waived: "waived", later: "later" } as const;

/** What is known of an answer, in the order in which it is read. */
function showAnswer({ answer, value, role, reason }: StepEntry): string {
  return [ANSWERS[answer], value && showStepValue(value), role, reason].filter((p) => p !== undefined).join(", ");
}

function stateOf(answer: StepEntry | undefined, closed: boolean, called: boolean): StepRow["state"] {
  if (closed) return answer?.answer === "waived" || answer?.answer === "not-needed" ? "passed" : "closed";
  if (called) return "called";
  return answer === undefined ? "open" : "later";
}

function showStep(state: CaseState, protocol: Protocol, place: Place, calledId: string | undefined, nowMs: number) {
  const { id, name, killer } = place.step;
  const answer = answerOf(state, place);
  const closed = isClosed(state, protocol, place, nowMs);
  // A step put off that the record has answered since is answered all the same.
  const byRecord = closed && (answer === undefined || answer.answer === "later");
  const text = byRecord ? "done, by the record" : answer === undefined ? "open" : showAnswer(answer);
  return { id, name, killer, text, state: stateOf(answer, closed, id === calledId) };
}

/** The list that counts now, as it is read: the step to come, and what every step was answered with. */
export function viewList(
  state: CaseState,
  protocol: Protocol,
  nowMs: number,
): Pick<ScreenView, "nextStep" | "progressText" | "listTitle" | "groups"> {
  const next = selectNextStep(state, protocol, nowMs);
  const progress = selectProgress(state, protocol, nowMs);
  const calledId = selectCalled(state, protocol, nowMs)?.step.id;
  return {
    nextStep: next && {
      groupText: `${next.group.title}, step ${next.number} of ${next.total}`,
      challenge: next.step.challenge,
      killer: next.step.killer,
    },
    progressText: `${progress.done} of ${progress.total} steps done`,
    listTitle: LIST_TITLES[progress.list],
    groups: progress.groups.map(({ group, done }) => ({
      id: group.id,
      title: group.title,
      done,
      total: group.steps.length,
      steps: group.steps.map((step) => showStep(state, protocol, { step, group }, calledId, nowMs)),
    })),
  };
}
