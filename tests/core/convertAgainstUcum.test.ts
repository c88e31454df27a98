import { UcumLhcUtils } from "@lhncbc/ucum-lhc";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fromCanonical, toCanonical } from "../../src/core/convert.ts";
import { VITALS, type VitalCode } from "../../src/core/vitals.ts";

// The judge is the reference library of the UCUM standard, over the whole entry range of each vital, both ways.

const ucum = UcumLhcUtils.getInstance();
const GLUCOSE_G_PER_MOL = 180.156;

function judge(from: string, value: number, to: string): number {
  const { status, toVal } = ucum.convertUnitTo(from, value, to, { molecularWeight: GLUCOSE_G_PER_MOL });
  if (status !== "succeeded" || toVal === null) throw new Error(`no judgement on ${value} ${from} in ${to}`);
  return toVal;
}

/**
 * UCUM rounds the millimetre of mercury to 133.3220 Pa, NIST has 133.322387415: the two must differ by just that, three
 * parts in a million. UCUM has no glucose: the library is told its molar mass, 180.156 g/mol, which ours rounds to 180.16.
 * Once the constants are set against each other, what is left is what doubles lose.
 */
const MERCURY = 133.322387415 / 133.322;
const GLUCOSE = 18.016 / 18.0156;
const LOST = 1e-12;

type Row = readonly [code: VitalCode, unit: string, ucumCode: string, apart: number];
const ROWS: readonly Row[] = [
  ["sbp", "kPa", "kPa", MERCURY],
  ["etco2", "kPa", "kPa", MERCURY],
  ["icp", "cmH2O", "cm[H2O]", MERCURY],
  ["temp", "degF", "[degF]", 1],
  ["glucose", "mg/dL", "mg/dL", GLUCOSE],
  ["weight", "lb", "[lb_av]", 1],
  ["height", "in", "[in_i]", 1],
  ["age", "mo", "mo", 1],
];

describe("agrees with the UCUM reference library", () => {
  it.each(ROWS)("%s in %s", (code, unit, ucumCode, apart) => {
    const { limits, unit: stored } = VITALS[code];
    fc.assert(
      fc.property(fc.double({ ...limits, noNaN: true }), (value) => {
        const there = judge(stored, value, ucumCode) * apart;
        const ours = fromCanonical(code, value, unit);
        const back = toCanonical(code, there, unit);
        if (!ours.ok || !back.ok) throw new Error("refused");
        expect(Math.abs(ours.value - there)).toBeLessThanOrEqual(LOST * Math.max(1, there));
        expect(Math.abs(back.value - judge(ucumCode, there, stored) / apart)).toBeLessThanOrEqual(
          LOST * Math.max(1, value),
        );
      }),
    );
  });
});
