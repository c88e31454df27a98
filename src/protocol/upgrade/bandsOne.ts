import { when, type Faults } from "../fault.ts";
import type { FileOne } from "./schemaOne.ts";
import { sourceOne } from "./sourceOne.ts";

type AlertOne = FileOne["alerts"][number];
export type CodeOne = AlertOne["code"];

const targetOf = ({ targets }: FileOne, code: CodeOne): number =>
  ({ sbp: targets.sbpMmHg, map: targets.mapMmHg, cpp: targets.cppMmHg, spo2: targets.spo2Pct })[code].value;

/**
 * What the later shape cannot say: a band must lie at the target or be the one critical limit of what it watches. Two
 * alerts on one value were never allowed.
 */
export function unsayableBands(file: FileOne): Faults {
  return file.alerts.flatMap(({ code, bands }, a) => {
    const target = targetOf(file, code);
    return bands.flatMap(({ below }, b): Faults => {
      const at = ["alerts", a, "bands", b, "below"];
      const afterTarget = b === 0 || (b === 1 && bands[0]?.below === target);
      return [
        ...when(below > target, at, `${below} is above the target of ${target}`),
        ...when(
          below <= target && !afterTarget,
          at,
          `${below} cannot be kept: schema 2 has one band under the target and one under a critical limit`,
        ),
      ];
    });
  });
}

/** The band that becomes the critical limit of a value; none where the file warned at the target alone, or not at all. */
export function criticalOne(file: FileOne, code: CodeOne) {
  const target = targetOf(file, code);
  const band = file.alerts.find((alert) => alert.code === code)?.bands.find(({ below }) => below < target);
  return band && { value: band.below, source: sourceOne(band.source) };
}

/** The alerts with their bands at the limits that `criticalOne` and the targets give. */
export const alertsOne = (file: FileOne) =>
  file.alerts.map(({ source, bands, ...alert }: AlertOne) => ({
    ...alert,
    bands: bands.map(({ below, inclusive, priority, source: bandSource }) => ({
      under: below === targetOf(file, alert.code) ? ("target" as const) : ("critical" as const),
      inclusive,
      priority,
      source: sourceOne(bandSource),
    })),
    source: sourceOne(source),
  }));
