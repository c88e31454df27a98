import { findStep } from "../findStep.ts";
import type { Population, Protocol, Step, StepGroup } from "../protocol.ts";
import { alertsThree, populationThree } from "./alertsThree.ts";
import { medicinesThree } from "./medicinesThree.ts";
import type { FileTwo } from "./schemaTwo.ts";
import { nameSteps } from "./stepNames.ts";

const COMPLETED =
  "Upgraded from schema 2: what that did not say (step names, rescue, failed airway, timers, alerts on CO2, heart rate, temperature and glucose, and more) was completed from the bundled example; what each dilution is for and which doses are for after intubation was guessed. Review before use.";

type Group = FileTwo["groups"][number] | StepGroup;

/** A file of schema 2. One that comes from schema 1 has groups of the example in it, which are whole already. */
export type Two = Omit<
  Protocol,
  "schema" | "groups" | "targets" | "oxygen" | "doses" | "timers" | "alerts" | "conditions" | "trend" | "handover"
> & {
  readonly targets: Omit<Protocol["targets"], "herniation" | "populations"> & {
    readonly populations: readonly Omit<Population, "hrPerMin">[];
  };
  readonly alerts: FileTwo["alerts"];
  readonly trend: Omit<Protocol["trend"], "fallingReadings">;
  readonly oxygen: Omit<Protocol["oxygen"], "cylinderWarnMin">;
  readonly timers: Pick<Protocol["timers"], keyof FileTwo["timers"]>;
  readonly groups: readonly Group[];
};

/** What schema 2 called recorded was recorded at any time. */
function satisfiedTwo(by: NonNullable<Group["steps"][number]["satisfiedBy"]>): NonNullable<Step["satisfiedBy"]> {
  return by.kind === "recorded" ? { when: "any", ...by } : by;
}

/** The groups of the example for rescue and failed airway, but for one whose ids the file has put to its own use. */
function laterGroups(groups: readonly Group[], example: Protocol): readonly StepGroup[] {
  const ids = new Set(groups.flatMap((group) => [group.id, ...group.steps.map(({ id }) => id)]));
  return example.groups
    .filter(({ phase }) => phase === "rescue" || phase === "failedAirway")
    .filter((group) => !ids.has(group.id) && group.steps.every(({ id }) => !ids.has(id)));
}

function groupsThree(groups: readonly Group[], example: Protocol): Protocol["groups"] {
  const added = laterGroups(groups, example);
  const names = nameSteps(
    groups.flatMap(({ steps }) => [...steps]),
    (id) => findStep(example, id)?.name,
    added.flatMap(({ steps }) => steps.map(({ name }) => name)),
  );
  const named = groups.map((group) => ({
    ...group,
    steps: group.steps.map(({ id, satisfiedBy, ...step }) => ({
      ...step,
      id,
      name: names.get(id) ?? id,
      ...(satisfiedBy === undefined ? {} : { satisfiedBy: satisfiedTwo(satisfiedBy) }),
    })),
  }));
  return [...named, ...added];
}

/** A file of schema 2 with what schema 3 has beside it taken from the example. Its name and status stay as they are. */
export const completeTwo = (file: Two, example: Protocol): Protocol => ({
  ...file,
  schema: 3,
  handover: example.handover,
  targets: {
    ...file.targets,
    populations: file.targets.populations.map((population) => populationThree(population, example)),
    herniation: example.targets.herniation,
  },
  trend: { ...file.trend, fallingReadings: example.trend.fallingReadings },
  alerts: alertsThree(file.alerts, example),
  conditions: example.conditions,
  groups: groupsThree(file.groups, example),
  doses: example.doses,
  oxygen: { ...file.oxygen, cylinderWarnMin: example.oxygen.cylinderWarnMin },
  timers: { ...example.timers, ...file.timers },
});

/**
 * A file of schema 2 as one of schema 3. What it said is kept; what it could not say is taken from the example, so
 * nobody has approved the whole: its status is `example`, and its caution says so. What a dilution is for, and which doses
 * are for after the tube, is guessed: see `medicinesThree`. No step closes by itself that did
 * not do so before.
 *
 * @param example the bundled protocol.
 * Not for: use without `validateProtocol`: numbers of two files now stand side by side.
 */
export const upgradeTwo = (file: FileTwo, example: Protocol): Protocol => ({
  ...completeTwo({ ...file, ...medicinesThree(file) }, example),
  status: "example",
  caution: `${file.caution} ${COMPLETED}`,
});
