import type { Fact } from "../log/facts.ts";
import type { Report } from "./session.ts";
import type { NewItem, VoiceInput } from "./voiceQueue.ts";

const stepName = (stepId: string): string => `step:${stepId}`;

/** What the words of a report ask, where they ask: its newest question that waits, else the step it calls. */
function askedIn({ facts, state }: Report): Pick<NewItem, "asksId"> {
  const waits = ({ id }: { readonly id: string }): boolean => state.log.questions.some((q) => q.id === id);
  const asked = facts.findLast((f) => f.type === "question.asked" && waits(f.question));
  const called = facts.findLast((f) => f.type === "step.called");
  if (asked?.type === "question.asked") return { asksId: asked.question.id };
  return called?.type === "step.called" ? { asksId: stepName(called.stepId) } : {};
}

const closedBy = (fact: Fact): readonly string[] => {
  if (fact.type === "question.closed") return [fact.questionId];
  return fact.type === "step.answered" ? [stepName(fact.stepId)] : [];
};

/** What a report puts into the voice queue: what no longer holds goes, then alerts, then the reply. */
export function toVoice(report: Report): VoiceInput {
  const { announcements, answer, facts, outdated, withdrawn } = report;
  const asked = askedIn(report);
  const isReply = ({ priority, alertId }: NewItem): boolean => priority === "none" && alertId === undefined;
  // What is said of a list without being asked for is its next challenge.
  const items: NewItem[] = announcements.map((item) => (isReply(item) ? { ...item, ...asked } : item));
  const reply = answer?.reply ?? "";
  const brisk = answer?.withinMs === undefined ? {} : { withinMs: answer.withinMs };
  const parts = answer?.parts ?? [];
  if (parts.length > 0)
    items.push(...parts.map((text) => ({ text, priority: "none", alertId: undefined, isPart: true }) as const));
  else if (reply !== "")
    items.push({ text: reply, priority: "none", alertId: undefined, about: outdated, ...asked, ...brisk });
  // Talk that was not for us is no reason to leave off.
  const answered = answer !== undefined && answer.outcome !== "ignored";
  return { kind: "say", items, withdrawn, closed: facts.flatMap(closedBy), outdated, answered };
}
