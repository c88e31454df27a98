import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { defaultProtocol } from "../../../src/protocol/defaultProtocol.ts";
import { respell } from "../../../src/adapters/voice/respell.ts";

// How each word should be spelt for the engine was found by printing the engine's phones (pronunciation.test.ts).
const ROWS: readonly [written: string, spelt: string][] = [
  ["phenylephrine", "fennil effrin"],
  ["Phenylephrine drawn up?", "fennil effrin drawn up?"],
  ["etomidate", "a tommidate"],
  ["fentanyl", "fentanil"],
  ["EtCO2 thirty five.", "E T C O two thirty five."],
  ["SpO2 ninety two", "S P O two ninety two"],
  ["CO₂ low", "C O two low"],
  [
    "MAP seventy seven, CPP under sixty if ICP over seventeen.",
    "MAP seventy seven, CPP under sixty if ICP over seventeen.",
  ],
  ["GCS seven", "GCS seven"],
  ["120/80", "120 over 80"],
  ["120 / 80 mmHg", "120 over 80 millimeeters of mercury"],
  ["12 mm[Hg]", "12 millimeeters of mercury"],
  ["20 cmH2O", "20 centimeters of water"],
  ["4.7 kPa", "4.7 kilopascals"],
  ["5 mL", "5 millileeters"],
  ["5mL", "5 millileeters"],
  ["100 mcg", "100 micrograms"],
  ["100 \u00b5g", "100 micrograms"],
  ["100 \u03bcg", "100 micrograms"],
  ["3 mg", "3 milligrams"],
  ["80 kg", "80 kilograms"],
  ["0.05 mcg/kg/min", "0.05 micrograms per kilogram per minute"],
  ["1 g", "1 grams"],
  ["15 L/min", "15 leeters per minute"],
  ["23 cm", "23 centimeters"],
  ["0.05 mcg/kg/h", "0.05 micrograms per kilogram per hour"],
  ["20 min", "20 minutes"],
  ["5 mL/kg", "5 millileeters per kilogram"],
  ["7 mmol/L", "7 millimoles per leeter"],
  ["92%", "92 percent"],
  ["36.5 °C", "36.5 degrees"],
  ["30 /min", "30 per minute"],
  ["110–120", "110 to 120"],
  ["−3", "minus 3"],
  ["SpO2 ≥ 94%", "S P O two at least 94 percent"],
  ["MAP <90", "MAP under 90"],
  ["2½", "2 and a half"],
  ["café", "cafe"],
  ["kgs and mgs are not units", "kgs and mgs are not units"],
  ["", ""],
];

/** Every unit that the protocol writes anywhere. */
const UNITS_WRITTEN: readonly string[] = [
  ...new Set([...JSON.stringify(defaultProtocol).matchAll(/"unit":"([^"]+)"/g)].map(([, unit]) => unit!)),
].filter((unit) => !["attempts", "size"].includes(unit));
/** Unit symbols of UCUM that the protocol's units are made of; a word that is said must be none of them. */
const SHORT = ["mcg", "mg", "g", "kg", "mmol", "l", "ml", "dl", "h", "min", "mm", "cm", "mmhg", "kpa"];

describe("respell", () => {
  it.each(ROWS)("spells %j as %j", (written, spelt) => {
    expect(respell(written)).toBe(spelt);
  });

  it("hands the engine ASCII only, whatever it is given", () => {
    fc.assert(fc.property(fc.string({ unit: "binary" }), (text) => /^[\x20-\x7e]*$/.test(respell(text))));
  });

  it("leaves every number as it was", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 300 }),
        fc.constantFrom("mmHg", "kPa", "mL", "mcg", "%", "/min"),
        (n, unit) => {
          expect(respell(`${n} ${unit}`).split(" ")[0]).toBe(String(n));
        },
      ),
    );
  });

  it("says every unit of the protocol in full, whatever the number before it", () => {
    expect(UNITS_WRITTEN.length).toBeGreaterThan(15);
    fc.assert(
      fc.property(
        fc.constantFrom(...UNITS_WRITTEN),
        fc.oneof(
          fc.integer({ min: 0, max: 5_000 }),
          fc.integer({ min: 1, max: 999 }).map((n) => n / 100),
        ),
        (unit, n) => {
          const [number, ...words] = respell(`${n} ${unit}`).split(" ");
          expect(number).toBe(String(n));
          expect(words.length).toBeGreaterThan(0);
          for (const word of words) {
            expect(word).toMatch(/^[a-z]+$/);
            expect(SHORT).not.toContain(word);
          }
        },
      ),
    );
  });

  it("changes nothing when what it wrote is respelt", () => {
    for (const [, spelt] of ROWS) expect(respell(spelt)).toBe(spelt);
  });
});
