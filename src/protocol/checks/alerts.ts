import { VITALS } from "../../core/vitals.ts";
import { beyond, limitsOf, type Limits } from "../alertLimits.ts";
import { unique, when, type Faults, type Place } from "../fault.ts";
import { isWorse } from "../priority.ts";
import type { AlertRule, Protocol } from "../protocol.ts";
import { resolveTargets, type Targets } from "../resolveTargets.ts";
import { endsOf } from "./ages.ts";

type Band = AlertRule["bands"][number];

/** The targets of every kind of patient: each age, each cause, herniating or not. */
function targetsOfAll(protocol: Protocol): readonly Targets[] {
  const { populations, causes } = protocol.targets;
  // An age that nobody is for is a fault of its own.
  const isCovered = (ageA: number) => populations.some((p) => p.fromAgeA <= ageA && ageA < p.belowAgeA);
  return populations.flatMap((population) =>
    endsOf(population)
      .filter(isCovered)
      .flatMap((ageA) =>
        causes.flatMap(({ id: cause }) =>
          [true, false].map((herniating) => resolveTargets(protocol, { ageA, cause, herniating })),
        ),
      ),
  );
}

const numberOf = ({ at }: Band, limits: Limits): number | undefined => (typeof at === "number" ? at : limits[at]);

/** The two named limits come in their order, each once, before any number. */
const follows = ({ at }: Band, milder: Band): boolean =>
  typeof at === "number" ? true : milder.at === "target" && at === "critical";

function checkBand(rule: AlertRule, i: number, at: Place, all: readonly Limits[]): Faults {
  const band = rule.bands[i];
  const milder = rule.bands[i - 1];
  if (band === undefined) return [];
  const here = [...at, "bands", i];
  const outOfOrder = all.some((limits) => {
    const [from, to] = [milder && numberOf(milder, limits), numberOf(band, limits)];
    return from !== undefined && to !== undefined && beyond(to, from, rule.side) < 0;
  });
  return [
    ...when(
      band.at === "target" && band.inclusive,
      [...here, "inclusive"],
      "a value at its target has no deficit: must be false in a band at the target",
    ),
    ...when(
      milder !== undefined && !follows(band, milder),
      [...here, "at"],
      "the band at the target comes first, then the one at the critical limit, each once",
    ),
    ...when(
      typeof band.at === "number" && outOfOrder,
      [...here, "at"],
      `${String(band.at)} is milder than the band before it in some patient`,
    ),
    ...when(
      typeof band.at === "string" && all.every((limits) => numberOf(band, limits) === undefined),
      [...here, "at"],
      `there is no ${band.at} for ${rule.code} on this side: a number is needed`,
    ),
    ...when(
      milder !== undefined && !isWorse(band.priority, milder.priority),
      [...here, "priority"],
      `${band.priority} is not worse than ${milder?.priority ?? ""}, the priority of the band before it`,
    ),
  ];
}

const isComputed = (code: AlertRule["code"]): code is "cpp" | "cppBound" => code === "cpp" || code === "cppBound";

/** A value must be able to stand as far on the good side as clearing asks for, in every patient. */
function checkClearing(rule: AlertRule, at: Place, all: readonly Limits[]): Faults {
  const [mildest] = rule.bands;
  const { min, max } = VITALS[isComputed(rule.code) ? "map" : rule.code].limits;
  const numbers = all.flatMap((limits) => (mildest === undefined ? [] : (numberOf(mildest, limits) ?? [])));
  if (numbers.length === 0) return [];
  const isUnder = rule.side === "under";
  const from = isUnder ? Math.max(...numbers) + rule.clearBy : Math.min(...numbers) - rule.clearBy;
  return when(
    isUnder ? from > max : from < min,
    [...at, "clearBy"],
    `no value could clear this alert: it would have to reach ${from}, and ${isUnder ? max : min} is the ${isUnder ? "highest" : "lowest"} that is believed`,
  );
}

function checkAlert(rule: AlertRule, at: Place, patients: readonly Targets[]): Faults {
  const all = patients.map((targets) => limitsOf(targets, rule.code, rule.side));
  return [...rule.bands.flatMap((_, i) => checkBand(rule, i, at, all)), ...checkClearing(rule, at, all)];
}

/** What an alert watches, and when: two of them must not be for the same. */
const watchedBy = ({ code, side, phases }: AlertRule): readonly string[] =>
  (phases ?? ["every phase"]).map((phase) =>
    [code, ...(side === "over" ? ["above"] : []), ...(phases ? [phase] : [])].join(" "),
  );

/** Alerts that can be told apart, get worse band by band, and can end. */
export function checkAlerts(protocol: Protocol): Faults {
  const { alerts, timers } = protocol;
  const { most, keptForNew } = timers.alertCap;
  const patients = targetsOfAll(protocol);
  return [
    ...unique(
      alerts.map(({ id }, i) => ({ name: id, at: ["alerts", i, "id"] })),
      "the alert",
    ),
    ...unique(
      alerts.flatMap((rule, i) => watchedBy(rule).map((name) => ({ name, at: ["alerts", i, "code"] }))),
      "an alert on",
    ),
    ...alerts.flatMap((rule, i) => checkAlert(rule, ["alerts", i], patients)),
    ...when(
      keptForNew.value >= most.value,
      ["timers", "alertCap", "keptForNew", "value"],
      `${keptForNew.value} kept for new alerts leaves none of ${most.value} for the others`,
    ),
  ];
}
