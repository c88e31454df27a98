import { LOWEST_M1 } from "./phoneScores.ts";
import type { SoundShape } from "./soundShape.ts";

/** What one search tells about the words it found. */
export type Evidence = {
  /** Was it in the language? See `margins.ts`. */
  readonly m1: number;
  /** Could it be another meaning? See `margins.ts`. */
  readonly m2: number;
  /** Phones of the free path. */
  readonly phones: number;
  /** Missing where only the words are left of a sound: it then counts as plain speech in a quiet room. */
  readonly shape?: SoundShape | undefined;
};

/** Weights of a logistic model, in the order of its features. */
export type Weights = readonly number[];

export type CertaintyModel = {
  /** Were these words in the language at all? Weights of `languageFeatures`. */
  readonly language: Weights;
  /** If so, was it this meaning and no other? Weights of `meaningFeatures`. */
  readonly meaning: Weights;
};

/** A rival further off than this says no more. */
const FARTHEST_M2 = 30;
const QUIET_SNR_DB = 30;

const snrOf = (shape: SoundShape | undefined): number =>
  shape === undefined ? QUIET_SNR_DB : Math.min(QUIET_SNR_DB, Math.max(0, shape.levelDb - shape.noiseDb));

const fit = ({ m1 }: Evidence): number => Math.max(LOWEST_M1, m1);
const distance = ({ m2 }: Evidence): number => Math.log1p(Math.min(FARTHEST_M2, Math.max(0, m2)));
const noise = ({ shape }: Evidence): number => (QUIET_SNR_DB - snrOf(shape)) / 10;
const length = ({ phones }: Evidence): number => Math.log(Math.max(1, phones) / 10);

/**
 * Noise alone, the number of phones and their pace were tried here too and left out: with them fewer were right at as many
 * wrong (5,700 utterances of the tuning set).
 */
export const languageFeatures = (e: Evidence): readonly number[] => [1, fit(e), fit(e) * noise(e)];

export const meaningFeatures = (e: Evidence): readonly number[] => [1, distance(e), fit(e), noise(e), length(e)];

/** Between 0 and 1, never either. */
export function logistic(weights: Weights, features: readonly number[]): number {
  const sum = features.reduce((total, feature, i) => total + feature * (weights[i] ?? 0), 0);
  return 1 / (1 + Math.exp(-sum));
}

/**
 * The probability that the best words mean what was said: that they were in the language, times that no other meaning was
 * meant. Both factors are logistic in a few measures of one search.
 *
 * Not for: typed text, which has no sound; what the case makes likely, which may make the app ask but never take.
 */
export const certaintyBy = (model: CertaintyModel, evidence: Evidence): number =>
  logistic(model.language, languageFeatures(evidence)) * logistic(model.meaning, meaningFeatures(evidence));
