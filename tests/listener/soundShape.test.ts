import { describe, expect, it } from "vitest";
import { soundShape } from "../../src/listener/soundShape.ts";

const RATE_HZ = 16_000;
/** Half a second of quiet, a second of tone, half a second of quiet. */
const toneIn = (level: number, background: number): Float32Array =>
  Float32Array.from({ length: 2 * RATE_HZ }, (_, i) => {
    const isTone = i >= RATE_HZ / 2 && i < (3 * RATE_HZ) / 2;
    const hiss = background * Math.SQRT2 * Math.sin(i * i * 0.37);
    return Math.max(-1, Math.min(1, hiss + (isTone ? level * Math.sin((2 * Math.PI * 440 * i) / RATE_HZ) : 0)));
  });

// A sine of amplitude a has an RMS of a / √2: 20 log10(0.1 / √2) = −23.01 dB.
describe("sound shape", () => {
  it.each([
    ["a tone at −20 dB peak", toneIn(0.1, 0), { levelDb: -23.01, noiseDb: -100, clipped: false }],
    ["over a background of −60 dB", toneIn(0.1, 0.001), { levelDb: -23.0, noiseDb: -60, clipped: false }],
    ["at full scale, not cut", toneIn(0.98, 0), { levelDb: -3.19, noiseDb: -100, clipped: false }],
    ["overdriven twofold", toneIn(2, 0), { levelDb: -1.1, noiseDb: -100, clipped: true }],
  ])("%s", (_, pcm, expected) => {
    const shape = soundShape(pcm);
    expect(shape.lengthMs).toBe(2_000);
    expect(Math.abs(shape.levelDb - expected.levelDb)).toBeLessThan(0.3);
    expect(Math.abs(shape.noiseDb - expected.noiseDb)).toBeLessThan(1);
    expect(shape.clipped).toBe(expected.clipped);
  });

  it.each([0, 1, 319])("knows nothing of %i samples, and says so", (length) => {
    expect(soundShape(new Float32Array(length))).toMatchObject({ levelDb: -100, noiseDb: -100, clipped: false });
  });
});
