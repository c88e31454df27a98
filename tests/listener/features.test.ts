import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createFeatures } from "../../src/listener/features.ts";
import { createPowerSpectrum } from "../../src/listener/powerSpectrum.ts";
import { floats, samples } from "./vectors.ts";

describe("createFeatures", () => {
  const features = createFeatures();

  // Source: the listener's test vectors, written by its reference feature code.
  it.each(["v1", "v2", "v7", "v8"])("agrees with the reference on %s to 1e-3", (name) => {
    const expected = floats(`${name}.features.f32`);
    const { mel, frames } = features.logMel(samples(name));
    expect(frames * 64).toBe(expected.length);
    let worst = 0;
    for (let frame = 0; frame < frames; frame++) {
      for (let m = 0; m < 64; m++) {
        worst = Math.max(worst, Math.abs((mel[m * frames + frame] ?? NaN) - (expected[frame * 64 + m] ?? NaN)));
      }
    }
    expect(worst).toBeLessThan(1e-3);
  });

  it.each([
    { length: 0, frames: 0 },
    { length: 399, frames: 0 },
    { length: 400, frames: 1 },
    { length: 559, frames: 1 },
    { length: 560, frames: 2 },
  ])("$length samples are $frames frames", ({ length, frames }) => {
    const result = features.logMel(new Float32Array(length));
    expect([result.frames, result.mel.length]).toEqual([frames, 64 * frames]);
    expect(result.mel.every(Number.isFinite)).toBe(true);
  });

  it("does not depend on what it heard before", () => {
    const before = features.logMel(samples("v1"));
    features.logMel(samples("v2"));
    expect(features.logMel(samples("v1"))).toEqual(before);
  });
});

describe("createPowerSpectrum", () => {
  /** The discrete Fourier transform by its definition. */
  const powerByDefinition = (signal: Float32Array): number[] =>
    Array.from({ length: signal.length / 2 + 1 }, (_, k) => {
      let [re, im] = [0, 0];
      signal.forEach((x, i) => {
        re += x * Math.cos((2 * Math.PI * i * k) / signal.length);
        im -= x * Math.sin((2 * Math.PI * i * k) / signal.length);
      });
      return re * re + im * im;
    });

  it.each([4, 8, 64, 512])("agrees with the definition at size %i", (size) => {
    const powerSpectrum = createPowerSpectrum(size);
    const sample = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.array(sample, { minLength: size, maxLength: size }), (values) => {
        const signal = Float32Array.from(values);
        const power = new Float32Array(size / 2 + 1);
        powerSpectrum(signal, power);
        powerByDefinition(signal).forEach((expected, k) =>
          expect(Math.abs((power[k] ?? NaN) - expected)).toBeLessThan(1e-6 * (1 + expected)),
        );
      }),
      { numRuns: 10 },
    );
  });
});
