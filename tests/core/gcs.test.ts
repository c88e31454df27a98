import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { gcsParts, gcsPupils, gcsSeverity, gcsTotal, type GcsParts } from "../../src/core/gcs.ts";
import type { Score } from "../../src/core/quantity.ts";
import { checkRows } from "../tables/checkRows.ts";
import { GCS_P_ROWS, GCS_ROWS } from "../tables/neuro.ts";

const NT = "not-testable";
const score = (n: number): Score => n as Score;

checkRows("total", GCS_ROWS, (parts) => {
  const total = gcsTotal(parts);
  return total.ok ? total.value : NaN;
});
checkRows("total with pupils", GCS_P_ROWS, ({ total, fixed }) => gcsPupils(score(total), fixed));

describe("the door", () => {
  it.each<GcsParts>([
    { eye: 1, verbal: 1, motor: 1 },
    { eye: 4, verbal: 5, motor: 6 },
    { eye: 1, verbal: NT, motor: 4 },
    { eye: NT, verbal: NT, motor: NT },
    { eye: 3 },
    {},
  ])("passes %j", (parts) => expect(gcsParts(parts)).toEqual({ ok: true, value: parts }));
  it.each([
    ["eye", 4, [0, 5, -1, 2.5, NaN, Infinity]],
    ["verbal", 5, [0, 6, 1.5, NaN]],
    ["motor", 6, [0, 7, 5.5, NaN]],
  ] as const)("refuses what is not a score of %s, 1 to %d", (part, max, wrong) => {
    for (const value of wrong) {
      expect(gcsParts({ eye: 1, verbal: 1, motor: 1, [part]: value })).toEqual({
        ok: false,
        error: { kind: "no-such-score", part, min: 1, max },
      });
    }
  });
  it("names the first that is wrong", () => {
    expect(gcsParts({ eye: 9, verbal: 9, motor: 9 })).toMatchObject({ error: { part: "eye" } });
    expect(gcsParts({ verbal: 9, motor: 9 })).toMatchObject({ error: { part: "verbal" } });
  });
});

describe("no total", () => {
  const none = (notTestable: string[], missing: string[]) => ({
    ok: false,
    error: { kind: "no-total", notTestable, missing },
  });
  it.each<[GcsParts, string[], string[]]>([
    [{ eye: 1, verbal: NT, motor: 4 }, ["verbal"], []],
    [{ eye: NT, verbal: NT, motor: 6 }, ["eye", "verbal"], []],
    [{ eye: 4, verbal: 5, motor: NT }, ["motor"], []],
    [{ eye: 4, verbal: 5 }, [], ["motor"]],
    [{ verbal: NT, motor: 6 }, ["verbal"], ["eye"]],
    [{}, [], ["eye", "verbal", "motor"]],
  ])("of %j: not testable %j, not examined %j", (parts, notTestable, missing) => {
    expect(gcsTotal(parts)).toEqual(none(notTestable, missing));
  });
});

describe("severity", () => {
  it.each([
    [3, "severe"],
    [8, "severe"],
    [9, "moderate"],
    [12, "moderate"],
    [13, "mild"],
    [15, "mild"],
  ] as const)("%d is %s", (total, severity) => expect(gcsSeverity(score(total))).toBe(severity));
});

describe("properties", () => {
  const part = (max: number) => fc.oneof(fc.integer({ min: 1, max }), fc.constantFrom(NT, undefined));
  it("a total is the sum, 3 to 15, and only of three scores; with the pupils off it is 1 to 15", () => {
    fc.assert(
      fc.property(part(4), part(5), part(6), fc.constantFrom(0 as const, 1 as const, 2 as const), (e, v, m, fixed) => {
        const parts = gcsParts({ eye: e, verbal: v, motor: m });
        if (!parts.ok) throw new Error("a score refused");
        const total = gcsTotal(parts.value);
        const scores = [e, v, m].filter((s) => typeof s === "number");
        expect(total.ok).toBe(scores.length === 3);
        if (!total.ok) return;
        expect(total.value).toBe(scores.reduce((a, b) => a + b, 0));
        expect(total.value).toBeGreaterThanOrEqual(3);
        expect(total.value).toBeLessThanOrEqual(15);
        expect(gcsPupils(total.value, fixed)).toBeGreaterThanOrEqual(1);
      }),
    );
  });
});
