import type { Protocol, StepGroup } from "../../protocol/protocol.ts";
import type { CaseState } from "../caseState.ts";
import { isAfterTube } from "../phase.ts";
import { rescueRuns } from "../rescue.ts";
import { failureRuns, placesOf, type ListId, type Place } from "./lists.ts";
import { isClosed, selectOpen } from "./openSteps.ts";

/** A step to read out. `number` is its place in its whole list, from 1. */
export type NextStep = Place & { readonly list: ListId; readonly number: number; readonly total: number };

/** How many steps of a group are closed. */
export type GroupProgress = { readonly group: StepGroup; readonly done: number; readonly total: number };
export type Progress = {
  readonly list: ListId;
  readonly done: number;
  readonly total: number;
  readonly groups: readonly GroupProgress[];
};

/**
 * The list that "next" reads. A rescue and a failed airway come before the rest while they have open steps, the one that
 * was begun last first. The killer items are those of the preparation, or of what follows the tube.
 */
export function selectList(state: CaseState, protocol: Protocol, nowMs: number): ListId {
  const usual = isAfterTube(state) ? "afterTube" : "prepare";
  const { rescue, failure, list } = state.care;
  if (list === "killer") return usual;
  const pressing: { readonly id: ListId; readonly seq: number }[] = [];
  if (rescue !== undefined && rescueRuns(state)) pressing.push({ id: "rescue", seq: rescue.seq });
  if (failure !== undefined && failureRuns(state)) pressing.push({ id: "failedAirway", seq: failure.seq });
  const open = pressing
    .toSorted((a, b) => b.seq - a.seq)
    .find(({ id }) => selectOpen(state, protocol, id, nowMs).length > 0);
  return open?.id ?? usual;
}

/** The open steps that are to be read now: of the current list, and while the killer items alone are read only those. */
export function selectToRead(state: CaseState, protocol: Protocol, nowMs: number): readonly Place[] {
  const open = selectOpen(state, protocol, selectList(state, protocol, nowMs), nowMs);
  return state.care.list === "killer" ? open.filter(({ step }) => step.killer) : open;
}

/**
 * The step to read out next: the first that has no answer yet. Those put off with "later" come back once the others are
 * answered, the longest put off first. `undefined` when all are closed.
 *
 * @param nowMs Unix ms: some steps are answered by time.
 */
export function selectNextStep(state: CaseState, protocol: Protocol, nowMs: number): NextStep | undefined {
  const [next] = selectToRead(state, protocol, nowMs);
  if (next === undefined) return undefined;
  const list = next.group.phase;
  const places = placesOf(protocol, list);
  return { ...next, list, number: places.findIndex(({ step }) => step.id === next.step.id) + 1, total: places.length };
}

/** How much of the current list is closed, in each group and in all. */
export function selectProgress(state: CaseState, protocol: Protocol, nowMs: number): Progress {
  const list = selectList(state, protocol, nowMs);
  const groups = protocol.groups
    .filter(({ phase }) => phase === list)
    .map((group) => {
      const done = group.steps.filter((step) => isClosed(state, protocol, { step, group }, nowMs)).length;
      return { group, done, total: group.steps.length };
    });
  const sum = (pick: (group: GroupProgress) => number): number =>
    groups.reduce((total, group) => total + pick(group), 0);
  return { list, done: sum((group) => group.done), total: sum((group) => group.total), groups };
}
