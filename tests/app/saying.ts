import fc from "fast-check";
import type { Utterance } from "../../src/app/ports.ts";
import { normalise } from "../../src/language/normalise/normalise.ts";
import type { HeardBy } from "../../src/log/heardBy.ts";

/** One thing said, how long after the last one, and what the listener made of it. */
export type Said = {
  readonly words: string;
  readonly by: HeardBy;
  readonly afterS: number;
  readonly rival: string;
  /** Nats from the best words to the rival, and from the free path to the best words, a phone. */
  readonly rivalBehind: number;
  readonly costPerPhone: number;
  readonly overlapped: boolean;
};

const PHONES = 16;

/** As the port delivers it: text alone, or words of the grammar with their scores. */
export function utteranceOf(said: Said, endedAtMs: number): Utterance {
  if (said.by !== "listener") return { by: said.by, candidates: [{ words: said.words, score: 0 }], endedAtMs };
  const [words, rival] = [normalise(said.words).join(" "), normalise(said.rival).join(" ")];
  const rivals = rival === words ? [] : [{ words: rival, score: -said.rivalBehind }];
  return {
    by: "listener",
    candidates: [{ words, score: 0 }, ...rivals],
    free: { score: -said.costPerPhone * PHONES, phones: PHONES },
    ...(said.overlapped ? { overlapped: true } : {}),
    endedAtMs,
  };
}

/** Few vitals, so that they meet again; each with the numbers that people give for it, and now and then another. */
const NAMES: readonly (readonly [name: string, min: number, max: number, units: readonly string[]])[] = [
  ["heart rate", 40, 190, [""]],
  ["sats", 80, 100, ["", "%"]],
  ["icp", 5, 60, ["", "", "centimetres of water"]],
  ["end tidal", 3, 60, ["", "", "kilopascals", "mmHg"]],
  ["map", 50, 130, [""]],
  ["systolic", 60, 220, [""]],
  ["diastolic", 30, 120, [""]],
  ["glucose", 2, 200, ["", "", "mg/dL"]],
  ["weight", 40, 160, ["", "pounds"]],
  ["left pupil", 1, 9, [""]],
];
const SPOKEN = ["fifteen", "fifty", "one five", "five zero", "ninety", "nineteen", "eighty", "one fifty", "seventy"];

const spoken = fc.constantFrom(...SPOKEN);
const between = (min: number, max: number): fc.Arbitrary<string> =>
  fc.oneof({ weight: 4, arbitrary: fc.integer({ min, max }).map(String) }, { weight: 1, arbitrary: spoken });
const number = between(0, 200);
const vital = fc.oneof(
  {
    weight: 4,
    arbitrary: fc
      .constantFrom(...NAMES)
      .chain(([name, min, max, units]) =>
        fc.tuple(between(min, max), fc.constantFrom(...units)).map(([n, unit]) => `${name} ${n} ${unit}`.trim()),
      ),
  },
  { weight: 2, arbitrary: fc.tuple(between(80, 200), between(40, 110)).map(([s, d]) => `${s} over ${d}`) },
  {
    weight: 1,
    arbitrary: fc
      .tuple(between(100, 180), between(40, 80), between(70, 110))
      .map(([s, d, m]) => `${s} over ${d} map ${m}`),
  },
);
const several = fc.oneof(
  { weight: 3, arbitrary: vital },
  { weight: 1, arbitrary: fc.array(vital, { minLength: 2, maxLength: 3 }).map((v) => v.join(", ")) },
);
const answer = fc.oneof(
  spoken,
  number,
  fc.constantFrom("one five", "five zero", "one nine", "nine zero", "eight zero", "seven zero"),
  fc.constantFrom(
    "affirm",
    "affirm",
    "affirm",
    "affirm",
    "negative",
    "negative",
    "kilopascals",
    "millimetres of mercury",
    "millimoles per litre",
  ),
);
const command = fc.constantFrom(
  "disregard",
  "say again",
  "status",
  "read back",
  "next",
  "done",
  "later",
  "suction ready",
  "dose of ketamine",
  "stand by",
  "what can i say",
  "heard",
  "heard",
  "i have it",
  "i have the pressure",
  "pause alerts",
  "alerts on",
  "alerts only",
  "talk brief",
  "full talk",
  "louder",
  "slower",
  "slower",
  "how old",
  "margin",
  "read everything",
);
const patient = fc.constantFrom(
  "age six",
  "age sixty",
  "six months old",
  "cause bleed",
  "cause head injury",
  "herniation suspected",
  "no herniation",
  "age six two, cause bleed, herniation suspected",
  "correction cause bleed",
  "correction no herniation",
);
const junk = fc.oneof(fc.string({ maxLength: 12 }), fc.constantFrom("the weather is nice", "no idea", "bp 12O/80"));

const words = fc.oneof(
  { weight: 5, arbitrary: several },
  { weight: 7, arbitrary: answer },
  { weight: 3, arbitrary: several.map((s) => `correction ${s}`) },
  { weight: 1, arbitrary: number.map((n) => `correction ${n}`) },
  { weight: 1, arbitrary: spoken.map((n) => `negative ${n}`) },
  { weight: 1, arbitrary: fc.tuple(number, number).map(([a, b]) => `heart rate ${a} no heart rate ${b}`) },
  { weight: 3, arbitrary: command },
  { weight: 2, arbitrary: patient },
  { weight: 1, arbitrary: junk },
);

/** A case as people, and not only sensible ones, may talk through it. */
export const talking: fc.Arbitrary<readonly Said[]> = fc.array(
  fc.record({
    words,
    by: fc.constantFrom<HeardBy>("typed", "listener", "listener", "browser"),
    afterS: fc.constantFrom(0, 0, 0, 0, 1, 1, 2, 4, 31, 100),
    rival: words,
    rivalBehind: fc.constantFrom(9, 9, 9, 2, 1, 0.1),
    costPerPhone: fc.constantFrom(0, 0, 0, 0, 0, 0, -0.55, -2),
    overlapped: fc.constantFrom(false, false, false, false, false, false, true),
  }),
  { minLength: 1, maxLength: 25, size: "max" },
);
