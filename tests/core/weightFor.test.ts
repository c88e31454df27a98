import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { WEIGHT_SCALARS } from "../../src/core/doseUnits.ts";
import type { Cm, Kg, Years } from "../../src/core/quantity.ts";
import type { Weight, WeightKind } from "../../src/core/weight.ts";
import { weightFor, type Body } from "../../src/core/weightFor.ts";

const scales = (kg: number, kind: WeightKind = "measured"): Weight => ({ kg: kg as Kg, kind });
const cm = (n: number): Cm => n as Cm;
const years = (n: number): Years => n as Years;

const man: Body = { isChild: false, actual: scales(130), heightCm: cm(178), sex: "male", ageA: years(50) };
const child: Body = { isChild: true, heightCm: cm(178), sex: "male", ageA: years(6) };
const missing = (...what: string[]) => ({ ok: false, error: { kind: "missing", missing: what } });

/** The answer with its kilograms rounded to the printed hundredth. */
const rounded = (...args: Parameters<typeof weightFor>) => {
  const result = weightFor(...args);
  return result.ok ? { ...result.value, kg: Number(result.value.kg.toFixed(2)) } : result;
};
const plain = (scalar: string, kg: number, kind: WeightKind) => ({
  kg,
  kind,
  scalar,
  scalarUsed: scalar,
  limitedByActual: false,
});

describe("an adult of whom everything is known", () => {
  it.each([
    ["actual", 130, "measured"],
    ["ideal", 73.18, "computed"],
    ["lean", 77.54, "computed"],
    ["adjusted", 95.91, "computed"],
  ] as const)("%s weight is %d kg, %s", (scalar, kg, kind) => {
    expect(rounded(scalar, man)).toEqual(plain(scalar, kg, kind));
  });
  it("women have their own equations", () => {
    const woman: Body = { ...man, sex: "female", heightCm: cm(163), actual: scales(100) };
    expect(rounded("ideal", woman)).toEqual(plain("ideal", 55.1, "computed"));
    expect(rounded("lean", woman)).toEqual(plain("lean", 51.6, "computed"));
  });
});

describe("an estimate stays one", () => {
  const guessed: Body = { ...man, actual: scales(130, "estimated") };
  it.each([
    ["actual", 130, "estimated"],
    ["ideal", 73.18, "computed"],
    ["lean", 77.54, "estimated"],
    ["adjusted", 95.91, "estimated"],
  ] as const)("%s weight is then %d kg, %s", (scalar, kg, kind) => {
    expect(rounded(scalar, guessed)).toEqual(plain(scalar, kg, kind));
  });
  it("a computed actual weight gives computed ones", () => {
    expect(rounded("lean", { ...man, actual: scales(130, "computed") })).toEqual(plain("lean", 77.54, "computed"));
  });
});

describe("what is missing is named, and nothing else", () => {
  const { actual, heightCm, sex } = man;
  const nobody: Body = { isChild: false };
  it.each([
    ["actual", nobody, ["weight"]],
    ["actual", { isChild: false, heightCm, sex, ageA: years(6) }, ["weight"]],
    ["ideal", nobody, ["height", "sex"]],
    ["ideal", { ...nobody, actual }, ["height", "sex"]],
    ["ideal", { ...nobody, heightCm }, ["sex"]],
    ["ideal", { ...nobody, sex }, ["height"]],
    ["lean", nobody, ["weight", "height", "sex"]],
    ["lean", { ...nobody, heightCm, sex }, ["weight"]],
    ["lean", { ...nobody, actual, sex }, ["height"]],
    ["lean", { ...nobody, actual, heightCm }, ["sex"]],
    ["adjusted", nobody, ["weight", "height", "sex"]],
    ["adjusted", { ...nobody, heightCm, sex }, ["weight"]],
    ["adjusted", { ...nobody, heightCm }, ["weight", "sex"]],
    ["adjusted", { ...nobody, actual }, ["height", "sex"]],
  ] as const)("%s weight of %j needs %j", (scalar, body, what) => {
    expect(weightFor(scalar, body)).toEqual(missing(...what));
  });
  it("the ideal weight needs no actual one", () => {
    expect(rounded("ideal", { isChild: false, heightCm, sex })).toEqual(plain("ideal", 73.18, "computed"));
  });
});

describe("a short adult", () => {
  const short: Body = { ...man, heightCm: cm(152.3), actual: scales(60) };
  const refused = { ok: false, error: { kind: "below-formula-height", heightCm: 152.3, fromCm: 152.4 } };
  it.each(["ideal", "adjusted"] as const)("has no %s weight", (scalar) => {
    expect(weightFor(scalar, short)).toEqual(refused);
  });
  it.each(["ideal", "adjusted"] as const)("is asked for nothing that could not help: %s", (scalar) => {
    expect(weightFor(scalar, { isChild: false, heightCm: cm(152.3) })).toEqual(refused);
  });
  it("has a lean one: that equation has no anchor", () => {
    expect(rounded("lean", short)).toEqual(plain("lean", 45.34, "computed"));
  });
  it("has the others from 152.4 cm on", () => {
    expect(rounded("ideal", { ...short, heightCm: cm(152.4) })).toEqual(plain("ideal", 50, "computed"));
  });
});

describe("a thin adult is dosed by the actual weight", () => {
  const limited = (scalar: string, kg: number, kind: WeightKind) => ({
    kg,
    kind,
    scalar,
    scalarUsed: "actual",
    limitedByActual: true,
  });
  it.each(["ideal", "adjusted"] as const)("%s weight over it", (scalar) => {
    expect(rounded(scalar, { ...man, actual: scales(60) })).toEqual(limited(scalar, 60, "measured"));
    expect(rounded(scalar, { ...man, actual: scales(60, "estimated") })).toEqual(limited(scalar, 60, "estimated"));
  });
  it("lean weight over it", () => {
    expect(rounded("lean", { ...man, actual: scales(37) })).toEqual(limited("lean", 37, "measured"));
  });
  it("not when they are the same", () => {
    const ideal = weightFor("ideal", man);
    if (!ideal.ok) throw new Error("no ideal weight");
    const same = weightFor("ideal", { ...man, actual: scales(ideal.value.kg) });
    expect(same).toEqual({ ok: true, value: plain("ideal", ideal.value.kg, "computed") });
  });
});

describe("a child", () => {
  const asChild = (scalar: string, kg: number, kind: WeightKind) => ({
    kg,
    kind,
    scalar,
    scalarUsed: "actual",
    reason: "child",
    limitedByActual: false,
  });
  it("has the estimate by age as actual weight, said to be one", () => {
    expect(rounded("actual", child)).toEqual(plain("actual", 25, "estimated"));
  });
  it("a known weight goes before the estimate", () => {
    expect(rounded("actual", { ...child, actual: scales(22) })).toEqual(plain("actual", 22, "measured"));
  });
  it.each(["ideal", "lean", "adjusted"] as const)(
    "has no %s weight but the actual one, and it is said why",
    (scalar) => {
      expect(rounded(scalar, child)).toEqual(asChild(scalar, 25, "estimated"));
      expect(rounded(scalar, { ...child, actual: scales(22) })).toEqual(asChild(scalar, 22, "measured"));
    },
  );
  it.each([undefined, years(0.05), years(13)])("without a weight, at %s years, the weight is missing", (ageA) => {
    for (const scalar of WEIGHT_SCALARS) expect(weightFor(scalar, { ...child, ageA })).toEqual(missing("weight"));
  });
});

describe("properties", () => {
  const anyBody: fc.Arbitrary<Body> = fc.record({
    isChild: fc.boolean(),
    actual: fc.option(
      fc.record({
        kg: fc.double({ min: 2, max: 300, noNaN: true }).map((n) => n as Kg),
        kind: fc.constantFrom<WeightKind>("measured", "computed", "estimated"),
      }),
      { nil: undefined },
    ),
    heightCm: fc.option(fc.double({ min: 40, max: 230, noNaN: true }).map(cm), { nil: undefined }),
    sex: fc.option(fc.constantFrom("female" as const, "male" as const), { nil: undefined }),
    ageA: fc.option(fc.double({ min: 0, max: 110, noNaN: true }).map(years), { nil: undefined }),
  });
  it("a weight is finite, above nothing, never over a known actual one, and measured only if it is that one", () => {
    fc.assert(
      fc.property(fc.constantFrom(...WEIGHT_SCALARS), anyBody, (scalar, body) => {
        const result = weightFor(scalar, body);
        if (!result.ok) return;
        const { kg, kind, scalarUsed } = result.value;
        expect(Number.isFinite(kg) && kg > 0).toBe(true);
        expect(kg).toBeLessThanOrEqual(body.actual?.kg ?? Infinity);
        if (kind === "measured") expect([kg, scalarUsed]).toEqual([body.actual?.kg, "actual"]);
      }),
    );
  });
  it("saying what is missing is enough, unless the height is not covered", () => {
    fc.assert(
      fc.property(fc.constantFrom(...WEIGHT_SCALARS), anyBody, (scalar, body) => {
        const result = weightFor(scalar, body);
        if (result.ok || result.error.kind !== "missing") return;
        const said: Record<string, Partial<Body>> = {
          weight: { actual: scales(80) },
          height: { heightCm: cm(178) },
          sex: { sex: "male" },
        };
        const known: Record<string, unknown> = { weight: body.actual, height: body.heightCm, sex: body.sex };
        for (const what of result.error.missing) expect(known[what]).toBeUndefined();
        const told = result.error.missing.reduce<Body>((b, what) => ({ ...b, ...said[what] }), body);
        expect(weightFor(scalar, told).ok).toBe(true);
      }),
    );
  });
});
