import type { GrammarState } from "../../../src/app/ports.ts";
import type { AppContext } from "../../../src/app/context.ts";
import { readGrammarSources } from "../../../src/cli/readGrammars.ts";
import { understand } from "../../../src/language/understand/understand.ts";
import { hasAudioSet, readRows, type Row } from "../audioSet.ts";
import { saidNumber } from "../people.ts";
import { createRandom } from "../random.ts";
import { BABBLE, CONDITIONS, ENGINES } from "./conditions.ts";
import type { Job, Recording } from "./jobs.ts";
import { makeStatements } from "./statements.ts";
import { isOutside, makeTalk, nearTheLanguage } from "./talkTexts.ts";
import { createGrammarWalk } from "./walkGrammar.ts";

/** How much of each kind of sound, a condition. */
export type Size = {
  readonly statements: number;
  readonly talk: number;
  readonly near: number;
  readonly people: number;
  readonly noiseS: number;
};

/** In proportion to the statements; 2,000 of them go with an hour of each noise. */
export const sizeFor = (statements: number): Size => ({
  statements,
  talk: Math.round(statements / 8),
  near: Math.round(statements / 25),
  people: Math.round(statements),
  noiseS: Math.round((3_600 * statements) / 2_000),
});

const NOISE_PIECE_S = 60;
const OTHER_NOISES = ["water/hiss", "wind", "rain/thunder", "street"];
const NOISE_GROUPS = [
  ["engines", ENGINES],
  ["babble", BABBLE],
  ["water, wind, rain, street", OTHER_NOISES],
] as const;

type Unseeded = Job extends infer J ? (J extends Job ? Omit<J, "seed"> : never) : never;

/** Numbers far apart for neighbouring pieces of work (Fibonacci hashing), so that their chances have nothing in common. */
const seedOf = (seed: number, at: number): number => Math.imul(seed * 1_000_003 + at + 1, 2_654_435_769) >>> 0;

/** Everything that is to be heard, the longest sounds first. Without the recordings: quiet alone. */
export function makePlan(context: AppContext, size: Size, seed: number): readonly Job[] {
  const hasRecordings = hasAudioSet();
  const conditions = CONDITIONS.filter(({ noises }) => hasRecordings || noises.length === 0).map(({ name }) => name);
  const chance = createRandom(seedOf(seed, -1));
  const walk = createGrammarWalk(readGrammarSources(), "case");
  const statements = makeStatements(context, walk, size.statements, chance);
  const isTalk = (words: string): boolean => isOutside({ context }, words);
  const talk = makeTalk(size.talk, isTalk, chance);
  const near = chance.sample(nearTheLanguage(isTalk), size.near);

  const jobs: Unseeded[] = conditions.flatMap((condition): readonly Unseeded[] => [
    ...statements.map((statement) => ({ kind: "statement", condition, statement }) as const),
    ...talk.map((words) => ({ kind: "talk", condition, material: "talk", words }) as const),
    ...near.map((words) => ({ kind: "talk", condition, material: "near the language", words }) as const),
  ]);
  if (hasRecordings) {
    jobs.unshift(...noiseJobs(size.noiseS));
    jobs.push(...peopleJobs(context, conditions, (rows) => chance.sample(rows, size.people)));
  }
  return jobs.map((job, at) => ({ ...job, seed: seedOf(seed, at) }));
}

function noiseJobs(secondsEach: number): readonly Unseeded[] {
  const pieces = Math.ceil(secondsEach / NOISE_PIECE_S);
  const seconds = Math.min(NOISE_PIECE_S, secondsEach);
  return NOISE_GROUPS.flatMap(([condition, classes]) =>
    Array.from({ length: pieces }, () => ({ kind: "noise", condition, classes, seconds }) as const),
  );
}

function peopleJobs(
  context: AppContext,
  conditions: readonly string[],
  some: (rows: readonly Row[]) => readonly Row[],
): readonly Unseeded[] {
  const rows = readRows("speech-manifest.csv").filter(({ kind }) => kind !== "room");
  const hasMeaning = (state: GrammarState) => (row: Row) =>
    understand(context.grammars.of(state), (row["words"] ?? "").split(" ")).kind !== "none";
  const numbers = some(rows.filter((row) => saidNumber(row) !== undefined));
  const joined = some(readRows("joined.csv").filter((row) => saidNumber(row) !== undefined));
  const connected = numbers.filter(({ kind }) => kind === "connected");
  const answers = some(rows.filter((row) => row["kind"] !== "word" && hasMeaning("asked")(row)));
  const outside = rows.filter((row) => !hasMeaning("open")(row));
  const job = (condition: string, state: Extract<Unseeded, { kind: "person" }>["state"], row: Row) =>
    ({ kind: "person", condition, state, recording: recordingOf(row) }) as const;
  return [
    ...numbers.map((row) => job("as recorded", "numbers", row)),
    ...joined.map((row) => job(row["snr_db"] === "" ? "as recorded" : `as mixed, ${row["snr_db"]} dB`, "numbers", row)),
    ...conditions.slice(1).flatMap((condition) => connected.map((row) => job(condition, "numbers", row))),
    ...conditions.flatMap((condition) => answers.map((row) => job(condition, "asked", row))),
    // Each once, the conditions taking turns.
    ...some(outside).map((row, i) => job(conditions[i % conditions.length]!, "open", row)),
  ];
}

const recordingOf = (row: Row): Recording => ({
  file: row["file"] ?? "",
  words: row["words"] ?? "",
  speaker: row["speaker"] ?? "",
  sex: row["sex"] ?? "",
  accent: row["accent"] ?? "",
  kind: row["kind"] ?? "joined",
});
