import { withinLimits } from "../../core/plausible.ts";
import type { VitalCode } from "../../core/vitals.ts";
import { digitSoundAlikes, soundAlikes } from "../../language/numbers/soundAlikes.ts";
import type { HeardBy, VitalValue } from "../../log/facts.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import { asSaidVital } from "./saidVital.ts";
import { inCanonicalUnit } from "./units.ts";

/** Between which two action edges a value lies. */
const bandOf = (edges: readonly number[], value: number): number => edges.filter((edge) => value >= edge).length;

/** Would the other value lead to another action? A vital without a rule in the protocol is never taken on trust. */
function matters(protocol: Protocol, code: VitalCode, value: number, other: number): boolean {
  const rule = protocol.confirm[code];
  if (rule === undefined || rule.soundAlike === "always") return true;
  return bandOf(rule.actionEdges, value) !== bandOf(rule.actionEdges, other);
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
  return others.flatMap((other) => {
    const changed = inCanonicalUnit({ ...asSaidVital(value), ...other }, value.said.unit);
    return changed !== undefined && withinLimits(changed.code, changed.value) && possible(changed) ? [changed] : [];
  });
}

/** Those of the possible sound-alikes that would change what is done: they must be asked back. */
export function riskySoundAlikes(
  protocol: Protocol,
  by: HeardBy,
  value: VitalValue,
  possible: (other: VitalValue) => boolean,
): readonly VitalValue[] {
  return possibleSoundAlikes(by, value, possible).filter((other) =>
    matters(protocol, value.code, value.value, other.value),
  );
}
