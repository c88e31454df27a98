import { VITALS } from "../../core/vitals.ts";
import type { Population } from "../protocol.ts";

/** A number, or one that grows by each whole year of age. */
export type ByAge = Population["sbpMmHg"]["target"]["value"];

const OLDEST = VITALS.age.limits.max;

/** The youngest and the oldest whole years that a population holds: a limit that grows with age has its ends there. */
export function endsOf({ fromAgeA, belowAgeA }: Population): readonly number[] {
  const first = Math.floor(fromAgeA);
  const last = Math.max(first, Math.min(Math.ceil(belowAgeA) - 1, OLDEST));
  return first === last ? [first] : [first, last];
}

export const valueAt = (value: ByAge, ageA: number): number =>
  typeof value === "number" ? value : value.base + value.perYear * ageA;
