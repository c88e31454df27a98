import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { WaveFile } from "wavefile";
import { expect, it } from "vitest";
import { joinWithSilence, writeWav } from "../browser/wav.ts";

// Judged by the general-purpose library `wavefile`, which reads what we wrote.
it("writes 16-bit PCM that another program reads back", () => {
  const folder = mkdtempSync(join(tmpdir(), "tragus-wav-"));
  const path = join(folder, "a.wav");
  writeWav(path, Float32Array.of(0, 0.5, -0.5, 1, -1, 7, -7), 16_000);
  const wav = new WaveFile(readFileSync(path));
  rmSync(folder, { recursive: true });
  const format = wav.fmt as { sampleRate: number; numChannels: number; bitsPerSample: number; audioFormat: number };
  expect(format).toMatchObject({ sampleRate: 16_000, numChannels: 1, bitsPerSample: 16, audioFormat: 1 });
  expect([...wav.getSamples(false, Int16Array)]).toEqual([0, 16384, -16383, 32767, -32767, 32767, -32767]);
});

it("joins sounds with silence before, between and after", () => {
  const joined = joinWithSilence([Float32Array.of(1, 1), Float32Array.of(2)], [0.1, 0.2, 0.3], 10);
  expect([...joined]).toEqual([0, 1, 1, 0, 0, 2, 0, 0, 0]);
});

it("refuses a wrong number of gaps", () => {
  expect(() => joinWithSilence([Float32Array.of(1)], [0.1], 10)).toThrow("1 sounds need 2 gaps");
});
