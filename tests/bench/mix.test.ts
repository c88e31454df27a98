import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { atLevel, loopFrom, mixAt, pad, speechPower } from "./mix.ts";
import { createRandom } from "./random.ts";

const RATE_HZ = 16_000;

const tone = (seconds: number, amplitude: number, hz = 220): Float32Array =>
  Float32Array.from({ length: seconds * RATE_HZ }, (_, i) => amplitude * Math.sin((2 * Math.PI * hz * i) / RATE_HZ));

const noise = (length: number, seed: number): Float32Array => {
  const random = createRandom(seed);
  return Float32Array.from({ length }, () => random.next() - 0.5);
};

const powerDb = (pcm: Float32Array): number => 10 * Math.log10(pcm.reduce((sum, x) => sum + x * x, 0) / pcm.length);

describe("mixAt", () => {
  it.each([20, 10, 5, 0, -5])("mixes at %d dB within 0.1 dB, pauses left out of the speech", (snrDb) => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.9, noNaN: true }),
        fc.integer({ min: 0, max: 3 }),
        fc.nat(),
        (amplitude, pauseS, seed) => {
          // A sine has a mean square of half its amplitude squared: the judge of the level, without our own meter.
          const speech = pad(tone(1, amplitude), pauseS * RATE_HZ, RATE_HZ);
          const added = mixAt(speech, noise(speech.length, seed), snrDb).map((x, i) => x - speech[i]!);
          const speechDb = 10 * Math.log10(amplitude ** 2 / 2);
          expect(Math.abs(speechDb - powerDb(added) - snrDb)).toBeLessThan(0.1);
        },
      ),
      { numRuns: 10 },
    );
  });

  it("adds nothing where the noise is silent", () => {
    const speech = tone(0.1, 0.5);
    expect(mixAt(speech, new Float32Array(speech.length), 10)).toEqual(speech);
  });
});

it("counts a frame 30 dB under the loudest as a pause", () => {
  const loud = tone(1, 0.5);
  const withFaint = new Float32Array(2 * RATE_HZ);
  withFaint.set(loud);
  withFaint.set(tone(1, 0.5 * 10 ** (-35 / 20)), RATE_HZ);
  expect(speechPower(withFaint)).toBeCloseTo(0.125, 4);
});

it("sets the level while speaking", () => {
  const levelled = atLevel(pad(tone(1, 0.03), RATE_HZ, 0), -26);
  expect(10 * Math.log10(speechPower(levelled))).toBeCloseTo(-26, 3);
  expect(atLevel(new Float32Array(800), -26)).toEqual(new Float32Array(800));
});

it("goes round a noise that is too short", () => {
  expect([...loopFrom(Float32Array.of(1, 2, 3), 2, 5)]).toEqual([3, 1, 2, 3, 1]);
});
