import type { Random } from "../bench/random.ts";

/** What is true of the patient at one moment; nobody but the simulation knows it. Units as in the facts. */
export type Body = {
  readonly sbp: number;
  readonly dbp: number;
  readonly hr: number;
  readonly spo2: number;
  readonly etco2: number;
  readonly temp: number;
  readonly glucose: number;
  readonly icp: number;
  readonly eye: number;
  readonly motor: number;
  readonly pupilRight: number;
  readonly rightFixed: boolean;
};

type Latent = { map: number; pulse: number } & Record<
  "hr" | "spo2" | "etco2" | "temp" | "glucose" | "icp" | "motor" | "pupilRight",
  number
>;
type Event = {
  readonly atS: number;
  /** To full effect, at full effect, and back; seconds. */
  readonly shape: readonly [number, number, number];
  readonly effect: Partial<Latent>;
};

export type PatientKind = {
  readonly ageA: number;
  readonly opening: readonly string[];
  readonly knownIcp: boolean;
  readonly at: Latent;
};

/** Invented people. The numbers are of no one, and are no claim about any disease. */
export const PATIENTS: readonly PatientKind[] = [
  {
    ageA: 34,
    opening: ["thirty four year old man", "weight eighty kilos", "height one seventy eight", "cause head injury"],
    knownIcp: false,
    at: { map: 96, pulse: 52, hr: 88, spo2: 97, etco2: 38, temp: 36.6, glucose: 7.2, icp: 18, motor: 5, pupilRight: 3 },
  },
  {
    ageA: 62,
    opening: ["sixty two year old woman", "weight seventy kilos", "height one sixty five", "cause bleed"],
    knownIcp: true,
    at: { map: 99, pulse: 60, hr: 76, spo2: 96, etco2: 39, temp: 36.4, glucose: 8.4, icp: 17, motor: 5, pupilRight: 3 },
  },
  {
    ageA: 6,
    opening: ["six year old girl", "weight twenty two kilos", "cause head injury"],
    knownIcp: false,
    at: {
      map: 76,
      pulse: 42,
      hr: 108,
      spo2: 98,
      etco2: 38,
      temp: 36.8,
      glucose: 6.8,
      icp: 14,
      motor: 5,
      pupilRight: 4,
    },
  },
];

const MIN = 60;
/** How each number wanders: its usual distance from where it belongs, and how long it remembers, in seconds. */
const WANDER: Readonly<Record<keyof Latent, readonly [number, number]>> = {
  map: [5, 400],
  pulse: [4, 600],
  hr: [6, 500],
  spo2: [1, 300],
  etco2: [2.2, 500],
  temp: [0.15, 2400],
  glucose: [0.5, 2400],
  icp: [2, 900],
  motor: [0, 1],
  pupilRight: [0, 1],
};

/** What may happen on the way, in kind and size; when is left to chance. */
const TROUBLES: readonly Omit<Event, "atS">[] = [
  { shape: [4 * MIN, 5 * MIN, 8 * MIN], effect: { map: -28, pulse: -14, hr: 24 } },
  { shape: [90, 3 * MIN, 4 * MIN], effect: { spo2: -11 } },
  { shape: [8 * MIN, 12 * MIN, 10 * MIN], effect: { etco2: 17 } },
  { shape: [6 * MIN, 8 * MIN, 8 * MIN], effect: { etco2: -13 } },
  { shape: [30 * MIN, 15 * MIN, 10 * MIN], effect: { glucose: -4.4 } },
  { shape: [40 * MIN, 40 * MIN, 50 * MIN], effect: { temp: 2.4 } },
  { shape: [4 * MIN, 18 * MIN, 15 * MIN], effect: { icp: 20, map: 18, hr: -34, motor: -2, pupilRight: 4 } },
  { shape: [5 * MIN, 10 * MIN, 10 * MIN], effect: { map: 30, pulse: 30 } },
  { shape: [3 * MIN, 6 * MIN, 6 * MIN], effect: { hr: 60, map: -12 } },
];

const weight = ({ atS, shape: [up, hold, down] }: Event, nowS: number): number => {
  const t = nowS - atS;
  if (t <= 0 || t >= up + hold + down) return 0;
  if (t < up) return t / up;
  return t < up + hold ? 1 : (up + hold + down - t) / down;
};

/**
 * A body that drifts, falls and recovers, the same for the same seed. Induction at `inductionS` brings its own dip.
 * Not for: teaching physiology. It only has to make numbers cross every limit in plausible company.
 */
export function createPatient(
  kind: PatientKind,
  random: Random,
  lastsS: number,
  inductionS: number,
): (nowS: number) => Body {
  const events: Event[] = [
    { atS: inductionS + 40, shape: [60, 150, 300], effect: { map: -30, pulse: -16, hr: 16 } },
    { atS: inductionS + 90, shape: [60, 50, 90], effect: { spo2: -9 } },
  ];
  for (let atS = inductionS + 12 * MIN; atS < lastsS; atS += (8 + random.below(14)) * MIN)
    events.push({ atS, ...random.pick(TROUBLES) });
  const off: Latent = { ...kind.at };
  for (const key of Object.keys(off) as (keyof Latent)[]) off[key] = 0;
  let lastS = 0;
  return (nowS) => {
    const stepS = nowS - lastS;
    lastS = nowS;
    const now: Latent = { ...kind.at };
    for (const key of Object.keys(now) as (keyof Latent)[]) {
      const [sd, memoryS] = WANDER[key];
      const keep = Math.exp(-stepS / memoryS);
      const noise = random.next() + random.next() + random.next() + random.next() - 2; // sd 0.58
      off[key] = off[key] * keep + (noise / 0.58) * sd * Math.sqrt(1 - keep * keep);
      now[key] += off[key];
      for (const event of events) now[key] += weight(event, nowS) * (event.effect[key] ?? 0);
    }
    const whole = (value: number, low: number, high: number): number =>
      Math.round(Math.min(high, Math.max(low, value)));
    const dbp = whole(now.map - now.pulse / 3, 30, 140);
    return {
      sbp: Math.max(dbp + 12, whole(dbp + now.pulse, 45, 240)),
      dbp,
      hr: whole(now.hr, 32, 190),
      spo2: whole(now.spo2, 60, 100),
      etco2: whole(now.etco2, 12, 85),
      temp: Math.round(Math.min(41, Math.max(33, now.temp)) * 10) / 10,
      glucose: Math.round(Math.min(25, Math.max(2, now.glucose)) * 10) / 10,
      icp: whole(now.icp, 3, 60),
      eye: 1,
      motor: whole(now.motor, 1, 6),
      pupilRight: whole(now.pupilRight, 2, 8),
      rightFixed: now.pupilRight > kind.at.pupilRight + 2.5,
    };
  };
}
