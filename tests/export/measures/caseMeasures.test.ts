import { describe, expect, it } from "vitest";
import { measureCase } from "../../../src/export/measures/caseMeasures.ts";
import { selectWaivedSteps } from "../../../src/export/measures/waivedSteps.ts";
import { WHY_UNKNOWN } from "../../../src/export/measures/measured.ts";
import { built, type BuiltCase } from "./builtCase.ts";

describe("steps waived", () => {
  const ROWS: readonly (readonly [string, (b: BuiltCase) => unknown, unknown])[] = [
    ["the list was not used", (b) => b.say({ sbp: 120 }), { unknown: "list-not-used" }],
    ["read, nothing answered", (b) => b.add({ type: "step.called", stepId: "suction" }), { value: [] }],
    ["none", (b) => (b.answer("a", "done"), b.answer("b", "not-needed"), b.answer("c", "later")), { value: [] }],
    ["in their order", (b) => (b.answer("b", "waived"), b.answer("a", "waived")), { value: ["b", "a"] }],
    ["done after all", (b) => (b.answer("a", "waived"), b.answer("a", "done")), { value: [] }],
    ["waived after all", (b) => (b.answer("a", "later"), b.answer("a", "waived")), { value: ["a"] }],
    ["struck out", (b) => (b.answer("b", "done"), b.strike(...b.answer("a", "waived"))), { value: [] }],
  ];
  it.each(ROWS)("%s", (_name, build, expected) => expect(selectWaivedSteps(built(build))).toEqual(expected));
});

describe("a case of which nothing is known", () => {
  it("has no number anywhere but its count of clock changes", () => {
    const measures = measureCase(built((b) => b.add({ type: "clock.changed", byMs: 3_600_000 })));
    const { floors, ageKnown, clockChanges, around, lowest, ...others } = measures;
    const all = [...floors.map(({ below }) => below), ...Object.values(around), ...Object.values(lowest)];
    for (const measure of [...all, ...Object.values(others)]) expect(Object.keys(measure)).toEqual(["unknown"]);
    expect([ageKnown, clockChanges]).toEqual([false, 1]);
  });
});

it("every reason is told in words of its own", () => {
  const texts = Object.values(WHY_UNKNOWN);
  expect(new Set(texts).size).toBe(texts.length);
});
