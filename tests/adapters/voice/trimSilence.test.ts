import { expect, it } from "vitest";
import { trimSilence } from "../../../src/adapters/voice/trimSilence.ts";

const RATE = 16_000;
const silence = (ms: number) => Array.from({ length: (ms / 1000) * RATE }, () => 0.0005);
const sound = (ms: number) => Array.from({ length: (ms / 1000) * RATE }, () => 0.3);

const ROWS: readonly [what: string, before: number[], afterMs: number][] = [
  ["keeps 25 ms on either side of the sound", [...silence(200), ...sound(100), ...silence(300)], 150],
  ["keeps a pause inside", [...silence(100), ...sound(50), ...silence(200), ...sound(50), ...silence(100)], 350],
  ["adds nothing where there is less to keep", [...silence(10), ...sound(100)], 110],
  ["makes silence empty", silence(500), 0],
  ["leaves nothing as nothing", [], 0],
];

it.each(ROWS)("%s", (_what, before, afterMs) => {
  const { pcm, sampleRate } = trimSilence({ pcm: new Float32Array(before), sampleRate: RATE });
  expect(sampleRate).toBe(RATE);
  expect((pcm.length / RATE) * 1000).toBeCloseTo(afterMs, 6);
});
