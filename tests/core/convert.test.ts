import { describe, expect, it } from "vitest";
import { toCanonical } from "../../src/core/convert.ts";
import { VITALS, type VitalCode } from "../../src/core/vitals.ts";
import { CONVERSIONS } from "../tables/conversions.ts";

describe("said units become stored units", () => {
  it.each(CONVERSIONS)("$code $said $unit ($source)", ({ code, said, unit, stored, within }) => {
    const result = toCanonical(code, said, unit);
    if (!result.ok) throw new Error(JSON.stringify(result.error));
    expect(Math.abs(result.value - stored)).toBeLessThanOrEqual(within);
  });
});

/** The unit in which each stored unit is said plainly. */
const PLAIN: Readonly<Record<string, string>> = { "mm[Hg]": "mmHg" };

describe("a value said in its stored unit is unchanged", () => {
  it.each(Object.keys(VITALS) as VitalCode[])("%s", (code) => {
    const { unit, limits } = VITALS[code];
    expect(toCanonical(code, limits.max, PLAIN[unit] ?? unit)).toEqual({ ok: true, value: limits.max });
  });
});

const REFUSED: readonly [VitalCode, number, string, string][] = [
  ["sbp", 120, "/min", "wrong-unit"],
  ["spo2", 97, "mmHg", "wrong-unit"],
  ["temp", 37, "kPa", "wrong-unit"],
  ["weight", 80, "cm", "wrong-unit"],
  ["glucose", 6, "mmHg", "wrong-unit"],
  ["hr", 80, "toString", "wrong-unit"],
  ["map", Number.NaN, "mmHg", "not-a-number"],
  ["map", Number.POSITIVE_INFINITY, "kPa", "not-a-number"],
];

describe("what cannot be converted is refused", () => {
  it.each(REFUSED)("%s %d %s: %s %s", (code, value, unit, kind) => {
    const result = toCanonical(code, value, unit);
    expect(result.ok ? "accepted" : result.error.kind).toBe(kind);
  });
});
