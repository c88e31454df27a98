import type { Sound } from "./wav.ts";

/** About -46 dBFS: under the voice's quietest consonant onsets, over its padding (measured on voice rms). */
const FLOOR = 0.005;
/** Kept on both sides, for an "f" or an "s" that fades in below the floor. */
const KEEP_MS = 25;

/** Cuts the silence that the engine puts round every phrase. Sound without any sound in it becomes empty. */
export function trimSilence({ pcm, sampleRate }: Sound): Sound {
  const first = pcm.findIndex((sample) => Math.abs(sample) > FLOOR);
  if (first < 0) return { pcm: new Float32Array(0), sampleRate };
  const last = pcm.findLastIndex((sample) => Math.abs(sample) > FLOOR);
  const keep = Math.round((KEEP_MS / 1000) * sampleRate);
  return { pcm: pcm.slice(Math.max(0, first - keep), Math.min(pcm.length, last + 1 + keep)), sampleRate };
}
