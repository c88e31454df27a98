import { describe, expect, it } from "vitest";
import { childShock } from "../../src/core/childShockIndex.ts";
import { checkedMmHg as mm } from "../../src/core/mmHg.ts";
import { perMin, years } from "../../src/core/quantities.ts";
import { shockIndex } from "../../src/core/shockIndex.ts";
import { CHILD_LIMITS } from "../tables/shockIndex.ts";
import { taken } from "./taken.ts";

const judged = (age: number, hr: number, sbp: number, limits = CHILD_LIMITS) =>
  childShock(taken(years(age)), taken(shockIndex(taken(perMin(hr)), mm(sbp))), limits);

it("six years, rate 130, systolic 95: high", () => {
  expect(judged(6, 130, 95)).toEqual({ kind: "above", limit: { fromAgeA: 4, belowAgeA: 7, upper: 1.22 } });
});

describe("which limit an age has", () => {
  const ROWS: readonly [age: number, upper: number | undefined][] = [
    [0, undefined],
    [3.99, undefined],
    [4, 1.22],
    [6.99, 1.22],
    [7, 1],
    [12.99, 1],
    [13, 0.9],
    [16.99, 0.9],
    [17, undefined],
    [40, undefined],
  ];
  it.each(ROWS)("%d years: %s", (age, upper) => {
    const found = judged(age, 60, 100);
    expect(found.kind === "no-limit" ? undefined : found.limit.upper).toBe(upper);
  });
});

describe("at the limit is within it", () => {
  it.each([
    [99, 100, "within"],
    [100, 100, "within"],
    [101, 100, "above"],
  ])("eight years, rate %d, systolic %d: %s", (hr, sbp, kind) => expect(judged(8, hr, sbp).kind).toBe(kind));
});

it("no rows, no limit; of two that fit the first counts", () => {
  expect(judged(6, 130, 95, [])).toEqual({ kind: "no-limit" });
  const both = [
    { fromAgeA: 0, belowAgeA: 10, upper: 2 },
    { fromAgeA: 0, belowAgeA: 10, upper: 1 },
  ];
  expect(judged(6, 130, 95, both)).toEqual({ kind: "within", limit: both[0] });
});
