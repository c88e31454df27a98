import type { Acoustic } from "../../../src/listener/listen.ts";
import { createFeatures, type Features } from "../../../src/listener/features.ts";
import { freePath, logSoftmax } from "../../../src/listener/phoneScores.ts";
import type { Search } from "../../../src/listener/search.ts";

const RATE_HZ = 16_000;
const FRAMES_PER_OUTPUT = 3;

/** What one utterance took, ms, and how long it is. */
export type StageTimes = {
  readonly soundMs: number;
  readonly features: number;
  readonly network: number;
  readonly freePath: number;
  /** By grammar. */
  readonly searches: Readonly<Record<string, number>>;
};

/** Each sound is listened to so often, and every stage's least time counts: other work on the machine only ever adds. */
const REPEATS = 3;

async function timeOnce(
  pcm: Float32Array,
  { logMel }: Features,
  acoustic: Acoustic,
  searches: Readonly<Record<string, Search>>,
): Promise<StageTimes> {
  const begun = performance.now();
  const { mel, frames } = logMel(pcm);
  const featuresDone = performance.now();
  const logits = await acoustic(mel, frames);
  const networkDone = performance.now();
  const outputs = Math.ceil(frames / FRAMES_PER_OUTPUT);
  const logProbs = logSoftmax(logits, outputs);
  freePath(logProbs, outputs);
  const freeDone = performance.now();
  const searchMs: Record<string, number> = {};
  for (const [name, search] of Object.entries(searches)) {
    const searchBegun = performance.now();
    search.decode(logProbs, outputs);
    searchMs[name] = performance.now() - searchBegun;
  }
  return {
    soundMs: (1000 * pcm.length) / RATE_HZ,
    features: featuresDone - begun,
    network: networkDone - featuresDone,
    freePath: freeDone - networkDone,
    searches: searchMs,
  };
}

const leastOf = (a: StageTimes, b: StageTimes): StageTimes => ({
  soundMs: a.soundMs,
  features: Math.min(a.features, b.features),
  network: Math.min(a.network, b.network),
  freePath: Math.min(a.freePath, b.freePath),
  searches: Object.fromEntries(
    Object.entries(a.searches).map(([name, spent]) => [name, Math.min(spent, b.searches[name] ?? spent)]),
  ),
});

/** Listens to each sound in steps, here or in a browser: nothing in it belongs to either. */
export async function timeStages(
  sounds: readonly Float32Array[],
  acoustic: Acoustic,
  searches: Readonly<Record<string, Search>>,
): Promise<readonly StageTimes[]> {
  const features = createFeatures();
  const times: StageTimes[] = [];
  for (let repeat = 0; repeat < REPEATS; repeat++)
    for (const [n, pcm] of sounds.entries()) {
      const spent = await timeOnce(pcm, features, acoustic, searches);
      times[n] = leastOf(spent, times[n] ?? spent);
    }
  return times;
}
