import type { Protocol, Step, StepGroup } from "../protocol/protocol.ts";
import type { CaseState } from "./caseState.ts";
import { selectFinding, selectLatest, selectMap } from "./selectors.ts";
import { selectTargets } from "./targets.ts";

type Place = { readonly step: Step; readonly group: StepGroup };

/** A step to read out. `number` is its place in the whole list, from 1. */
export type NextStep = Place & { readonly number: number; readonly total: number };

export type GroupProgress = {
  readonly id: string;
  readonly title: string;
  readonly done: number;
  readonly total: number;
};
export type Progress = { readonly done: number; readonly total: number; readonly groups: readonly GroupProgress[] };

/** Whether the record itself answers the step: nobody has to say "done". */
function isSatisfied(state: CaseState, protocol: Protocol, step: Step): boolean {
  const by = step.satisfiedBy;
  if (by === undefined) return false;
  switch (by.kind) {
    case "map-at-target": {
      const map = selectMap(state, protocol);
      return map !== undefined && map.mapMmHg >= selectTargets(state, protocol).mapMmHg.target.value;
    }
    case "recorded":
      return by.codes.every((code) => selectLatest(state, code) !== undefined || hasFinding(state, code));
    default:
      return false;
  }
}

function hasFinding(state: CaseState, code: string): boolean {
  switch (code) {
    case "pupilLeft":
    case "pupilRight":
    case "gcsEye":
    case "gcsVerbal":
    case "gcsMotor":
      return selectFinding(state, code) !== undefined;
    default:
      return false;
  }
}

/** Done, waived aloud, or answered by the record. "Later" is none of these. */
function isClosed(state: CaseState, protocol: Protocol, step: Step): boolean {
  const answer = state.steps[step.id]?.answer;
  return answer === "done" || answer === "not-needed" || answer === "waived" || isSatisfied(state, protocol, step);
}

/** The groups that are read out before the drugs are given; what follows the tube is not called by "next". */
const preparation = ({ groups }: Protocol): readonly StepGroup[] => groups.filter(({ phase }) => phase === "prepare");

const placesOf = (protocol: Protocol): readonly Place[] =>
  preparation(protocol).flatMap((group) => group.steps.map((step) => ({ step, group })));

/**
 * The step to read out next: the first that has no answer yet. Those put off with "later" come back once the others are
 * answered, the longest put off first. `undefined` when all are closed.
 */
export function selectNextStep(state: CaseState, protocol: Protocol): NextStep | undefined {
  const places = placesOf(protocol);
  const open = places.filter(({ step }) => !isClosed(state, protocol, step));
  const putOffAtMs = ({ step }: Place): number => state.steps[step.id]?.atMs ?? -Infinity;
  // The sort is stable: steps without an answer stay in the order of the list.
  const next = open.toSorted((a, b) => compare(putOffAtMs(a), putOffAtMs(b)))[0];
  return next && { ...next, number: places.indexOf(next) + 1, total: places.length };
}

// A difference of two -Infinity would be NaN.
const compare = (a: number, b: number): number => (a === b ? 0 : a < b ? -1 : 1);

/** How much of the preparation is closed, in each group and in all. */
export function selectProgress(state: CaseState, protocol: Protocol): Progress {
  const groups = preparation(protocol).map(({ id, title, steps }) => {
    const done = steps.filter((step) => isClosed(state, protocol, step)).length;
    return { id, title, done, total: steps.length };
  });
  const sum = (pick: (group: GroupProgress) => number): number =>
    groups.reduce((total, group) => total + pick(group), 0);
  return { done: sum((group) => group.done), total: sum((group) => group.total), groups };
}
