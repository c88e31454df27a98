import { understand } from "../language/understand/understand.ts";
import { meaningKey } from "../language/understand/meaningKey.ts";
import type { Command, Intent } from "../language/intent.ts";
import type { CaseGrammars } from "./compileGrammars.ts";
import { interpret } from "./interpret.ts";
import { speechAloneDb } from "./loudness.ts";
import type { GrammarState, Utterance } from "./ports.ts";

/** "Hear me" listens with what may be said while a question waits: the whole language, and the words that end it. */
export const HEAR_ME_GRAMMAR: GrammarState = "asked";

/** What one utterance measured. dBFS, full band. */
export type LineMeasure = { readonly speechDb: number; readonly noiseDb: number };

/** What an utterance was, against the line that was to be said. */
export type HeardLine =
  | {
      readonly kind: "line";
      /** right: would have been taken as meant. unsure: asked back. wrong: another meaning. missed: not in the language. */
      readonly outcome: "right" | "unsure" | "wrong" | "missed";
      readonly words: string;
      readonly measure: LineMeasure | undefined;
    }
  | { readonly kind: "command"; readonly command: Command }
  /** From a recogniser that gives no measure: nothing can be learnt from it. */
  | { readonly kind: "unmeasured" }
  /** Our own voice sounded too: it may be our own words. */
  | { readonly kind: "ownVoice" };

const keyOf = (grammars: CaseGrammars, words: string): string => {
  const meaning = understand(grammars.of(HEAR_ME_GRAMMAR), words.split(" "));
  return meaning.kind === "one" ? meaningKey(meaning.intent) : "";
};

/** The command that an utterance is, if it is one: sure, or to be asked for again. */
export function commandOf(
  grammars: CaseGrammars,
  state: GrammarState,
  utterance: Utterance,
): { readonly name: Command; readonly words: string; readonly isSure: boolean } | undefined {
  const heard = interpret(grammars, state, utterance);
  const intent = heard.kind === "meant" ? heard.intent : heard.kind === "unsure" ? heard.intents[0] : undefined;
  if (intent?.kind !== "command") return undefined;
  return { name: intent.command, words: heard.words, isSure: heard.kind === "meant" };
}

/** Whether an utterance could be this line, however unsure. */
export function isLineOf(grammars: CaseGrammars, line: string, utterance: Utterance): boolean {
  const wanted = keyOf(grammars, line);
  const words = utterance.candidates[0]?.words ?? "";
  return wanted !== "" && keyOf(grammars, words) === wanted;
}

function measureOf({ candidates, shape }: Utterance): LineMeasure | undefined {
  if (candidates.length === 0 || shape === undefined) return undefined;
  return { speechDb: speechAloneDb(shape), noiseDb: shape.noiseDb };
}

/**
 * Judges what was heard in place of a line, by the decision that the case itself uses. Pure; nothing is recorded.
 * Errors: none. Not for: utterances of the case.
 */
export function judgeLine(grammars: CaseGrammars, line: string, utterance: Utterance): HeardLine {
  if (utterance.overlapped) return { kind: "ownVoice" };
  if (utterance.by !== "listener") return { kind: "unmeasured" };
  const heard = interpret(grammars, HEAR_ME_GRAMMAR, utterance);
  const { words } = heard;
  const measure = measureOf(utterance);
  const wanted = keyOf(grammars, line);
  const intents: readonly Intent[] =
    heard.kind === "meant" ? [heard.intent] : heard.kind === "unsure" ? heard.intents : [];
  const [first] = intents;
  if (first?.kind === "command") return { kind: "command", command: first.command };
  if (first === undefined) {
    const isNear = heard.kind === "unclear" && keyOf(grammars, words) === wanted;
    return { kind: "line", outcome: isNear ? "unsure" : "missed", words, measure };
  }
  const isOffered = intents.some((intent) => meaningKey(intent) === wanted);
  const outcome = !isOffered ? "wrong" : heard.kind === "meant" ? "right" : "unsure";
  return { kind: "line", outcome, words, measure };
}
