import { expect, it } from "vitest";
import { fitLogistic } from "./logisticFit.ts";

/**
 * Hours of study and whether the examination was passed, the usual teaching example of logistic regression: intercept
 * −4.1, slope 1.5 (printed to one decimal; the table is quoted from memory).
 */
const HOURS = [0.5, 0.75, 1, 1.25, 1.5, 1.75, 1.75, 2, 2.25, 2.5, 2.75, 3, 3.25, 3.5, 4, 4.25, 4.5, 4.75, 5, 5.5];
const PASSED = [0, 0, 0, 0, 0, 0, 1, 0, 1, 0, 1, 0, 1, 0, 1, 1, 1, 1, 1, 1];

it("finds the weights of a known example", () => {
  const observations = HOURS.map((hours, i) => ({ features: [1, hours], isSo: PASSED[i] === 1, weight: 1 }));
  const [intercept, slope] = fitLogistic(observations, 0);
  expect(intercept).toBeCloseTo(-4.1, 1);
  expect(slope).toBeCloseTo(1.5, 1);
});

it("counts an observation of double weight twice", () => {
  const once = HOURS.map((hours, i) => ({ features: [1, hours], isSo: PASSED[i] === 1, weight: 1 }));
  const [first, ...rest] = once;
  const doubled = fitLogistic([{ ...first!, weight: 2 }, ...rest], 0);
  const twice = fitLogistic([first!, ...once], 0);
  doubled.forEach((weight, i) => expect(weight).toBeCloseTo(twice[i]!, 9));
});

it("keeps what cannot be told apart finite by the ridge, and refuses it without", () => {
  const parted = [0, 1].map((x) => ({ features: [1, x], isSo: x === 1, weight: 1 }));
  expect(fitLogistic(parted, 0.1).every(Number.isFinite)).toBe(true);
  expect(() => fitLogistic(parted, 0)).toThrow();
  expect(() => fitLogistic([], 1)).toThrow("nothing to fit");
});
