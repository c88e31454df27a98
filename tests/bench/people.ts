import { heardNumber } from "../../src/cli/hearNumber.ts";
import { wordsToNumber } from "../../src/language/numbers/wordsToNumber.ts";
import { m1, m2 } from "../../src/listener/margins.ts";
import { readRecording, type Row } from "./audioSet.ts";
import { truthOf } from "./judge.ts";
import type { Lab } from "./lab.ts";
import type { Random } from "./random.ts";
import type { Replay } from "./replay.ts";
import { caseAfter, scoreHeard } from "./scoring.ts";
import { withRoom } from "./sound.ts";
import type { Trial } from "./trial.ts";

const START_MS = 1_800_000_000_000;
const NOW_MS = START_MS + 5_000;

const numberOf = (words: string): number | undefined => {
  const value = wordsToNumber(words.split(" "));
  return value.ok ? value.value : undefined;
};
const meaningOf = (words: string): string | undefined => numberOf(words)?.toString();

/** What was said as a number, or nothing where it is no number of ours ("fifty two thirteen"). */
export const saidNumber = ({ words = "" }: Row): number | undefined => numberOf(words);

const conditionOf = ({ snr_db }: Row): string =>
  snr_db === undefined ? "as recorded" : snr_db === "" ? "quiet" : `${snr_db} dB`;

/** People's numbers with the grammar of numbers alone, each file one utterance, as `hear` does it. */
export async function tryNumbers(lab: Lab, group: string, rows: readonly Row[]): Promise<readonly Trial[]> {
  const trials: Trial[] = [];
  for (const row of rows) {
    const said = saidNumber(row);
    if (said === undefined) continue;
    const heard = await lab.hearHeld(await readRecording(row["file"] ?? ""), "numbers");
    const believed = heardNumber(heard);
    const [best] = heard.candidates;
    const guess = best === undefined ? undefined : numberOf(best.words);
    const taken = guess === undefined ? "silent" : guess === said ? "right" : "wrong";
    const unbelieved = { doubtfulMeaning: "refused", doubtfulLanguage: "refused" } as const;
    const replay: Replay | undefined =
      best === undefined || heard.free === undefined
        ? undefined
        : { m1: m1(best.score, heard.free), m2: m2(heard.candidates, meaningOf), taken, ...unbelieved };
    trials.push({
      group,
      condition: conditionOf(row),
      voice: row["speaker"] ?? "",
      words: row["words"] ?? "",
      heard: best?.words ?? "-",
      outcome: believed === null ? "refused" : believed === said ? "right" : "wrong",
      askedByRule: false,
      replays: replay === undefined ? [] : [replay],
    });
  }
  return trials;
}

/** People's yes and no, openly heard while a question waits. */
export async function tryAnswers(lab: Lab, rows: readonly Row[], random: Random): Promise<readonly Trial[]> {
  const state = caseAfter(lab.context, ["i c p fifteen"], START_MS);
  const trials: Trial[] = [];
  for (const { file = "", words = "", speaker = "" } of rows) {
    const truth = truthOf(lab.context, state, words, NOW_MS);
    if (truth.keys.size === 0) continue;
    const heard = await lab.hearOpen(withRoom(await readRecording(file), random), "asked");
    const scored = scoreHeard(lab.context, state, truth, heard, NOW_MS);
    trials.push({
      group: `"${words}" to a question`,
      condition: "as recorded",
      voice: speaker,
      words,
      heard: scored.heardWords,
      outcome: scored.outcome,
      askedByRule: truth.isAsked,
      replays: scored.replays,
    });
  }
  return trials;
}
