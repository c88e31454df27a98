import type { HeardSound } from "../../src/listener/hearing.ts";
import { m1 } from "../../src/listener/margins.ts";
import { OUTPUT_COUNT } from "../../src/listener/phones.ts";
import { freePath, logSoftmax } from "../../src/listener/phoneScores.ts";
import { frameSpeech } from "../../src/listener/vadTrim.ts";
import { createFeatures } from "../../src/listener/features.ts";
import type { GrammarName, Lab } from "./lab.ts";
import { createWarpedFeatures, filterMeans, normalised, type RawMel } from "./warpedFeatures.ts";

const WARPS = [0.88, 0.94, 1, 1.06, 1.12] as const;
const NO_WARP = WARPS.indexOf(1);
/** Said words that are not among the candidates count as if they were this far behind the best, in nats. */
const NOT_FOUND = 20;

export type Line = { readonly said: string; readonly pcm: Float32Array };
export type Outcome = "right" | "refused" | "wrong";

/** How a speaker's lines are judged: the grammar, what became of a sound, and whether its best words mean what was said. */
export type Judge = {
  readonly grammar: GrammarName;
  readonly outcome: (said: string, heard: HeardSound) => Outcome;
  readonly guessIsRight: (said: string, heard: HeardSound) => boolean;
};

export const METHODS = [
  { name: "plain", warped: false, share: 0 },
  { name: "warp", warped: true, share: 0 },
  { name: "half speaker mean", warped: false, share: 0.5 },
  { name: "speaker mean", warped: false, share: 1 },
] as const;

export type Counts = Record<Outcome | "guess", number>;
export type SpeakerResult = {
  readonly group: string;
  readonly speaker: string;
  readonly warp: number;
  readonly linesRight: number;
  readonly m1Mean: number;
  readonly held: number;
  readonly counts: Readonly<Record<string, Counts>>;
};

const features = createWarpedFeatures(WARPS);
const own = createFeatures();

/** The study's own features must be the listener's where nothing is warped. */
function checkFeatures(pcm: Float32Array, raw: RawMel): void {
  const { mel } = own.logMel(pcm);
  const mine = normalised(raw, filterMeans([raw]), 0);
  const worst = mel.reduce((most, x, i) => Math.max(most, Math.abs(x - mine[i]!)), 0);
  if (worst > 1e-3) throw new Error(`features differ by ${worst}`);
}

export async function tryWays(
  lab: Lab,
  group: string,
  speaker: string,
  lines: readonly Line[],
  held: readonly Line[],
  judge: Judge,
): Promise<SpeakerResult> {
  const hear = async (mel: Float32Array<ArrayBuffer>, frames: number): Promise<HeardSound> => {
    const outputs = Math.ceil(frames / 3);
    const logits = await lab.models.acoustic(mel, frames);
    if (logits.length !== outputs * OUTPUT_COUNT) throw new Error("shape");
    const logProbs = logSoftmax(logits, outputs);
    return {
      candidates: lab.searches[judge.grammar].decode(logProbs, outputs),
      free: freePath(logProbs, outputs),
    };
  };
  const rawOf = async ({ pcm }: Line): Promise<readonly RawMel[]> => {
    const framed = await frameSpeech(pcm, lab.models.vad);
    const raws = features(framed);
    checkFeatures(framed, raws[NO_WARP]!);
    return raws;
  };
  const plain = (raw: RawMel): Promise<HeardSound> => hear(normalised(raw, filterMeans([raw]), 0), raw.frames);

  const fits = WARPS.map(() => 0);
  const enrolled: RawMel[] = [];
  let linesRight = 0;
  let m1Sum = 0;
  for (const line of lines) {
    const raws = await rawOf(line);
    enrolled.push(raws[NO_WARP]!);
    for (const [w, raw] of raws.entries()) {
      const heard = await plain(raw);
      const [best] = heard.candidates;
      const said = heard.candidates.find(({ words }) => words === line.said);
      fits[w]! += said?.score ?? (best?.score ?? -200) - NOT_FOUND;
      if (w !== NO_WARP) continue;
      if (judge.outcome(line.said, heard) === "right") linesRight++;
      m1Sum += best === undefined || heard.free === undefined ? -2 : m1(best.score, heard.free);
    }
  }
  const chosen = fits.indexOf(Math.max(...fits));
  const speakerMean = filterMeans(enrolled);

  const counts: Record<string, Counts> = Object.fromEntries(
    METHODS.map(({ name }) => [name, { right: 0, refused: 0, wrong: 0, guess: 0 }]),
  );
  for (const line of held) {
    const raws = await rawOf(line);
    for (const { name, warped, share } of METHODS) {
      const raw = raws[warped ? chosen : NO_WARP]!;
      const heard = await hear(normalised(raw, speakerMean, share), raw.frames);
      const count = counts[name]!;
      count[judge.outcome(line.said, heard)]++;
      if (judge.guessIsRight(line.said, heard)) count.guess++;
    }
  }
  console.error(group, speaker, WARPS[chosen], linesRight, JSON.stringify(counts));
  return {
    group,
    speaker,
    warp: WARPS[chosen]!,
    linesRight,
    m1Mean: m1Sum / Math.max(1, lines.length),
    held: held.length,
    counts,
  };
}
