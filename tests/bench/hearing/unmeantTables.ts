import type { Outcome } from "../judge.ts";
import type { Cell, Table } from "../report.ts";
import { percent, shareText } from "../shares.ts";
import { rateLowerPerHour, rateUpperPerHour } from "../wilson.ts";
import type { Saying } from "./saying.ts";

const count = (sayings: readonly Saying[], ...outcomes: readonly Outcome[]): number =>
  sayings.filter((s) => outcomes.includes(s.outcome)).length;
const hoursOf = (sayings: readonly Saying[]): number => sayings.reduce((sum, s) => sum + s.soundS, 0) / 3600;

const keys = (sayings: readonly Saying[], keyOf: (s: Saying) => string): readonly string[] => [
  ...new Set(sayings.map(keyOf)),
];

const TALK_TARGET: Readonly<Record<string, string>> = { "babble 10 dB": "≤ 2" };

/** Sentences that were not for the app. Taken, asked about and "say again" are three different nuisances. */
export function talkTable(sayings: readonly Saying[]): Table {
  const rows = keys(sayings, (s) => `${s.family}\n${s.condition}`).map((key): readonly Cell[] => {
    const [family = "", condition = ""] = key.split("\n");
    const some = sayings.filter((s) => s.family === family && s.condition === condition);
    const isTalk = family !== "near the language";
    return [
      family,
      condition,
      some.length,
      count(some, "wrong"),
      shareText(count(some, "wrong"), some.length),
      isTalk ? (TALK_TARGET[condition] ?? "≤ 1") : "",
      percent(count(some, "askedRight", "askedWrong") / some.length),
      percent(count(some, "refused") / some.length),
    ];
  });
  return {
    title: "Not meant for the app: sentences, open listening",
    notes: [
      "Invented talk of crews and wards, said by made voices; what people said in the recordings and the language does not hold; and phrases made to be mistaken for the language.",
    ],
    columns: ["what", "condition", "sentences", "TAKEN", "TAKEN %", "target %", "asked about %", "say again %"],
    rows,
  };
}

/** Noise alone, by the hour. */
export function noiseTable(sayings: readonly Saying[]): Table {
  const rows = keys(sayings, (s) => s.condition).map((condition): readonly Cell[] => {
    const some = sayings.filter((s) => s.condition === condition);
    const hours = hoursOf(some);
    const taken = count(some, "wrong");
    const perHour = (n: number): string => (n / hours).toFixed(1);
    return [
      condition,
      hours.toFixed(2),
      some.filter((s) => s.utterances.length > 0).length,
      taken,
      `${perHour(taken)} (${rateLowerPerHour(taken, hours).toFixed(1)}–${rateUpperPerHour(taken, hours).toFixed(1)})`,
      condition === "babble" ? "≤ 1" : "0",
      perHour(count(some, "askedRight", "askedWrong")),
      perHour(count(some, "refused")),
    ];
  });
  return {
    title: "Noise alone, open listening",
    notes: [
      "Loops of the recordings at −50 to −20 dBFS, played 0.9 to 1.1 times as fast. Intervals: exact Poisson, 95 %.",
    ],
    columns: [
      ...["noise", "hours", "utterances found", "TAKEN", "TAKEN per hour", "target per hour"],
      ...["asked per hour", "say again per hour"],
    ],
    rows,
  };
}

/** Everything that was taken though it was not said, in words, so that it can be listened to and understood. */
export function takenTable(title: string, sayings: readonly Saying[]): Table {
  const rows = sayings
    .filter((s) => s.outcome === "wrong")
    .map((s): readonly Cell[] => [
      s.family,
      s.condition,
      s.speaker === "" ? s.noise : `${s.speaker} in ${s.noise}`,
      s.said,
      s.utterances.map((u) => u.heard).join(" / "),
      s.utterances.map((u) => u.certainty.toFixed(3)).join(" / "),
    ]);
  return { title, notes: [], columns: ["what", "condition", "sound", "said", "heard", "certainty"], rows };
}
