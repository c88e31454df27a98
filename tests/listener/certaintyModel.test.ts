import { describe, expect, it } from "vitest";
import { certaintyBy, languageFeatures, logistic, meaningFeatures } from "../../src/listener/certaintyModel.ts";

const quiet = { lengthMs: 2_000, levelDb: -26, noiseDb: -60, clipped: false };
const loud = { ...quiet, noiseDb: -36 };

describe("features", () => {
  it.each([
    {
      what: "in quiet",
      heard: { m1: -0.1, m2: 4, phones: 14, shape: quiet },
      language: [1, -0.1, 0],
      meaning: [1, Math.log(5), -0.1, 0, Math.log(1.4)],
    },
    {
      what: "10 dB over the noise",
      heard: { m1: -0.1, m2: 4, phones: 14, shape: loud },
      language: [1, -0.1, -0.2],
      meaning: [1, Math.log(5), -0.1, 2, Math.log(1.4)],
    },
    {
      what: "no shape: a quiet room",
      heard: { m1: -5, m2: Infinity, phones: 10 },
      language: [1, -2, 0],
      meaning: [1, Math.log(31), -2, 0, 0],
    },
  ])("$what", ({ heard, language, meaning }) => {
    expect(languageFeatures(heard)).toHaveLength(language.length);
    languageFeatures(heard).forEach((value, i) => expect(value).toBeCloseTo(language[i]!, 9));
    expect(meaningFeatures(heard)).toHaveLength(meaning.length);
    meaningFeatures(heard).forEach((value, i) => expect(value).toBeCloseTo(meaning[i]!, 9));
  });
});

it("is the product of two logistic curves", () => {
  const model = { language: [0, 0, 0], meaning: [Math.log(3), 0, 0, 0, 0] };
  expect(logistic(model.meaning, [1, 0, 0, 0, 0])).toBeCloseTo(0.75, 12);
  expect(certaintyBy(model, { m1: 0, m2: 3, phones: 9 })).toBeCloseTo(0.375, 12);
});
