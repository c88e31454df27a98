import type { Fact } from "../log/facts.ts";

const TELLS_AGE = /\b(aged?|years?)\b/iu;

/** Neither FHIR nor XML has a place for these in a text. */
const NO_TEXT = /(?![\t\n\r])[\p{Cc}\p{Cs}\ufffe\uffff]/gu;

/** Words as they were heard, unless an age could be in them; `undefined`: left out. */
export const tellWords = (words: string): string | undefined =>
  TELLS_AGE.test(words) ? undefined : words.replace(NO_TEXT, "\ufffd");

/**
 * What was heard of a fact, as it may leave the device: nothing of a breath in which an age was said, whatever the age.
 *
 * @param facts the whole case.
 */
export function verbatim(facts: readonly Fact[]): (fact: Fact) => string | undefined {
  const withAge = new Set(facts.flatMap((f) => (f.type === "vital.recorded" && f.code === "age" ? [f.readingId] : [])));
  return (fact) => {
    if (!("heard" in fact) || ("readingId" in fact && withAge.has(fact.readingId))) return undefined;
    return tellWords(fact.heard);
  };
}
