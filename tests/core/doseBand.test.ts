import { describe, expect, it } from "vitest";
import { countsAtWeight } from "../../src/core/doseBand.ts";
import { kg } from "../../src/core/quantities.ts";
import { taken } from "./taken.ts";

const at = (n: number) => taken(kg(n));

describe("a dose for a span of weights", () => {
  it.each([
    [{}, 2, true],
    [{}, 300, true],
    [{ fromKg: 40 }, 40, true],
    [{ fromKg: 40 }, 39.9, false],
    [{ belowKg: 40 }, 39.9, true],
    [{ belowKg: 40 }, 40, false],
    [{ fromKg: 13, belowKg: 40 }, 12.9, false],
    [{ fromKg: 13, belowKg: 40 }, 13, true],
    [{ fromKg: 13, belowKg: 40 }, 40, false],
  ])("%o at %d kg: %s", (band, n, counts) => expect(countsAtWeight(band, at(n))).toBe(counts));
});
