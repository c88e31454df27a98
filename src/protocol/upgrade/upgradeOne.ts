import type { VitalCode } from "../../core/vitals.ts";
import { findStep } from "../findStep.ts";
import type { Population, Protocol } from "../protocol.ts";
import { alertsOne, criticalOne, type CodeOne } from "./bandsOne.ts";
import type { FileOne } from "./schemaOne.ts";
import { sourcedOne, sourceOne } from "./sourceOne.ts";
import { completeTwo, type Two } from "./upgradeTwo.ts";

const COMPLETED =
  "Upgraded from schema 1: what that did not say (children, causes, drugs, oxygen, ventilation and more) was completed from the bundled example. Review before use.";

type Floor = Population["sbpMmHg"];

/** The file's one target, with its own critical limit where it had one. */
function floorOne(file: FileOne, code: Exclude<CodeOne, "spo2">, example: Floor): Floor {
  const target = { sbp: file.targets.sbpMmHg, map: file.targets.mapMmHg, cpp: file.targets.cppMmHg }[code];
  return { target: sourcedOne(target), critical: criticalOne(file, code) ?? example.critical };
}

/** The targets of the file were meant for adults: they count for every adult, and for no child. */
function populationOne(file: FileOne, example: Population): Population {
  if (example.kind === "child") return example;
  return {
    ...example,
    sbpMmHg: floorOne(file, "sbp", example.sbpMmHg),
    mapMmHg: floorOne(file, "map", example.mapMmHg),
    cppMmHg: { ...example.cppMmHg, ...floorOne(file, "cpp", example.cppMmHg) },
  };
}

function groupsOne(file: FileOne, example: Protocol): Two["groups"] {
  const prepare = file.groups.map((group) => ({
    ...group,
    phase: "prepare" as const,
    steps: group.steps.map(({ source, ...step }) => {
      const carries = findStep(example, step.id)?.carries;
      return { ...step, ...(carries === undefined ? {} : { carries }), source: sourceOne(source) };
    }),
  }));
  return [...prepare, ...example.groups.filter(({ phase }) => phase === "afterTube")];
}

function confirmOne({ confirm }: FileOne): Protocol["confirm"] {
  const rules = (Object.keys(confirm) as VitalCode[]).flatMap((code) => {
    const rule = confirm[code];
    return rule === undefined ? [] : [[code, { ...rule, source: sourceOne(rule.source) }] as const];
  });
  return Object.fromEntries(rules);
}

function timersOne({ timers }: FileOne, example: Protocol): Protocol["timers"] {
  const { high, medium, low } = timers.reannounceS;
  return {
    ...example.timers,
    questionTimeoutS: sourcedOne(timers.questionTimeoutS),
    staleAfterS: sourcedOne(timers.staleAfterS),
    standByS: sourcedOne(timers.standByS),
    reannounceS: { high: sourcedOne(high), medium: sourcedOne(medium), low: sourcedOne(low) },
  };
}

/**
 * A file of schema 1 as one of the newest schema, by way of schema 2. What it said is kept; what it could not say is
 * taken from the example, so nobody has approved the whole: its status is `example`, and its caution says so.
 *
 * @param file    of the first shape, with bands that `unsayableBands` lets pass.
 * @param example the bundled protocol.
 * Not for: use without `validateProtocol`: numbers of two files now stand side by side.
 */
export function upgradeOne(file: FileOne, example: Protocol): Protocol {
  const { name, version, owner, date, targets, pressures } = file;
  const spo2Critical = criticalOne(file, "spo2") ?? example.targets.spo2Pct.critical;
  const two: Two = {
    ...example,
    name,
    version,
    owner,
    date,
    status: "example",
    caution: `${file.caution} ${COMPLETED}`,
    targets: {
      ...example.targets,
      populations: example.targets.populations.map((population) => populationOne(file, population)),
      spo2Pct: { target: sourcedOne(targets.spo2Pct), critical: spo2Critical },
    },
    assumedIcpMmHg: sourcedOne(file.assumedIcpMmHg),
    pressures: {
      ...example.pressures,
      halvesWithinS: sourcedOne(pressures.halvesWithinS),
      apartMmHg: sourcedOne(pressures.apartMmHg),
    },
    alerts: alertsOne(file),
    groups: groupsOne(file, example),
    confirm: confirmOne(file),
    timers: timersOne(file, example),
  };
  return completeTwo(two, example);
}
