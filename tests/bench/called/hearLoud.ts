import { speechAloneDb } from "../../../src/app/loudness.ts";
import type { HearingOutput } from "../../../src/listener/hearing.ts";
import { IN_BABBLE, IN_ENGINES, place } from "../hearing/conditions.ts";
import { scoreSaying } from "../hearing/saying.ts";
import { pickSpeaker } from "../hearing/speakers.ts";
import { createStateAfter, LATER_MS, OPEN_CASE, START_MS } from "../hearing/statements.ts";
import { truthOf, type Outcome } from "../judge.ts";
import { createRandom } from "../random.ts";
import { statementsFor, type CalledParts } from "./hearCalled.ts";

/** Speech over noise while speaking, full band, as it was mixed. */
const MIXED_DB: readonly number[] = [20, 15, 10, 7.5, 5, 2.5, 0, -5];
const NOW_MS = START_MS + LATER_MS.open;

/** One statement in noise, what came of it, and by how much the app would say that it stood out. */
export type LoudTrial = {
  readonly noise: "engines" | "babble";
  readonly mixedDb: number;
  /** Level of the speech alone over the meter's floor just before it; undefined where no utterance was found. */
  readonly estimatedDb: number | undefined;
  readonly outcome: Outcome;
};

function estimateDb(outputs: readonly HearingOutput[]): number | undefined {
  const startsAt = outputs.findIndex(({ kind }) => kind === "speechStarted");
  const floor = outputs.slice(0, Math.max(0, startsAt)).findLast((output) => output.kind === "level");
  const heard = outputs.find((output) => output.kind === "heard");
  const shape = heard?.kind === "heard" ? heard.heard.shape : undefined;
  return floor?.kind === "level" && shape !== undefined ? speechAloneDb(shape) - floor.noiseDb : undefined;
}

/** Statements by made voices in open listening, in ever louder noise. Half of them in engines, half in babble. */
export async function hearLoud(parts: CalledParts): Promise<readonly LoudTrial[]> {
  const { lab, flite, noises, set, seed } = parts;
  if (noises.length === 0) return [];
  const start = createStateAfter(lab.context)(OPEN_CASE);
  const random = createRandom(seed * 1_000 + 4);
  const trials: LoudTrial[] = [];
  for (const { words } of statementsFor(parts)) {
    const truth = truthOf(lab.context, start, words, NOW_MS);
    for (const mixedDb of MIXED_DB) {
      const noise = random.pick(["engines", "babble"] as const);
      const condition = { name: noise, snrDb: mixedDb, ...(noise === "engines" ? IN_ENGINES : IN_BABBLE) };
      const { pcm } = place(pickSpeaker(set, random).say(flite, words, random), condition, noises, random);
      const outputs = await lab.hearAll(pcm, "open");
      const heards = outputs.flatMap((output) => (output.kind === "heard" ? [output.heard] : []));
      const { outcome } = scoreSaying(lab.context, start, truth, heards, NOW_MS);
      trials.push({ noise, mixedDb, estimatedDb: estimateDb(outputs), outcome });
    }
  }
  return trials;
}
