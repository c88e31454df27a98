import type { TubePlan, TubePlanError } from "../../rules/tubePlan.ts";
import { sayNumber } from "./number.ts";
import { sentences } from "./sentence.ts";

/** A size as it is said: always with its half, "seven point zero". */
const size = (mm: number): string => (Number.isInteger(mm) ? `${sayNumber(mm, 0)} point zero` : sayNumber(mm, 1));
const spares = (all: readonly number[]): string | undefined =>
  all.length === 0 ? undefined : `spare ${all.map(size).join(" and ")}`;
const depth = (cm: number): string => `depth ${sayNumber(cm, 1)} centimetres`;

/** The tube for this patient: size, what lies beside it, and how deep. */
export function sayTube(plan: TubePlan): string {
  if (plan.kind === "adult") {
    const { low, high } = plan.sizeMm;
    const range = low === high ? size(low) : `${size(low)} to ${size(high)}`;
    return sentences(`tube ${range}`, spares(plan.sparesMm), depth(plan.depthCm));
  }
  const { cuffedMm, sparesMm, byAge, depthBySizeCm, onlyFromKg } = plan;
  return sentences(
    `cuffed tube ${size(cuffedMm)}`,
    spares(sparesMm),
    byAge && `uncuffed ${size(byAge.uncuffedMm)}`,
    depth(byAge?.depthCm ?? depthBySizeCm),
    onlyFromKg === undefined ? undefined : `only from ${sayNumber(onlyFromKg, 1)} kilograms`,
  );
}

/** Why there is none, and what to say first. */
export const sayNoTube = (error: TubePlanError): string =>
  error.kind === "missing"
    ? `The tube needs the ${error.missing}. Say it first.`
    : "No tube in this protocol for this patient.";
