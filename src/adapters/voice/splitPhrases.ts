/** A stretch of text said in one go, and the silence that belongs after it. */
export type Phrase = { readonly text: string; readonly pauseAfterMs: number };

// Ours: long enough to part two numbers, short enough for a status sentence that has to end soon.
const COMMA_PAUSE_MS = 100;
const STOP_PAUSE_MS = 150;

/** A longer sentence is also cut at its commas: each cut costs a little length, each uncut letter a later first sound. */
const LONG_CHARACTERS = 80;

/** Text up to and with a mark that ends something; a point or a colon inside a number has no space after it. */
const SENTENCE = /.+?(?:[.!?;:]+(?=\s|$)|$)/gs;
const CLAUSE = /.+?(?:[.!?;:,]+(?=\s|$)|$)/gs;
const SAYS_SOMETHING = /[\p{L}\p{N}]/u;

/**
 * Splits text at its punctuation, so that the first phrase can sound while the rest is still being made.
 *
 * @returns phrases in order, never one without a letter or digit; the last one has no pause.
 */
export function splitPhrases(text: string): readonly Phrase[] {
  const parts = cut(text, SENTENCE)
    .flatMap((sentence) => (sentence.length > LONG_CHARACTERS ? cut(sentence, CLAUSE) : [sentence]))
    .filter((part) => SAYS_SOMETHING.test(part));
  return parts.map((part, i) => ({
    text: part,
    pauseAfterMs: i === parts.length - 1 ? 0 : part.endsWith(",") ? COMMA_PAUSE_MS : STOP_PAUSE_MS,
  }));
}

const cut = (text: string, at: RegExp): readonly string[] => (text.match(at) ?? []).map((part) => part.trim());
