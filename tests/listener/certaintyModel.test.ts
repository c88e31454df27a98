import { describe, expect, it } from "vitest";
import { certaintyBy, languageFeatures, logistic, meaningFeatures } from "../../src/listener/certaintyModel.ts";

const quiet = { lengthMs: 2_000, levelDb: -26, noiseDb: -60, clipped: false };
const loud = { ...quiet, noiseDb: -36 };

describe("features", () => {
  it.each([
    [
      "quiet, usual pace",
      { m1: -0.1, m2: 4, phones: 14, shape: quiet },
      [1, -0.1, 0, Math.log(5), 0, Math.log(1.4), 0],
    ],
    [
      "10 dB over the noise",
      { m1: -0.1, m2: 4, phones: 14, shape: loud },
      [1, -0.1, -0.2, Math.log(5), 2, Math.log(1.4), 0],
    ],
    ["half the pace", { m1: 0, m2: 0, phones: 7, shape: quiet }, [1, 0, 0, 0, 0, Math.log(0.7), Math.log(2)]],
    ["no shape: a quiet room", { m1: -5, m2: Infinity, phones: 10 }, [1, -2, 0, Math.log(31), 0, 0, 0]],
  ])("%s", (_, evidence, expected) => {
    languageFeatures(evidence).forEach((value, i) => expect(value).toBeCloseTo(expected[i]!, 9));
    const [one, m1, , m2, noise, length] = expected;
    meaningFeatures(evidence).forEach((value, i) => expect(value).toBeCloseTo([one, m2, m1, noise, length][i]!, 9));
  });
});

it("is the product of two logistic curves", () => {
  const model = { language: [0, 0, 0, 0, 0, 0, 0], meaning: [Math.log(3), 0, 0, 0, 0] };
  expect(logistic(model.meaning, [1, 0, 0, 0, 0])).toBeCloseTo(0.75, 12);
  expect(certaintyBy(model, { m1: 0, m2: 3, phones: 9 })).toBeCloseTo(0.375, 12);
});
