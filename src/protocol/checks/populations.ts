import type { Limits } from "../../core/quantity.ts";
import { VITALS } from "../../core/vitals.ts";
import { unique, when, within, type Faults, type Place } from "../fault.ts";
import type { Population, Protocol } from "../protocol.ts";
import { endsOf, valueAt, type ByAge } from "./ages.ts";

const PLACE = ["targets", "populations"] as const;
const OLDEST = VITALS.age.limits.max;

/** Every age has one set of targets and no more. The list may be in any order. */
function checkCover(populations: readonly Population[]): Faults {
  const byAge = populations.map((p, i) => ({ ...p, i })).sort((a, b) => a.fromAgeA - b.fromAgeA);
  const oldest = byAge.reduce((max, p) => Math.max(max, p.belowAgeA), 0);
  return byAge.flatMap(({ i, id, fromAgeA, belowAgeA }, order): Faults => {
    const before = order === 0 ? 0 : byAge.slice(0, order).reduce((max, p) => Math.max(max, p.belowAgeA), 0);
    return [
      ...when(fromAgeA > before, [...PLACE, i, "fromAgeA"], `ages ${before} to ${fromAgeA} have no targets`),
      ...when(
        fromAgeA < before,
        [...PLACE, i, "fromAgeA"],
        `ages from ${fromAgeA} to ${Math.min(before, belowAgeA)} have targets already`,
      ),
      ...when(
        belowAgeA <= fromAgeA,
        [...PLACE, i, "belowAgeA"],
        `${belowAgeA} is not above ${fromAgeA}: "${id}" holds no age`,
      ),
      ...when(
        order === byAge.length - 1 && oldest <= OLDEST,
        [...PLACE, i, "belowAgeA"],
        `ages from ${oldest} to ${OLDEST} have no targets`,
      ),
    ];
  });
}

/** `age 4: `, where a limit grows with age; nothing where it does not. */
const atAge = (ageA: number, ...values: readonly ByAge[]): string =>
  values.every((v) => typeof v === "number") ? "" : `at age ${ageA}, `;

function checkLimits(value: ByAge, ends: readonly number[], limits: Limits, at: Place): Faults {
  return ends
    .flatMap((ageA) =>
      within(limits, valueAt(value, ageA), at).map((f) => ({ ...f, message: atAge(ageA, value) + f.message })),
    )
    .slice(0, typeof value === "number" ? 1 : undefined);
}

/** What has a floor of two limits. */
type FloorCode = "sbp" | "map" | "cpp" | "spo2";

/** An alert that could be raised without a deficit, or two bands at one number, need the limits to be apart. */
function mustDiffer(protocol: Protocol, code: FloorCode): boolean {
  return protocol.alerts.some(
    ({ code: watched, bands }) =>
      watched === code && (bands.length > 1 || bands.some((band) => band.at === "critical" && band.inclusive)),
  );
}

type FloorOf = { readonly target: { readonly value: ByAge }; readonly critical: { readonly value: ByAge } };

/** The two limits of one pressure: believable, and the critical one under the target, at every age it is for. */
export function checkFloor(
  { target, critical }: FloorOf,
  code: FloorCode,
  ends: readonly number[],
  protocol: Protocol,
  at: Place,
): Faults {
  // CPP is not recorded but computed; its numbers must make sense as those of a mean pressure do.
  const { limits } = VITALS[code === "cpp" ? "map" : code];
  const strict = mustDiffer(protocol, code);
  const crossed = ends.flatMap((ageA): Faults => {
    const [high, low] = [valueAt(target.value, ageA), valueAt(critical.value, ageA)];
    const where = [...at, "critical", "value"];
    const age = atAge(ageA, target.value, critical.value);
    if (low > high) return [{ at: where, message: `${age}${low} is above the target of ${high}` }];
    return when(strict && low === high, where, `${age}${low} must be below the target of ${high}`);
  });
  return [
    ...checkLimits(target.value, ends, limits, [...at, "target", "value"]),
    ...checkLimits(critical.value, ends, limits, [...at, "critical", "value"]),
    ...(typeof target.value === "number" && typeof critical.value === "number" ? crossed.slice(0, 1) : crossed),
  ];
}

/** Rates that can be believed, the usual ones inside those outside which it is an emergency. */
function checkRates({ hrPerMin }: Population, at: Place): Faults {
  const { target, critical } = hrPerMin;
  const here = [...at, "hrPerMin"];
  return [
    ...[target, critical].flatMap(({ value: { low, high } }, i) => {
      const range = [...here, i === 0 ? "target" : "critical", "value"];
      return [
        ...within(VITALS.hr.limits, low, [...range, "low"]),
        ...within(VITALS.hr.limits, high, [...range, "high"]),
        ...when(low >= high, [...range, "low"], `${low} is not below ${high}`),
      ];
    }),
    ...when(
      critical.value.low >= target.value.low || critical.value.high <= target.value.high,
      [...here, "critical", "value"],
      `${critical.value.low} to ${critical.value.high} must lie outside ${target.value.low} to ${target.value.high}`,
    ),
  ];
}

function checkPopulation(population: Population, i: number, protocol: Protocol): Faults {
  const ends = endsOf(population);
  const at = [...PLACE, i];
  const { cppMmHg, icpTreatAboveMmHg } = population;
  const noGain = cppMmHg.noGainAbove.value;
  const highest = Math.max(...ends.map((ageA) => valueAt(cppMmHg.target.value, ageA)));
  const noGainAt = [...at, "cppMmHg", "noGainAbove", "value"];
  return [
    ...checkFloor(population.sbpMmHg, "sbp", ends, protocol, [...at, "sbpMmHg"]),
    ...checkFloor(population.mapMmHg, "map", ends, protocol, [...at, "mapMmHg"]),
    ...checkFloor(cppMmHg, "cpp", ends, protocol, [...at, "cppMmHg"]),
    ...within(VITALS.map.limits, noGain, noGainAt),
    ...when(noGain < highest, noGainAt, `${noGain} is below the target of ${highest}`),
    ...within(VITALS.icp.limits, icpTreatAboveMmHg.value, [...at, "icpTreatAboveMmHg", "value"]),
    ...checkRates(population, at),
  ];
}

/** Whom the pressure targets are for, and whether these can be meant. */
export function checkPopulations(protocol: Protocol): Faults {
  const { populations, unknownAge } = protocol.targets;
  const known = populations.map((p) => p.id);
  return [
    ...unique(
      populations.map(({ id }, i) => ({ name: id, at: [...PLACE, i, "id"] })),
      "the population",
    ),
    ...checkCover(populations),
    ...populations.flatMap((population, i) => checkPopulation(population, i, protocol)),
    ...when(
      !known.includes(unknownAge.value),
      ["targets", "unknownAge", "value"],
      `no population is called "${unknownAge.value}"; there are: ${known.join(", ")}`,
    ),
  ];
}
