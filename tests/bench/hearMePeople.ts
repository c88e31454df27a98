import { heardNumber } from "../../src/cli/hearNumber.ts";
import { wordsToNumber } from "../../src/language/numbers/wordsToNumber.ts";
import { groupBy } from "./groupBy.ts";
import { hasAudioSet, readRecording, readRows, type Row } from "./audioSet.ts";
import type { Lab } from "./lab.ts";
import { saidNumber } from "./people.ts";
import { createRandom } from "./random.ts";
import { tryWays, type Judge, type Line, type SpeakerResult } from "./hearMeSpeaker.ts";

const ENROLMENT_LINES = 5;
const FEWEST_HELD = 5;
/** AN4 speakers that took no part in the network's training (its card). */
const AN4_APART = ["an4_mjhp", "an4_fkai", "an4_mrcb", "an4_mmkw", "an4_fcaw", "an4_mnjl"];

const numberOf = (words: string): number | undefined => {
  const value = wordsToNumber(words.split(" "));
  return value.ok ? value.value : undefined;
};

const judge: Judge = {
  grammar: "numbers",
  outcome(said, heard) {
    const believed = heardNumber(heard);
    return believed === null ? "refused" : believed === numberOf(said) ? "right" : "wrong";
  },
  guessIsRight: (said, { candidates: [best] }) => best !== undefined && numberOf(best.words) === numberOf(said),
};

/** People of whom the network heard nothing: those that it knows already say nothing about a stranger. */
function groupOf(speaker: string): string | undefined {
  if (speaker.startsWith("an4_")) return AN4_APART.includes(speaker) ? "people: AN4" : undefined;
  return speaker.startsWith("fsdd_") ? "people: digits" : "people: others";
}

/** The longest clips tell most, so they are the enrolment lines; what is left is held out. */
function split(rows: readonly Row[]): readonly (readonly Row[])[] {
  const byLength = rows.toSorted((a, b) => Number(b["seconds"]) - Number(a["seconds"]));
  const enrol = byLength.slice(0, ENROLMENT_LINES);
  return [enrol, rows.filter((row) => !enrol.includes(row))];
}

/** People that took no part in training: numbers by speaker, five of them to enrol with, the others to be heard. */
export async function tryPeople(lab: Lab, heldCount: number, seed: number): Promise<readonly SpeakerResult[]> {
  if (!hasAudioSet()) return [];
  const spoken = [...readRows("speech-manifest.csv"), ...readRows("joined.csv")].filter(
    (row) => ["connected", "word", undefined].includes(row["kind"]) && saidNumber(row) !== undefined,
  );
  const read = (rows: readonly Row[]): Promise<readonly Line[]> =>
    Promise.all(rows.map(async (row) => ({ said: row["words"] ?? "", pcm: await readRecording(row["file"] ?? "") })));
  const random = createRandom(seed);
  const results: SpeakerResult[] = [];
  for (const [speaker, rows] of groupBy(spoken, (row) => row["speaker"] ?? "")) {
    const [enrol = [], held = []] = split(rows);
    const group = groupOf(speaker);
    if (group === undefined || held.length < FEWEST_HELD) continue;
    results.push(
      await tryWays(lab, group, speaker, await read(enrol), await read(random.sample(held, heldCount)), judge),
    );
  }
  return results;
}
