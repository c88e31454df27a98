import type { Fact } from "../../log/facts.ts";
import { placeOf, type ListId } from "../../log/steps/lists.ts";
import type { Context } from "./elements.ts";
import { rescuesOf } from "./rescues.ts";

export type AnswerFact = Extract<Fact, { readonly type: "step.answered" }>;

/** From which the id of the resource of a struck answer is made. */
export const struckAnswerKey = ({ id }: AnswerFact): string => `${id}/answer`;

/** One reading of a list with the last answer to each of its steps, in the order of the protocol. */
export type StepRun = {
  /** From which the id of its resource is made. */
  readonly key: string;
  /** None: steps of another protocol than the one that counts. */
  readonly list: ListId | undefined;
  readonly answers: readonly [AnswerFact, ...AnswerFact[]];
  /** The rescue it was read in. */
  readonly rescueId: string | undefined;
  /** Nothing is added to it any more: it was begun anew since, its rescue is over, or the case is closed. */
  readonly isOver: boolean;
};

/** What begins a list anew: answers before it were about another rescue, another failure, another tube. */
function beginsAnew(list: ListId | undefined, fact: Fact): boolean {
  switch (list) {
    case "rescue":
      return fact.type === "rescue.started";
    case "failedAirway":
      return fact.type === "failure.called";
    case "afterTube":
      return fact.type === "airway.event" && fact.event === "tubeOut";
    default:
      return false;
  }
}

/** Every reading of every list that was answered; struck answers left out. */
export function stepRuns(context: Context): readonly StepRun[] {
  const { caseId, protocol, facts, struckIds, state } = context.recorded;
  const stepIds = protocol.groups.flatMap((group) => group.steps.map(({ id }) => id));
  const rescues = rescuesOf(context).filter(({ struck }) => !struck);
  const standing = facts.filter(({ id }) => !struckIds.has(id));
  const lists = new Set<ListId | undefined>(["prepare", "afterTube", "rescue", "failedAirway", undefined]);
  return [...lists].flatMap((list): readonly StepRun[] => {
    const runs = [new Map<string, AnswerFact>()];
    for (const fact of standing) {
      if (beginsAnew(list, fact)) runs.push(new Map<string, AnswerFact>());
      if (fact.type === "step.answered" && placeOf(protocol, fact.stepId)?.group.phase === list)
        runs.at(-1)?.set(fact.stepId, fact);
    }
    return runs.flatMap((run, n): readonly StepRun[] => {
      const [first, ...rest] = [...run.values()].toSorted(
        (a, b) => stepIds.indexOf(a.stepId) - stepIds.indexOf(b.stepId),
      );
      if (first === undefined) return [];
      const isInRescue = list === "rescue" && n > 0;
      const rescue = isInRescue ? rescues.findLast(({ start }) => start.atMs <= first.atMs) : undefined;
      return [
        {
          key: `${caseId}/list/${list ?? "other"}/${n}`,
          list,
          answers: [first, ...rest],
          rescueId: rescue?.start.id,
          isOver: n < runs.length - 1 || state.isClosed || rescue?.endMs !== undefined,
        },
      ];
    });
  });
}
