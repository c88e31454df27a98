import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { certaintyOf, STATEMENT_KINDS, verdictOf } from "../../src/listener/certainty.ts";
import { m1 } from "../../src/listener/margins.ts";
import type { Evidence } from "../../src/listener/certaintyModel.ts";
import data from "../../src/listener/certainty.json" with { type: "json" };
import { VECTORS } from "./vectors.ts";

const shape = fc.record({
  lengthMs: fc.integer({ min: 0, max: 12_000 }),
  levelDb: fc.double({ min: -100, max: 0, noNaN: true }),
  noiseDb: fc.double({ min: -100, max: 0, noNaN: true }),
  clipped: fc.boolean(),
});
const evidence: fc.Arbitrary<Evidence> = fc.record({
  m1: fc.double({ min: -10, max: 0, noNaN: true }),
  m2: fc.oneof(fc.double({ min: 0, max: 60, noNaN: true }), fc.constant(Infinity)),
  phones: fc.integer({ min: 0, max: 120 }),
  shape: fc.option(shape, { nil: undefined }),
});

describe("certainty", () => {
  it("is a probability, whatever was heard", () => {
    fc.assert(
      fc.property(evidence, (e) => {
        const certainty = certaintyOf(e);
        expect(certainty).toBeGreaterThanOrEqual(0);
        expect(certainty).toBeLessThanOrEqual(1);
      }),
    );
  });

  it("never falls when the words fit better, nor when the next meaning is further off", () => {
    fc.assert(
      fc.property(evidence, fc.double({ min: 0, max: 5, noNaN: true }), (e, more) => {
        const before = certaintyOf(e);
        expect(certaintyOf({ ...e, m1: Math.min(0, e.m1 + more) })).toBeGreaterThanOrEqual(before - 1e-12);
        expect(certaintyOf({ ...e, m2: e.m2 + more })).toBeGreaterThanOrEqual(before - 1e-12);
      }),
    );
  });

  // Source: the listener's test vectors: every clip is in its grammar but v9.
  it.each(VECTORS)("$name '$text': believed if it was in the grammar", ({ name, best, free, phones }) => {
    const margin = m1(best[0]?.score ?? NaN, { score: free, phones });
    const verdict = verdictOf(certaintyOf({ m1: margin, m2: 20, phones }), "value");
    expect(verdict).toBe(name === "v9" ? "refuse" : "take");
  });

  it("demands more where another meaning is as near as can be: nothing is taken then", () => {
    for (const kind of STATEMENT_KINDS)
      expect(verdictOf(certaintyOf({ m1: 0, m2: 0, phones: 20 }), kind)).not.toBe("take");
  });
});

describe("verdicts", () => {
  it.each(STATEMENT_KINDS)("%s: asking comes before taking, caution after it", (kind) => {
    const { ask, take, takeWithCaution } = data.thresholds[kind];
    expect([0 < ask, ask < take, take <= takeWithCaution, takeWithCaution <= 1]).toEqual([true, true, true, true]);
    expect(verdictOf(take, kind)).toBe("take");
    expect(verdictOf(ask, kind)).toBe("ask");
    expect(verdictOf(ask - 0.001, kind)).toBe("refuse");
  });

  it("caution turns taking into asking, never asking into taking or refusing", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...STATEMENT_KINDS),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (kind, certainty) => {
          const [plain, cautious] = [verdictOf(certainty, kind), verdictOf(certainty, kind, true)];
          expect([plain, `${plain} to ${cautious}`]).toContain(cautious === plain ? plain : "take to ask");
        },
      ),
    );
  });
});
