import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fromCanonical, toCanonical } from "../../src/core/convert.ts";
import { VITALS, type VitalCode } from "../../src/core/vitals.ts";
import { checkRows } from "../tables/checkRows.ts";
import { FROM_STORED, TO_STORED, type Conversion } from "../tables/conversions.ts";

type Way = typeof toCanonical;
const WAYS: readonly [string, Way][] = [
  ["to the stored unit", toCanonical],
  ["from the stored unit", fromCanonical],
];

const converted =
  (way: Way) =>
  ({ code, value, unit }: Conversion): number => {
    const result = way(code, value, unit);
    if (!result.ok) throw new Error(JSON.stringify(result.error));
    return result.value;
  };
const toStored = converted(toCanonical);
const fromStored = converted(fromCanonical);

checkRows("said units become stored units", TO_STORED, toStored);
checkRows("stored units become others", FROM_STORED, fromStored);

/** The unit in which each stored unit is said plainly. */
const PLAIN: Readonly<Record<string, string>> = { "mm[Hg]": "mmHg" };
const CODES = Object.keys(VITALS) as VitalCode[];

describe.each(WAYS)("%s", (_name, way) => {
  it.each(CODES)("%s in its stored unit is unchanged", (code) => {
    const { unit, limits } = VITALS[code];
    expect(way(code, limits.max, PLAIN[unit] ?? unit)).toEqual({ ok: true, value: limits.max });
  });

  const WRONG: readonly [VitalCode, string][] = [
    ["sbp", "/min"],
    ["spo2", "mmHg"],
    ["temp", "kPa"],
    ["weight", "cm"],
    ["weight", "mo"],
    ["glucose", "mmHg"],
    ["age", "years"],
    ["hr", "toString"],
  ];
  it.each(WRONG)("%s in %s is refused", (code, unit) => {
    expect(way(code, 80, unit)).toEqual({ ok: false, error: { kind: "wrong-unit", code, unit } });
  });

  it.each([NaN, Infinity, -Infinity])("%d is refused", (value) => {
    expect(way("map", value, "mmHg")).toEqual({ ok: false, error: { kind: "not-a-number" } });
  });
});

it("a number too large for the other unit is refused, not made infinite", () => {
  expect(toCanonical("map", 1e306, "kPa")).toEqual({ ok: false, error: { kind: "not-a-number" } });
  expect(fromCanonical("map", 1e307, "kPa")).toEqual({ ok: false, error: { kind: "not-a-number" } });
});

const OTHERS: readonly [VitalCode, string][] = [
  ["etco2", "kPa"],
  ["icp", "cmH2O"],
  ["temp", "degF"],
  ["glucose", "mg/dL"],
  ["weight", "lb"],
  ["height", "in"],
  ["age", "mo"],
];

describe("properties", () => {
  it.each(OTHERS)("%s to %s and back is the same value", (code, unit) => {
    const { min, max } = VITALS[code].limits;
    fc.assert(
      fc.property(fc.double({ min, max, noNaN: true }), (value) => {
        const back = toStored({ code, value: fromStored({ code, value, unit }), unit });
        expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-12 * Math.max(1, value));
      }),
    );
  });

  it.each(OTHERS)("more %s is more in %s", (code, unit) => {
    const { min, max } = VITALS[code].limits;
    fc.assert(
      fc.property(
        fc.double({ min, max: max - 1, noNaN: true }),
        fc.double({ min: 0.001, max: 1, noNaN: true }),
        (v, more) => {
          expect(fromStored({ code, value: v + more, unit })).toBeGreaterThan(fromStored({ code, value: v, unit }));
        },
      ),
    );
  });

  it("never gives a number that is not finite, whatever comes in", () => {
    const units = fc.constantFrom("mmHg", "kPa", "cmH2O", "degF", "mg/dL", "lb", "in", "mo", "", "__proto__");
    fc.assert(
      fc.property(
        fc.constantFrom(...CODES),
        fc.double(),
        units,
        fc.constantFrom(...WAYS),
        (code, value, unit, [, way]) => {
          const result = way(code, value, unit);
          expect(!result.ok || Number.isFinite(result.value)).toBe(true);
        },
      ),
    );
  });
});
