import { RATE_HZ } from "../lab.ts";
import type { Random } from "../random.ts";

const samples = (seconds: number): number => Math.round(seconds * RATE_HZ);

/** A tone with harmonics that fall off, whose pitch and loudness are given for each moment. */
function tone(seconds: number, hzAt: (t: number) => number, gainAt: (t: number) => number): Float32Array {
  let phase = 0;
  return Float32Array.from({ length: samples(seconds) }, (_, i) => {
    const t = i / RATE_HZ;
    phase += (2 * Math.PI * hzAt(t)) / RATE_HZ;
    let sum = 0;
    for (let k = 1; k <= 5; k++) sum += Math.sin(k * phase) / k;
    return sum * gainAt(t);
  });
}

/** Up and down between two pitches, once each `periodS`. */
const siren = (seconds: number, periodS: number, [low, high]: readonly [number, number]): Float32Array =>
  tone(
    seconds,
    (t) => low + (high - low) * (1 - Math.abs(2 * ((t / periodS) % 1) - 1)),
    () => 1,
  );

/** Three pulses of 150 ms each two seconds. */
const alarm = (seconds: number, hz: number): Float32Array =>
  tone(
    seconds,
    () => hz,
    (t) => {
      const inPulse = (t % 2) % 0.25;
      return t % 2 < 0.75 && inPulse < 0.15 ? Math.min(1, inPulse / 0.02, (0.15 - inPulse) / 0.02) : 0;
    },
  );

/** Noise through resonances at `formants`, once each `everyS`; `buzz`: how much of a voice is in it. */
function bursts(
  seconds: number,
  everyS: number,
  { lastsS, envelope, formants, buzz }: (typeof BODY)[keyof typeof BODY],
  random: Random,
): Float32Array {
  const out = new Float32Array(samples(seconds));
  for (let startS = 0; startS < seconds; startS += everyS) {
    const at = samples(startS + 0.2 * random.next());
    const pitch = Math.round(RATE_HZ / (110 + 60 * random.next()));
    const memory = formants.map(() => [0, 0] as [number, number]);
    for (let i = 0; i < samples(lastsS) && at + i < out.length; i++) {
      const source = 2 * random.next() - 1 + (i % pitch === 0 ? 8 * buzz : 0);
      formants.forEach((hz, j) => {
        const [one, two] = memory[j]!;
        const next = source + 1.94 * Math.cos((2 * Math.PI * hz) / RATE_HZ) * one - 0.9409 * two;
        memory[j] = [next, one];
        out[at + i]! += envelope(i / RATE_HZ, lastsS) * next;
      });
    }
  }
  return out;
}

const swelling = (t: number, lastsS: number): number => Math.sin((Math.PI * t) / lastsS);
const sudden = (t: number, lastsS: number): number => Math.min(1, t / 0.01) * Math.exp((-3 * t) / lastsS);
const BODY = {
  breath: { lastsS: 1.2, envelope: swelling, formants: [500, 1500, 2500], buzz: 0 },
  cough: { lastsS: 0.3, envelope: sudden, formants: [700, 1400, 2600], buzz: 0 },
  "cough with voice": { lastsS: 0.35, envelope: sudden, formants: [650, 1200, 2500], buzz: 1 },
};

/** Something that rings for a moment when it is knocked, twice a second. */
function taps(seconds: number, random: Random): Float32Array {
  const out = new Float32Array(samples(seconds));
  for (let startS = 0; startS < seconds; startS += 0.5) {
    const at = samples(startS + 0.2 * random.next());
    const hz = 300 + 2500 * random.next();
    const decayS = 0.005 + 0.03 * random.next();
    for (let i = 0; i < samples(0.15) && at + i < out.length; i++) {
      const t = i / RATE_HZ;
      const click = (2 * random.next() - 1) * Math.exp(-t / 0.003);
      out[at + i]! += Math.exp(-t / decayS) * Math.sin(2 * Math.PI * hz * t) + click;
    }
  }
  return out;
}

const SECONDS = 20;

/**
 * What a bedside and a vehicle sound like where no recording is to be had: made by formula, so that they are like the real
 * sounds only in outline; a true cough may be more like a voice. Those of the two sets differ in pitch and chance.
 */
export const madeNoises = (
  set: "tuning" | "test",
  random: Random,
): readonly { readonly name: string; readonly pcm: Float32Array }[] => {
  const isTest = set === "test";
  return [
    { name: "siren, slow", pcm: siren(SECONDS, 4, isTest ? [550, 1550] : [600, 1500]) },
    { name: "siren, fast", pcm: siren(SECONDS, 0.35, isTest ? [550, 1550] : [600, 1500]) },
    { name: "alarm, low", pcm: alarm(SECONDS, isTest ? 660 : 523) },
    { name: "alarm, high", pcm: alarm(SECONDS, isTest ? 988 : 880) },
    { name: "taps", pcm: taps(SECONDS, random) },
    ...Object.entries(BODY).map(([name, body]) => ({
      name,
      pcm: bursts(SECONDS, name === "breath" ? 3 : 2, body, random),
    })),
    { name: "hiss", pcm: Float32Array.from({ length: samples(SECONDS) }, () => 2 * random.next() - 1) },
  ];
};
