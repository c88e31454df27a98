import { expect, it } from "vitest";
import { createRandom } from "./random.ts";

it("gives the same run for the same seed, and another for another", () => {
  const run = (seed: number) => {
    const random = createRandom(seed);
    return Array.from({ length: 20 }, () => random.below(1_000));
  };
  expect(run(7)).toEqual(run(7));
  expect(run(7)).not.toEqual(run(8));
});

it("takes a sample without repeats, in order, and all where there are too few", () => {
  const list = Array.from({ length: 50 }, (_, i) => i);
  const some = createRandom(3).sample(list, 10);
  expect(new Set(some).size).toBe(10);
  expect([...some].sort((a, b) => a - b)).toEqual(some);
  expect(createRandom(3).sample(list, 500)).toEqual(list);
});
