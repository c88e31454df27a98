import { lowToHigh, unique, when, type Faults, type Place } from "../fault.ts";
import type { Protocol, Step } from "../protocol.ts";
import type { DrugClass } from "../schema/drugs.ts";
import { asHeard, wordCount } from "./asHeard.ts";

/** A challenge is read out in one breath. */
const MOST_WORDS = 8;
/** A name is said among others: "left are suction, tube and plan". */
export const MOST_NAME_WORDS = 3;
/** What can be read before the drugs are given. */
const MOST_PREPARATION_STEPS = 34;

/** The classes of which a drug is needed, each with the way to it inside the step. */
function classesOf({ satisfiedBy }: Step): readonly (readonly [DrugClass, Place])[] {
  switch (satisfiedBy?.kind) {
    case "strength-affirmed":
      return [[satisfiedBy.drugClass, ["satisfiedBy", "drugClass"]]];
    case "infusion-running":
      return satisfiedBy.drugClasses.map((drugClass, i) => [drugClass, ["satisfiedBy", "drugClasses", i]]);
    default:
      return [];
  }
}

function checkStep(step: Step, at: Place, classes: ReadonlySet<DrugClass>): Faults {
  const { name, challenge, carries } = step;
  const words = wordCount(challenge);
  const nameWords = wordCount(name);
  return [
    ...when(
      nameWords > MOST_NAME_WORDS,
      [...at, "name"],
      `has ${nameWords} words; at most ${MOST_NAME_WORDS} can be said among others`,
    ),
    ...when(words > MOST_WORDS, [...at, "challenge"], `has ${words} words; at most ${MOST_WORDS} can be read out`),
    ...(carries === undefined ? [] : lowToHigh(carries, [...at, "carries"])),
    ...classesOf(step).flatMap(([drugClass, inside]) =>
      when(
        !classes.has(drugClass),
        [...at, ...inside],
        `no drug is of the class "${drugClass}": nothing could answer this step`,
      ),
    ),
  ];
}

/** Steps that can be read out, named, and got through. */
export function checkSteps({ groups, drugs }: Protocol): Faults {
  const classes = new Set(drugs.map((drug) => drug.class));
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
    ...unique(
      steps.map(({ step, at }) => ({ name: asHeard(step.name), at: [...at, "name"] })),
      "the step name",
    ),
    ...steps.flatMap(({ step, at }) => checkStep(step, at, classes)),
    ...when(toPrepare.length === 0, ["groups"], "has no group of the phase prepare"),
    ...when(
      count > MOST_PREPARATION_STEPS,
      ["groups"],
      `has ${count} preparation steps; at most ${MOST_PREPARATION_STEPS} can be read out`,
    ),
  ];
}
