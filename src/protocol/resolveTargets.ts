import type { Source } from "../core/derivation.ts";
import type { Cause, Population, Protocol, Sourced } from "./protocol.ts";

/** What decides which targets count. */
export type Traits = {
  /** Years; none: not recorded. */
  readonly ageA: number | undefined;
  readonly cause: Cause;
  /** Herniation is suspected or being treated. */
  readonly herniating: boolean;
};

/** One limit as it holds for this patient, with its place in the protocol file. */
export type Limit = { readonly value: number; readonly path: string; readonly source: Source };
export type LimitRange = {
  readonly low: number;
  readonly high: number;
  readonly path: string;
  readonly source: Source;
};
export type Floor = { readonly target: Limit; readonly critical: Limit };

export type Targets = {
  readonly population: Population;
  /** False: the population was taken because no age is known. Then that is said. */
  readonly ageKnown: boolean;
  readonly cause: Cause;
  /** `forAge`: what the age asks for, whatever cause and herniation ask on top of it. */
  readonly sbpMmHg: Floor & { readonly forAge: Limit; readonly ceiling?: Limit };
  readonly mapMmHg: Floor;
  readonly cppMmHg: Floor & { readonly noGainAbove: Limit };
  readonly spo2Pct: Floor;
  readonly icpTreatAboveMmHg: Limit;
  readonly etco2MmHg: LimitRange;
  readonly hrPerMin: { readonly target: LimitRange; readonly critical: LimitRange };
  readonly tempCel: { readonly hold: LimitRange; readonly treatFrom: Limit };
  readonly glucoseMmolPerL: { readonly hold: LimitRange; readonly treatBelow: Limit };
  /** A ceiling that does not count now, and why: it would oppose a floor. */
  readonly suspended: readonly { readonly limit: Limit; readonly why: "herniation" }[];
};

type ByAge = number | { readonly base: number; readonly perYear: number };

const atAge = (value: ByAge, ageA: number): number =>
  typeof value === "number" ? value : value.base + value.perYear * Math.floor(ageA);

const limitOf = ({ value, source }: Sourced<ByAge>, path: string, ageA: number): Limit => ({
  value: atAge(value, ageA),
  path,
  source,
});

const rangeOf = ({ value, source }: Sourced<{ low: number; high: number }>, path: string): LimitRange => ({
  ...value,
  path,
  source,
});

type Chosen = { readonly population: Population; readonly index: number; readonly ageA: number };

/** The population of an age; that of the protocol's choice while none is known. A validated protocol has both. */
function choose({ populations, unknownAge }: Protocol["targets"], ageA: number | undefined): Chosen {
  const fits = (p: Population) =>
    ageA === undefined ? p.id === unknownAge.value : p.fromAgeA <= ageA && ageA < p.belowAgeA;
  const index = populations.findIndex(fits);
  const population = populations[index];
  if (population === undefined) throw new Error(`no population for age ${ageA ?? "unknown"}`);
  return { population, index, ageA: ageA ?? population.fromAgeA };
}

function floorOf(floor: { target: Sourced<ByAge>; critical: Sourced<ByAge> }, path: string, ageA: number): Floor {
  return {
    target: limitOf(floor.target, `${path}.target`, ageA),
    critical: limitOf(floor.critical, `${path}.critical`, ageA),
  };
}

/** The higher of two limits; the first where they are the same. */
const higher = (a: Limit, b: Limit): Limit => (b.value > a.value ? b : a);

/** While the brain herniates, the mean must carry the perfusion target with the ICP that is then assumed. */
function meanFloor(ofAge: Floor, cppTarget: number, { targets }: Protocol, herniating: boolean): Floor {
  if (!herniating) return ofAge;
  const { value, source } = targets.herniation.assumedIcpMmHg;
  const raised = { value: cppTarget + value, path: "targets.herniation.assumedIcpMmHg", source };
  return { ...ofAge, target: higher(ofAge.target, raised) };
}

/** The systolic of an adult whose brain herniates has a floor of its own. */
function systolicFloor(ofAge: Floor, isAdult: boolean, { targets }: Protocol, herniating: boolean): Floor {
  if (!herniating || !isAdult) return ofAge;
  const { value, source } = targets.herniation.sbpMmHg;
  return { ...ofAge, target: higher(ofAge.target, { value, path: "targets.herniation.sbpMmHg", source }) };
}

/** A range for the cause: its lower end counts where it asks for more than the age does, its upper end unless spared. */
function withCause(ofAge: Floor, isAdult: boolean, protocol: Protocol, { cause, herniating }: Traits) {
  const floor = { ...systolicFloor(ofAge, isAdult, protocol, herniating), forAge: ofAge.target };
  const index = protocol.targets.causes.findIndex((c) => c.id === cause);
  const bounds = protocol.targets.causes[index]?.sbpRangeMmHg;
  // These ranges were set for adults; a child's systolic would be judged by a number that was never meant for it.
  if (bounds === undefined || !isAdult) return { sbpMmHg: floor, suspended: [] };
  const path = `targets.causes[${index}].sbpRangeMmHg`;
  const low: Limit = { value: bounds.value.low, path, source: bounds.source };
  const ceiling: Limit = { value: bounds.value.high, path, source: bounds.source };
  const target = higher(floor.target, low);
  const spared = herniating && protocol.targets.herniationSparesPressure.value;
  return spared
    ? { sbpMmHg: { ...floor, target }, suspended: [{ limit: ceiling, why: "herniation" as const }] }
    : { sbpMmHg: { ...floor, target, ceiling }, suspended: [] };
}

/**
 * The targets that hold for one patient.
 *
 * @param traits age, cause and herniation as recorded so far. Until an age is known the protocol's choice of population counts.
 * @returns      every limit with its value at this age and its place in the protocol file.
 *
 * Not for: judging a value. Not for a protocol that was not validated: it may have no population for an age.
 */
export function resolveTargets(protocol: Protocol, traits: Traits): Targets {
  const { targets } = protocol;
  const { population, index, ageA } = choose(targets, traits.ageA);
  const path = `targets.populations[${index}]`;
  const etco2 = traits.herniating ? "herniation" : "usual";
  const cpp = floorOf(population.cppMmHg, `${path}.cppMmHg`, ageA);
  const map = floorOf(population.mapMmHg, `${path}.mapMmHg`, ageA);
  return {
    population,
    ageKnown: traits.ageA !== undefined,
    cause: traits.cause,
    ...withCause(floorOf(population.sbpMmHg, `${path}.sbpMmHg`, ageA), population.kind === "adult", protocol, traits),
    mapMmHg: meanFloor(map, cpp.target.value, protocol, traits.herniating),
    cppMmHg: {
      ...cpp,
      noGainAbove: limitOf(population.cppMmHg.noGainAbove, `${path}.cppMmHg.noGainAbove`, ageA),
    },
    spo2Pct: floorOf(targets.spo2Pct, "targets.spo2Pct", ageA),
    icpTreatAboveMmHg: limitOf(population.icpTreatAboveMmHg, `${path}.icpTreatAboveMmHg`, ageA),
    etco2MmHg: rangeOf(targets.etco2MmHg[etco2], `targets.etco2MmHg.${etco2}`),
    hrPerMin: {
      target: rangeOf(population.hrPerMin.target, `${path}.hrPerMin.target`),
      critical: rangeOf(population.hrPerMin.critical, `${path}.hrPerMin.critical`),
    },
    tempCel: {
      hold: rangeOf(targets.tempCel.hold, "targets.tempCel.hold"),
      treatFrom: limitOf(targets.tempCel.treatFrom, "targets.tempCel.treatFrom", ageA),
    },
    glucoseMmolPerL: {
      hold: rangeOf(targets.glucoseMmolPerL.hold, "targets.glucoseMmolPerL.hold"),
      treatBelow: limitOf(targets.glucoseMmolPerL.treatBelow, "targets.glucoseMmolPerL.treatBelow", ageA),
    },
  };
}
