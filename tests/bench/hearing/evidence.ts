import type { AppContext } from "../../../src/app/context.ts";
import type { GrammarState } from "../../../src/app/ports.ts";
import type { Intent } from "../../../src/language/intent.ts";
import { wordsToNumber } from "../../../src/language/numbers/wordsToNumber.ts";
import { meaningKey } from "../../../src/language/understand/meaningKey.ts";
import { understand } from "../../../src/language/understand/understand.ts";
import { certaintyOf } from "../../../src/listener/certainty.ts";
import type { HeardSound } from "../../../src/listener/hearing.ts";
import { m1, m2 } from "../../../src/listener/margins.ts";
import type { SoundShape } from "../../../src/listener/soundShape.ts";
import type { Outcome } from "../judge.ts";
import { kindOf, type MeaningKind } from "./families.ts";

/** What one utterance that was found in the sound tells, whatever the app made of it: what a decision is fitted to. */
export type Evidence = {
  readonly heard: string;
  /** The best meaning equals what was said, and the best words have one meaning only. Never where nothing was meant. */
  readonly isRight: boolean;
  /** Of the best meaning. */
  readonly kind: MeaningKind;
  readonly m1: number;
  /** 99: no other meaning was found. */
  readonly m2: number;
  /** Of the free path. */
  readonly phones: number;
  readonly candidates: number;
  readonly shape?: SoundShape;
  /** How certain the app is of it; see `listener/certainty.ts`. */
  readonly certainty: number;
  /** Taken on trust, it would put something wrong on record, or do what was not said. Rules that ask anyway count. */
  readonly isWrongIfTaken: boolean;
};

/** JSON has no infinity. */
const FAR = 99;
const NO_MARGIN = -99;

function marginsOf({ candidates, free, shape }: HeardSound, meaningOf: (words: string) => string | undefined) {
  const margins = {
    m1: candidates[0] && free ? m1(candidates[0].score, free) : NO_MARGIN,
    m2: Math.min(FAR, m2(candidates, meaningOf)),
    phones: free?.phones ?? 0,
  };
  const certainty = certaintyOf({ ...margins, shape });
  return { ...margins, candidates: candidates.length, ...(shape === undefined ? {} : { shape }), certainty };
}

/**
 * @param keys       meanings of what was said, from the app's own reading of the words; empty where nothing was meant.
 * @param judgeTaken what would come of an intent if the sound left no doubt.
 */
export function evidenceOf(
  context: AppContext,
  state: GrammarState,
  keys: ReadonlySet<string>,
  heard: HeardSound,
  judgeTaken: (intent: Intent) => Outcome,
): Evidence {
  const readings = new Map(
    heard.candidates.map(({ words }) => {
      const meaning = understand(context.grammars.of(state), words.split(" "));
      return [words, meaning.kind === "none" ? [] : meaning.kind === "one" ? [meaning.intent] : meaning.intents];
    }),
  );
  const keysOf = (words: string): readonly string[] => (readings.get(words) ?? []).map(meaningKey).sort();
  const best = heard.candidates[0]?.words ?? "";
  const [key, ...others] = keysOf(best);
  const [intent, ...more] = readings.get(best) ?? [];
  return {
    heard: best,
    isRight: key !== undefined && others.length === 0 && keys.has(key),
    kind: kindOf(readings.get(best) ?? []),
    isWrongIfTaken: intent !== undefined && more.length === 0 && judgeTaken(intent) === "wrong",
    ...marginsOf(heard, (words) => keysOf(words).join(" | ")),
  };
}

const numberText = (words: string): string | undefined => {
  const value = wordsToNumber(words.split(" "));
  return value.ok ? value.value.toString() : undefined;
};

/** The same for the grammar of numbers alone, which has no app behind it. */
export function numberEvidence(said: number, heard: HeardSound): Evidence {
  const best = heard.candidates[0]?.words ?? "";
  return {
    heard: best,
    isRight: numberText(best) === said.toString(),
    kind: numberText(best) === undefined ? "none" : "number",
    isWrongIfTaken: numberText(best) !== undefined && numberText(best) !== said.toString(),
    ...marginsOf(heard, numberText),
  };
}
