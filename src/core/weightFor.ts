import { adjustedWeight, leanWeight } from "./bodyMass.ts";
import { formulaHeight, idealWeight, type BelowFormulaHeight, type Sex } from "./bodySize.ts";
import type { WeightScalar } from "./doseUnits.ts";
import type { Cm, Kg, Years } from "./quantity.ts";
import { fail, ok, type Result } from "./result.ts";
import type { Weight } from "./weight.ts";
import { weightByAge } from "./weightByAge.ts";

/** What is known of the patient's size. `isChild` is the protocol's judgement, not this file's. */
export type Body = {
  readonly isChild: boolean;
  /** The weight of this body as it is: by scales, by report or by guess. */
  readonly actual?: Weight | undefined;
  readonly heightCm?: Cm | undefined;
  readonly sex?: Sex | undefined;
  readonly ageA?: Years | undefined;
};

/** The weight that a dose goes by, and how it came to be that one. */
export type ScaledWeight = Weight & {
  /** The one that was asked for … */
  readonly scalar: WeightScalar;
  /** … and the one that it is. */
  readonly scalarUsed: WeightScalar;
  /** Why another scalar is used than was asked for: the formulas of the others are for adults. */
  readonly reason?: "child";
  /** The formula gave more than the patient weighs, so the actual weight is used. */
  readonly limitedByActual: boolean;
};

export type MissingForWeight =
  /** Everything that must still be said, and nothing that is known or would not help. */
  { readonly kind: "missing"; readonly missing: readonly ("weight" | "height" | "sex")[] } | BelowFormulaHeight;

/**
 * The weight that a dose goes by, from what is known of the patient.
 *
 * @param scalar which weight the dose asks for.
 * @param body   what is known; height in cm, age in years.
 * @returns      kg, unrounded, and whether measured, computed or estimated. A child's is always the actual weight, or else
 *               the estimate by age. No adult's is over a known actual weight. Otherwise `missing` with what must be said,
 *               or `below-formula-height` for the ideal and adjusted weight of an adult under 152.4 cm.
 *
 * Not for: tidal volumes; see `predictedWeight`.
 * Source: common practice, no source: the adult formulas are not for children, and the lower of two weights is the safer.
 */
export function weightFor(scalar: WeightScalar, body: Body): Result<ScaledWeight, MissingForWeight> {
  if (scalar === "actual" || body.isChild) return actualFor(scalar, body);
  if (scalar === "lean") return leanFor(body);
  const { actual, heightCm, sex } = body;
  const height = heightCm === undefined ? undefined : formulaHeight(heightCm);
  // Before anything is asked: no answer could help a patient whom the formula does not cover.
  if (height?.ok === false) return height;
  if (height === undefined || sex === undefined) return fail(whatIsMissing(scalar, body));
  const idealKg = idealWeight(height.value, sex);
  if (scalar === "ideal") return ok(lower(scalar, { kg: idealKg, kind: "computed" }, actual));
  if (actual === undefined) return fail(whatIsMissing(scalar, body));
  return ok(lower(scalar, from(actual, adjustedWeight(actual.kg, idealKg)), actual));
}

function actualFor(scalar: WeightScalar, { actual, isChild, ageA }: Body): Result<ScaledWeight, MissingForWeight> {
  const weight = actual ?? (isChild && ageA !== undefined ? estimateByAge(ageA) : undefined);
  if (weight === undefined) return fail({ kind: "missing", missing: ["weight"] });
  const why = scalar === "actual" ? {} : ({ reason: "child" } as const);
  return ok({ ...weight, scalar, scalarUsed: "actual", ...why, limitedByActual: false });
}

function estimateByAge(ageA: Years): Weight | undefined {
  const guess = weightByAge(ageA);
  return guess.ok ? { kg: guess.value, kind: "estimated" } : undefined;
}

function leanFor(body: Body): Result<ScaledWeight, MissingForWeight> {
  const { actual, heightCm, sex } = body;
  if (actual === undefined || heightCm === undefined || sex === undefined) return fail(whatIsMissing("lean", body));
  return ok(lower("lean", from(actual, leanWeight(actual.kg, heightCm, sex)), actual));
}

function whatIsMissing(scalar: WeightScalar, body: Body): MissingForWeight {
  const missing: ("weight" | "height" | "sex")[] = [];
  if (scalar !== "ideal" && body.actual === undefined) missing.push("weight");
  if (body.heightCm === undefined) missing.push("height");
  if (body.sex === undefined) missing.push("sex");
  return { kind: "missing", missing };
}

const from = (actual: Weight, kg: Kg): Weight => ({
  kg,
  kind: actual.kind === "estimated" ? "estimated" : "computed",
});

const lower = (scalar: WeightScalar, formula: Weight, actual: Weight | undefined): ScaledWeight =>
  actual !== undefined && actual.kg < formula.kg
    ? { ...actual, scalar, scalarUsed: "actual", limitedByActual: true }
    : { ...formula, scalar, scalarUsed: scalar, limitedByActual: false };
