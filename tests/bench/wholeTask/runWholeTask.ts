import { loadContext } from "../../../src/cli/loadContext.ts";
import { spokenForms } from "../../../src/language/numbers/spokenForms.ts";
import type { BenchOptions } from "../options.ts";
import { createRandom, type Random } from "../random.ts";
import { machine, toMarkdown, writeReport, type Cell, type Table } from "../report.ts";
import { percent, shareText } from "../shares.ts";
import { quantile } from "../stopwatch.ts";
import { loadFlite } from "../synth.ts";
import { Ears } from "./ears.ts";
import { atItsWorst, measuredHearing, total, type Hearing } from "./measured.ts";
import { MOST_TURNS, playTask, type Habits, type Played, type Task, type Times } from "./user.ts";

/**
 * Sources of what people do. Notices: roughly 50 to 80 % of wrong read-backs are caught (tapes of air traffic, from memory).
 * Mishears: 3.5 % of telephoned results were taken down wrongly (29 of 822; Barenfanger 2004, Am J Clin Pathol 121:801).
 */
const HABITS: readonly Habits[] = [
  { notices: 0.5, mishears: 0.035 },
  { notices: 0.8, mishears: 0.035 },
  { notices: 0.8, mishears: 0 },
];

/** Whole numbers of each kind, in the span in which they are mostly said. Our own choice, no source. */
const KINDS: readonly ((pick: (min: number, max: number) => readonly [string, number]) => Task)[] = [
  (pick) => one("sats", "spo2", pick(80, 100)),
  (pick) => one("heart rate", "hr", pick(45, 150)),
  (pick) => one("map", "map", pick(50, 120)),
  (pick) => one("i c p", "icp", pick(5, 60)),
  (pick) => one("resp rate", "rr", pick(8, 40)),
  (pick) => one("weight", "weight", pick(40, 130)),
  (pick) => {
    const [[sbp, sbpMmHg], [dbp, dbpMmHg]] = [pick(90, 180), pick(40, 85)];
    return {
      words: `${sbp} over ${dbp}`,
      values: [
        ["sbp", sbpMmHg],
        ["dbp", dbpMmHg],
      ],
    };
  },
];

const one = (name: string, code: Task["values"][number][0], [words, value]: readonly [string, number]): Task => ({
  words: `${name} ${words}`,
  values: [[code, value]],
});

/** The first way to say a number with words for its tens: "ninety four", "one oh five". */
const naturally = (n: number): string => (spokenForms(n, 0).find((form) => n < 100 || form[0] !== "a") ?? []).join(" ");

function someTask(random: Random): Task {
  const pick = (min: number, max: number): readonly [string, number] => {
    const n = min + random.below(max - min + 1);
    return [naturally(n), n];
  };
  return random.pick(KINDS)(pick);
}

const SAMPLE = [
  "Sats ninety four.",
  "ICP fifteen, one five?",
  "Pressure one twenty over eighty. MAP ninety three, on target.",
  "Heart rate eighty five, or heart rate ninety five?",
  "Say again.",
  "Weight eighty, eight zero, kilograms.",
  "Measured MAP sixty two, twenty eight under ninety.",
  "Pressure one fifteen, one one five, over seventy. MAP eighty five, five under ninety.",
];

/** Seconds of our voice by letters: a straight line through what sentences of ours last with the built-in voice. */
async function voiceTimes(): Promise<(text: string) => number> {
  const flite = await loadFlite();
  const points = SAMPLE.map((text) => {
    const sound = flite.synthesise(text);
    if (!sound.ok) throw new Error(sound.error.detail);
    return [text.length, sound.value.pcm.length / sound.value.sampleRate] as const;
  });
  const mean = (list: readonly number[]) => list.reduce((sum, x) => sum + x, 0) / list.length;
  const [meanX, meanY] = [mean(points.map(([x]) => x)), mean(points.map(([, y]) => y))];
  const slope =
    points.reduce((sum, [x, y]) => sum + (x - meanX) * (y - meanY), 0) /
    points.reduce((sum, [x]) => sum + (x - meanX) ** 2, 0);
  return (text) => Math.max(0, meanY + slope * (text.length - meanX));
}

const spread = (list: readonly number[], decimals: number): string =>
  `${quantile(list, 0.5).toFixed(decimals)} / ${quantile(list, 0.95).toFixed(decimals)}`;

function row(name: string, { notices, mishears }: Habits, played: readonly Played[]): readonly Cell[] {
  const n = played.length;
  const done = played.filter(({ seconds, wrongStays }) => seconds !== undefined && !wrongStays);
  const wrong = played.filter(({ wrongStays }) => wrongStays).length;
  const none = n - done.length - wrong;
  return [
    name,
    `${percent(notices, 0)} % / ${percent(mishears)} %`,
    n,
    spread(
      done.map(({ turns }) => turns),
      0,
    ),
    spread(
      done.map(({ seconds }) => seconds ?? 0),
      1,
    ),
    shareText(played.filter(({ turns, seconds }) => turns === 1 && seconds !== undefined).length, n),
    `${wrong}: ${shareText(wrong, n, 2)}`,
    shareText(none, n),
  ];
}

const notes = (hearings: readonly Hearing[]): readonly string[] => [
  "Simulated users against the app's own decisions. Each brings one value into an empty case: says it, hears the answer, " +
    `affirms, corrects or says it again, at most ${MOST_TURNS} times. How often hearing is right, asks, refuses, hears ` +
    `nothing or is wrong is drawn from \`bench/evidence-test.json\` (sayings that no rule asks back: ${hearings
      .map(({ condition, values, answers }) => `${condition} ${total(values)} values and ${total(answers)} answers`)
      .join(
        "; ",
      )}); each saying is drawn apart, so a voice that is always heard badly is not in it. A wrong number is one ` +
    "with a word taken for another that was confused in the measured runs.",
  "Assumed: 0.35 s a word of the user, 0.55 s until the end of speech is certain and 0.77 s to our first word (both " +
    "measured), 0.6 s to begin an answer (Levinson & Torreira 2015: producing speech takes over 600 ms), 3 s of waiting " +
    "where nothing is said (no source). “Notices / mishears”: a wrong number read back or asked about is noticed; a right " +
    "one is taken for wrong. Notices 50 to 80 %: air traffic tapes, from memory. Mishears 3.5 %: Barenfanger 2004, 29 of 822.",
  "“At its worst”: with as many wrong as the upper end of the 95 % interval of the measured rate allows. “Wrong stays”: a " +
    "value that was not said stands at the end, noticed or not. Seconds: from the first word to the right value on record.",
];

/** `npm run bench -- task`: how long it takes, all told, until the right value stands, and how often a wrong one does. */
export async function runWholeTask({ seed, count }: BenchOptions, progress: (text: string) => void): Promise<void> {
  const startedMs = performance.now();
  const context = await loadContext({});
  if (!context.ok) throw new Error(context.error);
  const hearings = measuredHearing();
  const times: Times = { wordS: 0.35, answerS: 0.55 + 0.77, thinkS: 0.6, silenceS: 3, replyS: await voiceTimes() };
  const rows: (readonly Cell[])[] = [];
  for (const measured of hearings) {
    progress(measured.condition);
    const worst = { ...measured, values: atItsWorst(measured.values), answers: atItsWorst(measured.answers) };
    for (const [name, hearing] of [
      [measured.condition, measured],
      [`${measured.condition}, at its worst`, worst],
    ] as const)
      for (const habits of HABITS) {
        const random = createRandom(seed);
        const ears = new Ears(context.value, random);
        const play = () => playTask(context.value, someTask(random), hearing, habits, times, ears, random);
        rows.push(row(name, habits, Array.from({ length: count }, play)));
      }
  }
  const table: Table = {
    title: "The whole task: from the first word to the right value on record",
    notes: notes(hearings),
    columns: [
      "condition",
      "notices / mishears",
      "n",
      "turns, median / 95th",
      "seconds, median / 95th",
      "right at the first saying %",
      "wrong stays, n: %",
      "nothing on record %",
    ],
    rows,
  };
  process.stdout.write(`${toMarkdown(table)}\n`);
  const tookS = Math.round((performance.now() - startedMs) / 1000);
  writeReport(
    "task",
    { date: new Date().toISOString(), machine: machine(), options: `${count} tasks, seed ${seed}`, tookS },
    [table],
    {},
  );
}
