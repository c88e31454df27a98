import { loopFrom, pad } from "./mix.ts";
import { RATE_HZ } from "./lab.ts";
import type { Random } from "./random.ts";

/** Open listening needs sound before speech, and silence after it to know that it has ended. */
const BEFORE_S = 0.5;
const AFTER_S = 2.2;
/** Quieter than any microphone is: full scale −66 dB. */
const FLOOR_POWER = 10 ** -6.6;

const samples = (seconds: number): number => Math.round(seconds * RATE_HZ);

/** White noise of a mean square. */
function hiss(length: number, power: number, random: Random): Float32Array {
  const half = Math.sqrt(3 * power);
  return Float32Array.from({ length }, () => (2 * random.next() - 1) * half);
}

/** An utterance with room around it, all of it in a faint hiss. */
export function inQuietRoom(pcm: Float32Array, random: Random): Float32Array {
  const padded = pad(pcm, samples(BEFORE_S), samples(AFTER_S));
  const floor = hiss(padded.length, FLOOR_POWER, random);
  return padded.map((x, i) => x + floor[i]!);
}

/** Noise from somewhere in a recording, as long as is wanted. */
export const someNoise = (noise: Float32Array, length: number, random: Random): Float32Array =>
  loopFrom(noise, random.below(noise.length), length);

/** Mean square of the quietest tenth of the 20 ms frames: the background of a recording. */
function backgroundPower(pcm: Float32Array): number {
  const frame = samples(0.02);
  const powers: number[] = [];
  for (let at = 0; at + frame <= pcm.length; at += frame)
    powers.push(pcm.subarray(at, at + frame).reduce((sum, x) => sum + x * x, 0) / frame);
  powers.sort((a, b) => a - b);
  return powers[Math.floor(powers.length / 10)] ?? 0;
}

/** A recording with hiss as loud as its own background before and after it. */
export function withRoom(pcm: Float32Array, random: Random): Float32Array {
  const power = Math.max(FLOOR_POWER, backgroundPower(pcm));
  const padded = pad(pcm, samples(BEFORE_S), samples(AFTER_S));
  padded.set(hiss(samples(BEFORE_S), power, random), 0);
  padded.set(hiss(samples(AFTER_S), power, random), padded.length - samples(AFTER_S));
  return padded;
}
