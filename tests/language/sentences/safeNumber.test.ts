import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { needsPauses, saySafely, soundsLikeAnother } from "../../../src/language/sentences/safeNumber.ts";
import { VITALS, type VitalCode } from "../../../src/core/vitals.ts";
import type { SaidUnit } from "../../../src/log/facts.ts";
import { sayDigits } from "../../../src/language/sentences/number.ts";

describe("a number that sounds like another one", () => {
  it.each<[VitalCode, number, SaidUnit, string]>([
    ["icp", 15, "mmHg", "fifteen, one five"],
    ["icp", 50, "mmHg", "fifty, five zero"],
    ["icp", 13, "mmHg", "thirteen, one three"],
    ["sbp", 113, "mmHg", "one thirteen, one one three"],
    ["sbp", 150, "mmHg", "one fifty, one five zero"],
    ["sbp", 213, "mmHg", "two thirteen, two one three"],
    ["hr", 130, "/min", "one thirty, one three zero"],
    ["rr", 14, "/min", "fourteen, one four"],
    ["etco2", 40, "mmHg", "forty, four zero"],
    ["etco2", 37.53, "mmHg", "thirty eight"],
    ["weight", 80, "kg", "eighty, eight zero"],
    ["weight", 70.5, "kg", "seventy point five, seven zero point five"],
    ["height", 170, "cm", "one seventy, one seven zero"],
    ["age", 14, "a", "fourteen, one four"],
    ["age", 13, "mo", "thirteen, one three"],
    ["glucose", 13.5, "mmol/L", "thirteen point five, one three point five"],
  ])("%s %d %s is said both ways: %s", (code, value, unit, words) => {
    expect(saySafely(code, value, unit, VITALS[code].decimals)).toBe(words);
  });

  it.each<[VitalCode, number, SaidUnit, string]>([
    ["spo2", 90, "%", "ninety"],
    ["hr", 90, "/min", "ninety"],
    ["dbp", 80, "mmHg", "eighty"],
    ["map", 50, "mmHg", "fifty"],
    ["icp", 22, "mmHg", "twenty two"],
    ["icp", 55, "mmHg", "fifty five"],
    ["sbp", 120, "mmHg", "one twenty"],
    ["sbp", 110, "mmHg", "one ten"],
    ["rr", 12, "/min", "twelve"],
    ["gcsMotor", 5, "{score}", "five"],
  ])("%s %d %s is said once, as no other is possible: %s", (code, value, unit, words) => {
    expect(saySafely(code, value, unit, VITALS[code].decimals)).toBe(words);
  });
});

describe("whatever the number", () => {
  it("the digits are those of what is said, and stand exactly where it sounds like another", () => {
    const value = fc.tuple(
      fc.constantFrom<VitalCode>("sbp", "icp", "rr", "etco2", "age"),
      fc.integer({ min: 0, max: 299 }),
    );
    fc.assert(
      fc.property(value, ([code, n]) => {
        const unit: SaidUnit = code === "rr" ? "/min" : code === "age" ? "a" : "mmHg";
        const [, digits] = saySafely(code, n, unit, 0).split(", ");
        expect(digits).toBe(soundsLikeAnother(code, n, unit, 0) ? sayDigits(n) : undefined);
      }),
    );
  });
});

describe("pauses", () => {
  it.each([
    ["Weight thirty, three zero, kilograms.", true],
    ["Heart rate one thirty, one three zero.", true],
    ["ICP fifteen, one five.", false],
    ["Sats ninety, on target.", false],
    ["Heart rate ninety, sats eighty.", false],
  ])("%s: %s", (text, expected) => {
    expect(needsPauses(text)).toBe(expected);
  });
});
