import { sayLeft, UNKNOWN_GROUP } from "../../../../language/sentences/list.ts";
import type { CaseState } from "../../../../log/caseState.ts";
import { selectList } from "../../../../log/steps/currentList.ts";
import { selectOpen } from "../../../../log/steps/openSteps.ts";
import type { AppContext } from "../../../context.ts";
import { answered, refused, type Decision } from "../../decision.ts";

/** "What's left", "what's left in drugs": the names of the open steps, the killer items first. */
export function whatIsLeft(
  { protocol }: AppContext,
  log: CaseState,
  groupId: string | undefined,
  nowMs: number,
): Decision {
  const asked = protocol.groups.find(({ id }) => id === groupId);
  if (groupId !== undefined && asked === undefined) return refused(UNKNOWN_GROUP);
  const open = selectOpen(log, protocol, asked?.phase ?? selectList(log, protocol, nowMs), nowMs).filter(
    ({ group }) => asked === undefined || group.id === asked.id,
  );
  const killersFirst = open.toSorted((a, b) => Number(b.step.killer) - Number(a.step.killer));
  return answered(
    sayLeft(
      killersFirst.map(({ step }) => step.name),
      asked?.title,
    ),
  );
}
