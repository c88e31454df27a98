import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Noise } from "../audioSet.ts";
import { createRandom } from "../random.ts";
import { CONDITIONS, halfOf, noiseAlone, place, placeRecording } from "./conditions.ts";

const RATE_HZ = 16_000;
const tone = (seconds: number): Float32Array =>
  Float32Array.from({ length: seconds * RATE_HZ }, (_, i) => 0.3 * Math.sin((2 * Math.PI * 300 * i) / RATE_HZ));
const noiseOf = (name: string, seed: number): Noise => {
  const random = createRandom(seed);
  return { name, file: `${name}.flac`, pcm: Float32Array.from({ length: 2 * RATE_HZ }, () => random.next() - 0.5) };
};
const NOISES = ["helicopter", "engine", "crowd/babble", "wind"].map(noiseOf);
const speech = tone(1);
const decibels = (power: number): number => 10 * Math.log10(power);
const power = (pcm: Float32Array): number => pcm.reduce((sum, x) => sum + x * x, 0) / pcm.length;

describe("a condition", () => {
  it.each(CONDITIONS)("$name: level, ratio, kind of noise and room on both sides are as said", (condition) => {
    fc.assert(
      fc.property(fc.nat(), (seed) => {
        const { pcm, noise } = place(speech, condition, NOISES, createRandom(seed));
        if (condition.noises.length === 0) expect(noise).toBe("hiss");
        else expect(condition.noises).toContain(noise.replace(".flac", ""));
        // Up to the shortest lead there is background alone; between these two times the tone is there wherever it began.
        const [shortest, longest] = condition.beforeS;
        const background = power(pcm.subarray(0, shortest * RATE_HZ));
        const both = power(pcm.subarray((longest + 0.05) * RATE_HZ, (shortest + 0.95) * RATE_HZ));
        const spoken = both - background;
        expect(decibels(spoken)).toBeGreaterThan(-45);
        expect(decibels(spoken)).toBeLessThan(-19);
        expect(Math.abs(decibels(spoken / background) - condition.snrDb)).toBeLessThan(1);
        const aroundS = pcm.length / RATE_HZ - 1;
        expect(aroundS).toBeGreaterThan(shortest + 2.1);
        expect(aroundS).toBeLessThan(longest + 2.8);
      }),
      { numRuns: 20 },
    );
  });
  it("is not measured with another noise than its own", () => {
    const wind = NOISES.filter((n) => n.name === "wind");
    expect(() => place(speech, CONDITIONS[1]!, wind, createRandom(1))).toThrow('no recording for "engines 10 dB"');
  });
  it("leaves a recording as it is, or mixes it at the ratio", () => {
    expect(placeRecording(speech, CONDITIONS[0], NOISES, createRandom(1)).pcm).toBe(speech);
    const { pcm } = placeRecording(speech, CONDITIONS[1], NOISES, createRandom(1));
    const before = pcm.length - speech.length;
    const background = pcm.map((x, i) => x - (speech[i - before] ?? 0));
    // The frames that are taken for speech may begin a little before it.
    expect(Math.abs(decibels(power(speech) / power(background)) - 10)).toBeLessThan(0.1);
  });
});

it("gives tuning and testing different halves of each noise", () => {
  const tuning = halfOf("tuning", NOISES);
  const test = halfOf("test", NOISES);
  NOISES.forEach(({ pcm }, i) => {
    const [first, second] = [tuning[i]!.pcm, test[i]!.pcm];
    expect(first.length + second.length).toBe(pcm.length);
    expect(first.every((x, at) => x === pcm[at])).toBe(true);
    expect(second.every((x, at) => x === pcm[first.length + at])).toBe(true);
  });
});

it("plays noise alone for so long, at a level in its range", () => {
  const { pcm, noise } = noiseAlone(["wind"], 3, NOISES, createRandom(4));
  expect(noise).toBe("wind.flac");
  expect(pcm.length).toBe(3 * RATE_HZ);
  expect(decibels(power(pcm))).toBeGreaterThan(-50.5);
  expect(decibels(power(pcm))).toBeLessThan(-19.5);
});
