import fc from "fast-check";
import type { HeardBy } from "../../src/log/facts.ts";

/** One thing said, and how long after the last one. */
export type Said = { readonly words: string; readonly by: HeardBy; readonly afterS: number };

const number = fc.oneof(
  fc.integer({ min: 0, max: 260 }).map(String),
  fc.constantFrom(
    "fifteen",
    "fifty",
    "one five",
    "five zero",
    "ninety",
    "nineteen",
    "one ten",
    "eighty",
    "one fifteen",
    "one fifty",
    "thirty six point five",
    "five",
    "four point five",
    "seventy",
  ),
);
const name = fc.constantFrom(
  "heart rate",
  "sats",
  "icp",
  "end tidal",
  "map",
  "systolic",
  "diastolic",
  "pressure",
  "temp",
  "glucose",
  "resp rate",
  "weight",
  "height",
  "age",
  "left pupil",
  "motor",
);
const unit = fc.constantFrom("", "", "", " kilopascals", " mmHg", " pounds", " mg/dL", " centimetres of water");
const vital = fc.oneof(
  fc.tuple(name, number, unit).map(([n, v, u]) => `${n} ${v}${u}`),
  fc.tuple(number, number).map(([s, d]) => `${s} over ${d}`),
  fc.tuple(number, number, number).map(([s, d, m]) => `${s} over ${d} map ${m}`),
);
const several = fc.array(vital, { minLength: 1, maxLength: 3 }).map((v) => v.join(", "));
const answer = fc.oneof(
  number,
  fc.constantFrom("affirm", "negative", "kilopascals", "millimetres of mercury", "millimoles per litre", "inches"),
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
  "stand by",
  "what can i say",
);
const junk = fc.oneof(fc.string({ maxLength: 12 }), fc.constantFrom("the weather is nice", "no idea", "bp 12O/80"));

const words = fc.oneof(
  { weight: 5, arbitrary: several },
  { weight: 4, arbitrary: answer },
  { weight: 2, arbitrary: several.map((s) => `correction ${s}`) },
  { weight: 1, arbitrary: number.map((n) => `correction ${n}`) },
  { weight: 2, arbitrary: command },
  { weight: 1, arbitrary: junk },
);

/** A case as people, and not only sensible ones, may talk through it. */
export const talking: fc.Arbitrary<readonly Said[]> = fc.array(
  fc.record({
    words,
    by: fc.constantFrom<HeardBy>("typed", "typed", "browser"),
    afterS: fc.constantFrom(0, 0, 1, 4, 31, 100),
  }),
  { minLength: 1, maxLength: 25 },
);
