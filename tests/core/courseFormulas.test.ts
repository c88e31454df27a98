import { expect, it } from "vitest";
import * as cushing from "../../src/core/cushing.ts";
import { courseFormulas } from "../../src/core/formulas/course.ts";
import * as lowPressure from "../../src/core/lowPressure.ts";
import * as lowPressureDose from "../../src/core/lowPressureDose.ts";
import * as neuroChange from "../../src/core/neuroChange.ts";
import * as trend from "../../src/core/trend.ts";
import * as trendSince from "../../src/core/trendSince.ts";

const functions = Object.entries({
  ...cushing,
  ...lowPressure,
  ...lowPressureDose,
  ...neuroChange,
  ...trend,
  ...trendSince,
}).flatMap(([name, value]) => (typeof value === "function" ? [name] : []));

it("every function that works something out has its formula", () => {
  // These two only prepare what `lowPressureTotals` says.
  const computing = functions.filter((name) => name !== "startLowPressure" && name !== "addReading");
  expect(Object.keys(courseFormulas).sort()).toEqual(computing.sort());
});

it("claims to have read a source only where it names one", () => {
  for (const { source } of Object.values(courseFormulas)) {
    expect(source.primaryRead).toBe(source.kind !== "common-practice" && source.kind !== "memory");
    if (source.primaryRead) expect(source.reference).toMatch(/doi:/);
  }
});
