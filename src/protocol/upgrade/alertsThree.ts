import type { AlertRule, Population, Protocol } from "../protocol.ts";
import type { FileTwo } from "./schemaTwo.ts";

type AlertTwo = FileTwo["alerts"][number];

/** An alert of schema 2, all of which warned of values that are too low. What counts as worse is taken from the example. */
function alertThree({ bands, ...alert }: AlertTwo, { alerts }: Protocol): AlertRule {
  const like = alerts.find(({ code, side }) => code === alert.code && side === "under");
  return {
    ...alert,
    side: "under",
    bands: bands.map(({ under, ...band }) => ({ at: under, ...band })),
    worseBy: like?.worseBy ?? Math.max(1, alert.clearBy),
  };
}

/** The file's own alerts, then those of the example on what the file did not watch, unless it uses their ids. */
export function alertsThree(alerts: readonly AlertTwo[], example: Protocol): readonly AlertRule[] {
  const ids = new Set(alerts.map(({ id }) => id));
  const watched = new Set<string>(alerts.map(({ code }) => code));
  const added = example.alerts.filter(({ id, code, side }) => !ids.has(id) && (side === "over" || !watched.has(code)));
  return [...alerts.map((alert) => alertThree(alert, example)), ...added];
}

/** A population of schema 2 with the heart rates of the example's that is nearest to it in age, and of its kind. */
export function populationThree(population: Omit<Population, "hrPerMin">, example: Protocol): Population {
  const ofKind = example.targets.populations.filter(({ kind }) => kind === population.kind);
  const byDistance = [...(ofKind.length > 0 ? ofKind : example.targets.populations)].sort(
    (a, b) => Math.abs(a.fromAgeA - population.fromAgeA) - Math.abs(b.fromAgeA - population.fromAgeA),
  );
  const [nearest] = byDistance;
  if (nearest === undefined) throw new Error("an example without a population");
  return { hrPerMin: nearest.hrPerMin, ...population };
}
