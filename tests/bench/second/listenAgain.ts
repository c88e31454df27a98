import { createFeatures } from "../../../src/listener/features.ts";
import { m1, m2 } from "../../../src/listener/margins.ts";
import { freePath, logSoftmax } from "../../../src/listener/phoneScores.ts";
import type { Candidate } from "../../../src/listener/search.ts";
import type { Lab } from "../lab.ts";
import { COPIES } from "./copies.ts";
import { readingsSearch } from "./readingsSearch.ts";
import type { Tongue } from "./sayings.ts";
import type { Stopwatches } from "../stopwatch.ts";

const FRAMES_PER_OUTPUT = 3;
/** Listening once to the mean of the probabilities of the sound as it is and of its two shifted copies. */
export const AVERAGED = "mean of three begins";
const SHIFTS = [0, 1];

/** What a further listening says of the first one's meaning. */
export type Opinion = {
  readonly agrees: boolean;
  /** Its margin of the first one's meaning over the best other, nats; below 0 where it prefers another. */
  readonly supportNats: number;
};

/** One clip, heard once and then again in every way. */
export type Evidence = {
  /** The same words said in several conditions stand or fall together. */
  readonly saying: string;
  readonly kind: string;
  readonly condition: string;
  readonly voice: string;
  readonly words: string;
  readonly heard: string;
  readonly isRight: boolean;
  readonly m1: number;
  readonly m2: number;
  readonly opinions: Readonly<Record<string, Opinion>>;
};

export type Heard = Pick<Evidence, "heard" | "isRight" | "m1" | "m2" | "opinions">;

/** A margin without a rival is as good as any that was met. */
const LARGEST_NATS = 100;

function opinionOf(candidates: readonly Candidate[], meaning: string | undefined, tongue: Tongue): Opinion {
  const keyed = candidates.map(({ words, score }) => ({ key: tongue.meaningOf(words), score }));
  const last = keyed.at(-1)?.score ?? 0;
  const same = keyed.find(({ key }) => key === meaning)?.score ?? last;
  const other = keyed.find(({ key }) => key !== meaning)?.score ?? same - LARGEST_NATS;
  return { agrees: keyed[0] !== undefined && keyed[0].key === meaning, supportNats: same - other };
}

/** Listens to one utterance, 0.3 s of background on both sides, and then to its copies. Nothing where no words were found. */
export async function listenAgain(
  lab: Lab,
  pcm: Float32Array,
  tongue: Tongue,
  meant: string,
  watches: Stopwatches,
): Promise<Heard | undefined> {
  const { acoustic } = lab.models;
  const mel = createFeatures().logMel(pcm);
  const probabilities = async (of: typeof mel): Promise<{ logProbs: Float32Array; outputs: number }> => {
    const outputs = Math.ceil(of.frames / FRAMES_PER_OUTPUT);
    const logits = await watches.time("network", () => acoustic(of.mel, of.frames));
    return { logProbs: logSoftmax(logits, outputs), outputs };
  };
  const first = await probabilities(mel);
  const candidates = await watches.time("search", () => tongue.search.decode(first.logProbs, first.outputs));
  const [best] = candidates;
  if (best === undefined) return undefined;
  const meaning = tongue.meaningOf(best.words);

  const choice = await watches.time("search among readings, made", () =>
    readingsSearch(
      candidates.map((c) => c.words),
      tongue.dictionary,
    ),
  );
  const again = (logProbs: Float32Array, outputs: number): readonly Candidate[] => {
    const startedMs = performance.now();
    const found = choice.decode(logProbs, outputs);
    watches.add("search among readings", performance.now() - startedMs);
    return found;
  };

  const opinions: Record<string, Opinion> = {};
  const mean = first.logProbs.map(Math.exp);
  for (const [nth, { name, of }] of COPIES.entries()) {
    const copied = await watches.time(`copy: ${name}`, () => of(pcm, mel));
    const { logProbs, outputs } = await probabilities(copied);
    opinions[name] = opinionOf(again(logProbs, outputs), meaning, tongue);
    // A copy that is begun later may have one output less; what it lacks is left as it was.
    if (SHIFTS.includes(nth))
      for (let i = 0; i < mean.length; i++) mean[i]! += Math.exp(logProbs[i] ?? first.logProbs[i]!);
  }
  const averaged = mean.map((sum) => Math.log(sum / (1 + SHIFTS.length)));
  opinions[AVERAGED] = opinionOf(again(averaged, first.outputs), meaning, tongue);
  const free = freePath(first.logProbs, first.outputs);
  return {
    heard: best.words,
    isRight: meaning === meant,
    m1: m1(best.score, free),
    m2: Math.min(LARGEST_NATS, m2(candidates, tongue.meaningOf)),
    opinions,
  };
}
