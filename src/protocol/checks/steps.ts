import { lowToHigh, unique, when, type Faults, type Place } from "../fault.ts";
import type { Protocol, Step } from "../protocol.ts";

/** A challenge is read out in one breath. */
const MOST_WORDS = 8;
/** What can be read before the drugs are given. */
const MOST_PREPARATION_STEPS = 34;

function checkStep({ challenge, carries }: Step, at: Place): Faults {
  const words = challenge.trim().split(/\s+/u).length;
  return [
    ...when(words > MOST_WORDS, [...at, "challenge"], `has ${words} words; at most ${MOST_WORDS} can be read out`),
    ...(carries === undefined ? [] : lowToHigh(carries, [...at, "carries"])),
  ];
}

/** Steps that can be read out, named, and got through. */
export function checkSteps({ groups }: Protocol): Faults {
  const steps = groups.flatMap((group, g) => group.steps.map((step, s) => ({ step, at: ["groups", g, "steps", s] })));
  const toPrepare = groups.filter((group) => group.phase === "prepare");
  const count = toPrepare.reduce((sum, group) => sum + group.steps.length, 0);
  return [
    ...unique(
      groups.map(({ id }, g) => ({ name: id, at: ["groups", g, "id"] })),
      "the group",
    ),
    ...unique(
      steps.map(({ step, at }) => ({ name: step.id, at: [...at, "id"] })),
      "the step",
    ),
    ...steps.flatMap(({ step, at }) => checkStep(step, at)),
    ...when(toPrepare.length === 0, ["groups"], "has no group of the phase prepare"),
    ...when(
      count > MOST_PREPARATION_STEPS,
      ["groups"],
      `has ${count} preparation steps; at most ${MOST_PREPARATION_STEPS} can be read out`,
    ),
  ];
}
