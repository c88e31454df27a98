import { withinLimits } from "../../core/plausible.ts";
import type { VitalCode } from "../../core/vitals.ts";
import { digitSoundAlikes, soundAlikes } from "../../language/numbers/soundAlikes.ts";
import type { CaseState } from "../../log/caseState.ts";
import type { VitalValue } from "../../log/facts.ts";
import type { HeardBy } from "../../log/heardBy.ts";
import { selectTargets } from "../../log/targets.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import { asSaidVital } from "./saidVital.ts";
import { inCanonicalUnit, unitsForAnother } from "./units.ts";

/** Between which two action edges a value lies. */
const bandOf = (edges: readonly number[], value: number): number => edges.filter((edge) => value >= edge).length;

/** The limits in force for this patient: where one lies between two values, they call for different actions. */
function limitsFor(log: CaseState, protocol: Protocol, code: VitalCode): readonly number[] {
  const { sbpMmHg, mapMmHg, spo2Pct, etco2MmHg } = selectTargets(log, protocol);
  switch (code) {
    case "sbp":
      return [sbpMmHg.target.value, sbpMmHg.critical.value, sbpMmHg.ceiling?.value ?? sbpMmHg.target.value];
    case "map":
      return [mapMmHg.target.value, mapMmHg.critical.value];
    case "spo2":
      return [spo2Pct.target.value, spo2Pct.critical.value];
    case "etco2":
      return [etco2MmHg.low, etco2MmHg.high];
    default:
      return [];
  }
}

/** Would the other value lead to another action? A vital without a rule in the protocol is never taken on trust. */
function matters(log: CaseState, protocol: Protocol, { code, value }: VitalValue, other: number): boolean {
  const rule = protocol.confirm[code];
  if (rule === undefined || rule.soundAlike === "always") return true;
  const edges = [...rule.actionEdges, ...limitsFor(log, protocol, code)];
  return bandOf(edges, value) !== bandOf(edges, other);
}

/**
 * The values within limits that the sound of this one could as well have been (thirteen / thirty and the like), less those
 * that `possible` rules out, e.g. because they contradict the rest of the statement.
 * Digits said one by one are safe; digits that a browser's recogniser wrote are not: nobody knows how they were said.
 */
export function possibleSoundAlikes(
  by: HeardBy,
  value: VitalValue,
  possible: (other: VitalValue) => boolean,
): readonly VitalValue[] {
  const others = by === "browser" ? digitSoundAlikes(value.said.value) : soundAlikes(value.said.words.split(" "));
  return others.flatMap((other) =>
    unitsForAnother(value).flatMap((unit) => {
      const changed = inCanonicalUnit({ ...asSaidVital(value), ...other }, unit);
      return changed !== undefined && withinLimits(changed.code, changed.value) && possible(changed) ? [changed] : [];
    }),
  );
}

/** Those of the possible sound-alikes that would change what is done: they must be asked back. */
export function riskySoundAlikes(
  log: CaseState,
  protocol: Protocol,
  by: HeardBy,
  value: VitalValue,
  possible: (other: VitalValue) => boolean,
): readonly VitalValue[] {
  return possibleSoundAlikes(by, value, possible).filter((other) => matters(log, protocol, value, other.value));
}
