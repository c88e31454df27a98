import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { freshState } from "../../src/app/context.ts";
import { takeUtterance } from "../../src/app/takeTurn.ts";
import { OLDEST_EXACT_A } from "../../src/core/age.ts";
import { VITALS, type VitalCode } from "../../src/core/vitals.ts";
import { wordsToNumber } from "../../src/language/numbers/wordsToNumber.ts";
import { emptyCase } from "../../src/log/caseState.ts";
import type { Fact } from "../../src/log/facts.ts";
import { testContext } from "./playCase.ts";

const context = testContext();

/** How each vital is said here, with the units it may be said in and how far such values reach. */
const SAID: readonly (readonly [VitalCode, string, string, number, number, number])[] = [
  ["sbp", "systolic", "", 30, 300, 1],
  ["dbp", "diastolic", "", 20, 200, 1],
  ["map", "map", "", 20, 250, 1],
  ["hr", "heart rate", "", 20, 260, 1],
  ["rr", "resp rate", "", 2, 80, 1],
  ["spo2", "sats", "", 40, 100, 1],
  ["etco2", "end tidal", "mmHg", 5, 120, 1],
  ["etco2", "end tidal", "kilopascals", 1, 15.9, 0.1],
  ["icp", "icp", "", 0, 100, 1],
  ["icp", "icp", "centimetres of water", 1, 100, 1],
  ["temp", "temp", "celsius", 25, 43, 0.1],
  ["temp", "temp", "fahrenheit", 77, 109, 0.1],
  ["glucose", "glucose", "mmol/L", 1, 50, 0.1],
  ["glucose", "glucose", "mg/dL", 19, 900, 1],
  ["gcsEye", "eyes", "", 1, 4, 1],
  ["gcsVerbal", "verbal", "", 1, 5, 1],
  ["gcsMotor", "motor", "", 1, 6, 1],
  ["pupilLeft", "left pupil", "", 1, 9, 1],
  ["pupilRight", "right pupil", "", 1, 9, 1],
  ["weight", "weight", "kg", 2, 300, 0.1],
  ["weight", "weight", "pounds", 5, 660, 1],
  ["height", "height", "centimetres", 40, 230, 1],
  ["height", "height", "inches", 16, 90, 1],
  ["age", "age", "", 0, 110, 1],
  ["age", "age", "months", 0, 23, 1],
];

const said = fc.constantFrom(...SAID).chain(([code, name, unit, min, max, step]) =>
  fc.integer({ min: Math.ceil(min / step), max: Math.floor(max / step) }).map((n) => ({
    code,
    unit,
    value: Number((n * step).toFixed(1)),
    words: `${name} ${Number((n * step).toFixed(1))} ${unit}`.trim(),
  })),
);

/** The numbers in a reply, read by the number reader and not by the writer of the reply; the voice parts them at its marks. */
const numbersIn = (reply: string): readonly number[] => reply.split(/[.,?]/u).flatMap(numbersInPart);

function numbersInPart(part: string): readonly number[] {
  const words = part.toLowerCase().split(/[^a-z]+/);
  const found: number[] = [];
  for (let from = 0; from < words.length; from++)
    for (let to = words.length; to > from; to--) {
      const number = wordsToNumber(words.slice(from, to));
      if (!number.ok) continue;
      found.push(number.value);
      from = to;
    }
  return found;
}

type Recorded = Extract<Fact, { readonly type: "vital.recorded" }>;

function recording(words: string): {
  readonly facts: readonly Recorded[];
  readonly reply: string;
  readonly outcome: string;
} {
  const utterance = { by: "typed", candidates: [{ words, score: 0 }], endedAtMs: 0 } as const;
  const turn = takeUtterance(context, freshState(emptyCase), utterance, 0);
  const facts = turn.facts.flatMap((f) => (f.type === "vital.recorded" ? [f] : []));
  return { facts, reply: turn.answer?.reply ?? "", outcome: turn.answer?.outcome ?? "none" };
}

describe("what is read back", () => {
  it("is the value that was stored, for every vital and unit", () => {
    fc.assert(
      fc.property(said, ({ code, unit, value, words }) => {
        const { facts, reply, outcome } = recording(words);
        expect([words, outcome]).toEqual([words, "recorded"]);
        const [fact] = facts;
        const kept = code === "age" && unit !== "months" ? Math.min(value, OLDEST_EXACT_A + 1) : value;
        expect([facts.length, fact?.code, fact?.said.value]).toEqual([1, code, kept]);
        if (code === "age" && value > OLDEST_EXACT_A) {
          expect([fact?.value, reply]).toEqual([OLDEST_EXACT_A + 1, "Age over eighty nine."]);
          return;
        }
        const [first, ...others] = numbersIn(reply);
        const stored = fact?.value ?? Number.NaN;
        if (unit === "months") {
          // Read back as it was said; what is stored are years.
          expect(first).toBe(value);
          expect(stored).toBeCloseTo(value / 12, 12);
          return;
        }
        expect(Math.abs((first ?? Number.NaN) - stored)).toBeLessThanOrEqual(0.5 / 10 ** VITALS[code].decimals + 1e-9);
        if (stored !== value) expect(others).toContain(value);
      }),
      { numRuns: 1500 },
    );
  });

  it("is both halves of a pressure", () => {
    const pair = fc
      .tuple(fc.integer({ min: 30, max: 300 }), fc.integer({ min: 20, max: 200 }))
      .filter(([sbp, dbp]) => dbp < sbp);
    fc.assert(
      fc.property(pair, ([sbp, dbp]) => {
        const { facts, reply } = recording(`${sbp}/${dbp}`);
        expect(facts.map((f) => [f.code, f.value])).toEqual([
          ["sbp", sbp],
          ["dbp", dbp],
        ]);
        // Once, or in both ways.
        expect(new Set(numbersIn(reply.split(" over ")[0] ?? ""))).toEqual(new Set([sbp]));
        expect(new Set(numbersIn((reply.split(" over ")[1] ?? "").split(".")[0] ?? ""))).toEqual(new Set([dbp]));
      }),
      { numRuns: 500 },
    );
  });
});
