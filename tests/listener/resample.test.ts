import { ConverterType, create } from "@alexanderolsen/libsamplerate-js";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { createResampler, resample } from "../../src/listener/resample.ts";

const TO_HZ = 16_000;

function sine(rateHz: number, toneHz: number, seconds = 1): Float32Array {
  return Float32Array.from({ length: rateHz * seconds }, (_, i) => 0.5 * Math.sin((2 * Math.PI * toneHz * i) / rateHz));
}

/** Power between a fifth and four fifths, where neither end reaches, in dB relative to the 0.5 sine that went in. */
function gainDb(sound: Float32Array): number {
  const middle = sound.slice(sound.length / 5, (sound.length * 4) / 5);
  const power = middle.reduce((sum, x) => sum + x * x, 0) / middle.length;
  return 10 * Math.log10(power / 0.125 + 1e-20);
}

function inBlocks(sound: Float32Array, fromHz: number, sizes: readonly number[]): Float32Array {
  const resampler = createResampler(fromHz, TO_HZ);
  const pieces: Float32Array[] = [];
  for (let at = 0, i = 0; at < sound.length; i++) {
    const size = sizes[i % sizes.length] ?? 128;
    pieces.push(resampler.push(sound.subarray(at, at + size)));
    at += size;
  }
  pieces.push(resampler.flush());
  return Float32Array.from(pieces.flatMap((piece) => [...piece]));
}

describe("resample", () => {
  test.each([
    [8_000, 300],
    [8_000, 3_500],
    [11_025, 5_000],
    [22_050, 7_000],
    [22_051, 7_000],
    [32_000, 7_000],
    [44_100, 100],
    [44_100, 7_000],
    [48_000, 7_000],
    [48_000, 7_300],
    [96_000, 7_000],
  ])("from %i Hz keeps a tone of %i Hz within 0.1 dB", (fromHz, toneHz) => {
    expect(Math.abs(gainDb(resample(sine(fromHz, toneHz), fromHz, TO_HZ)))).toBeLessThan(0.1);
  });

  test.each([
    [22_050, 8_200],
    [32_000, 9_000],
    [44_100, 8_100],
    [44_100, 15_900],
    [48_000, 8_100],
    [48_000, 12_000],
    [48_000, 23_000],
    [96_000, 20_000],
    [96_000, 47_000],
  ])("from %i Hz lets a tone of %i Hz through at less than −60 dB", (fromHz, toneHz) => {
    expect(gainDb(resample(sine(fromHz, toneHz), fromHz, TO_HZ))).toBeLessThan(-60);
  });

  test("gives ceil(n · to / from) samples, at the places they belong", () => {
    const tone = resample(sine(44_100, 1_000), 44_100, TO_HZ);
    expect(tone).toHaveLength(TO_HZ);
    for (let i = 1_000; i < 15_000; i++) {
      expect(Math.abs(tone[i]! - 0.5 * Math.sin((2 * Math.PI * 1_000 * i) / TO_HZ))).toBeLessThan(1e-4);
    }
  });

  test("any blocks give the same samples as the whole", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 8_000, max: 96_000 }),
        fc.array(fc.integer({ min: 1, max: 700 }), { minLength: 1, maxLength: 6 }),
        fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 1, maxLength: 1_500 }),
        (fromHz, sizes, samples) => {
          const sound = Float32Array.from(samples);
          expect(inBlocks(sound, fromHz, sizes)).toEqual(resample(sound, fromHz, TO_HZ));
        },
      ),
      { numRuns: 40 },
    );
  });

  test("the browser's blocks of 128 give the same samples too", () => {
    const sound = sine(44_100, 440, 1);
    expect(inBlocks(sound, 44_100, [128])).toEqual(resample(sound, 44_100, TO_HZ));
  });

  test("16 kHz passes untouched", () => {
    const sound = sine(16_000, 440);
    expect(resample(sound, 16_000, TO_HZ)).toEqual(sound);
  });

  test.each([
    [0, TO_HZ],
    [44_100.5, TO_HZ],
    [48_000, -1],
  ])("refuses the rates %d and %d", (fromHz, toHz) => {
    expect(() => createResampler(fromHz, toHz)).toThrow(RangeError);
  });

  // Outside judge: libsamplerate at its best quality, an independent implementation.
  test.each([8_000, 22_050, 44_100, 48_000])("agrees with libsamplerate from %i Hz", async (fromHz) => {
    // Tones below both filters' edges: above them the two are allowed to differ.
    const tones = [210, 877, 1_993, 3_301].map((hz) => sine(fromHz, hz));
    const sound = tones[0]!.map((_, i) => tones.reduce((sum, tone) => sum + tone[i]! / 4, 0));
    const judge = await create(1, fromHz, TO_HZ, { converterType: ConverterType.SRC_SINC_BEST_QUALITY });
    const theirs = judge.simple(sound);
    const ours = resample(sound, fromHz, TO_HZ);
    let worst = 0;
    for (let i = 2_000; i < 14_000; i++) worst = Math.max(worst, Math.abs(ours[i]! - theirs[i]!));
    expect(worst).toBeLessThan(1e-3);
  });
});
