import { describe, expect, it } from "vitest";
import { VITALS, type VitalCode } from "../../../src/core/vitals.ts";
import {
  sayAge,
  sayPressure,
  saySaid,
  sayVital,
  saidUnitWords,
  showAge,
  showPressure,
  showSaid,
  showUnit,
  showVital,
} from "../../../src/language/sentences/vital.ts";
import type { SaidUnit } from "../../../src/log/facts.ts";

const CODES = Object.keys(VITALS) as VitalCode[];

describe("vitals aloud and printed", () => {
  it.each<[code: VitalCode, value: number, said: string, shown: string]>([
    ["map", 77, "MAP seventy seven", "MAP 77 mmHg"],
    ["map", 76.67, "MAP seventy seven", "MAP 77 mmHg"],
    ["sbp", 110, "systolic one ten", "SBP 110 mmHg"],
    ["spo2", 94, "sats ninety four", "SpO2 94 %"],
    ["etco2", 35, "end tidal thirty five", "EtCO2 35 mmHg"],
    ["hr", 105, "heart rate one oh five", "HR 105 /min"],
    ["icp", 0, "ICP zero", "ICP 0 mmHg"],
    ["temp", 36.5, "temperature thirty six point five", "Temp 36.5 °C"],
    ["temp", 37, "temperature thirty seven", "Temp 37.0 °C"],
    ["glucose", 0.5, "glucose zero point five", "Glucose 0.5 mmol/L"],
    ["gcsMotor", 5, "motor five", "GCS motor 5"],
    ["pupilLeft", 4, "left pupil four", "Left pupil 4 mm"],
    ["weight", 80, "weight eighty, eight zero, kilograms", "Weight 80.0 kg"],
    ["icp", 15, "ICP fifteen, one five", "ICP 15 mmHg"],
    ["sbp", 113, "systolic one thirteen, one one three", "SBP 113 mmHg"],
    ["age", 54, "age fifty four years", "Age 54 years"],
    ["age", 1, "age one year", "Age 1 year"],
    ["age", 0, "age zero years", "Age 0 years"],
  ])("%s %d", (code, value, said, shown) => {
    expect(sayVital(code, value)).toBe(said);
    expect(showVital(code, value)).toBe(shown);
  });

  it("says and prints a pressure, with and without its diastolic", () => {
    expect(sayPressure(110, 60)).toBe("pressure one ten over sixty");
    expect(sayPressure(90, undefined)).toBe("systolic ninety");
    expect(showPressure(110, 60)).toBe("110/60 mmHg");
    expect(showPressure(90, undefined)).toBe("90 mmHg systolic");
  });

  it.each<[code: VitalCode, value: number, unit: SaidUnit, said: string, shown: string]>([
    ["etco2", 4.5, "kPa", "four point five kilopascals", "4.5 kPa"],
    ["icp", 20, "cmH2O", "twenty centimetres of water", "20 cmH2O"],
    ["temp", 98.6, "degF", "ninety eight point six degrees Fahrenheit", "98.6 °F"],
    ["gcsMotor", 5, "{score}", "five", "5"],
    ["age", 6, "mo", "six months", "6 months"],
    ["age", 1, "mo", "one month", "1 month"],
  ])("keeps %s %d %s as it was said", (code, value, unit, said, shown) => {
    expect(saySaid(code, value, unit)).toBe(said);
    expect(showSaid(value, unit)).toBe(shown);
  });

  it("names units in full aloud, by symbol on the screen", () => {
    expect([saidUnitWords("kPa"), showUnit("kPa")]).toEqual(["kilopascals", "kPa"]);
    expect([saidUnitWords("mmHg"), showUnit("mmHg")]).toEqual(["millimetres of mercury", "mmHg"]);
  });

  it.each(CODES)("%s: short enough for four seconds of speech at both limits", (code) => {
    for (const value of [VITALS[code].limits.min, VITALS[code].limits.max]) {
      // 150 words a minute, a slow speaking rate (common practice, no source), is ten words in four seconds.
      const words = sayVital(code, value).replace("ICP", "i c p").split(" ");
      expect(words.length, words.join(" ")).toBeLessThanOrEqual(10);
    }
  });
});

describe("ages", () => {
  it.each([
    [0, "now", "now"],
    [-3000, "now", "now"],
    [4_999, "now", "now"],
    [12_000, "ten seconds", "10 s ago"],
    [43_000, "forty seconds", "40 s ago"],
    [56_000, "one minute", "1 min ago"],
    [60_000, "one minute", "1 min ago"],
    [125_000, "two minutes", "2 min ago"],
    [175_000, "three minutes", "3 min ago"],
    [59.6 * 60_000, "an hour", "1 h ago"],
    [70 * 60_000, "an hour ten", "1 h 10 min ago"],
    [125 * 60_000, "two hours five", "2 h 5 min ago"],
    [26 * 3_600_000, "twenty six hours", "26 h ago"],
  ])("%d ms is %j, %j", (ageMs, said, shown) => {
    expect(sayAge(ageMs)).toBe(said);
    expect(showAge(ageMs)).toBe(shown);
  });
});
