import { expect, test } from "vitest";
import { firstAudible, speechOnset } from "./onset.ts";

/** Pieces of sound: [milliseconds, level]. */
const sound = (...pieces: readonly (readonly [number, number])[]): Float32Array =>
  Float32Array.from(
    pieces.flatMap(([ms, level]) => Array.from({ length: ms * 16 }, (_, i) => (i % 2 ? level : -level))),
  );

test.each([
  ["a vowel at once", sound([100, 0.001], [300, 0.2]), 100, 100],
  ["a soft s before it counts from 20 dB under it", sound([100, 0.001], [80, 0.03], [300, 0.2]), 100, 100],
  ["softer than that it does not", sound([100, 0.001], [80, 0.015], [300, 0.2]), 100, 180],
  ["a smack of the lips is not speech", sound([50, 0.001], [20, 0.2], [250, 0.001], [300, 0.2]), 50, 320],
  ["a t and its closure are", sound([50, 0.001], [30, 0.1], [60, 0.001], [300, 0.2]), 50, 50],
])("%s", (_, pcm, audibleMs, onsetMs) => {
  expect(firstAudible(pcm) / 16).toBe(audibleMs);
  expect(speechOnset(pcm) / 16).toBe(onsetMs);
});
