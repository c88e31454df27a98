import nlp from "compromise/one";

type Term = { readonly normal?: string; readonly implicit?: string | null };
type Sentence = { readonly terms?: readonly Term[] };

/**
 * Contractions and dotted abbreviations taken apart: "what's" → what is, "b.p." → bp. The only use of a language
 * library, and it never sees a digit: a library that reads numbers its own way would read some of them wrong.
 */
export function plainWords(text: string): readonly string[] {
  if (!/['.]/u.test(text)) return [text];
  const sentences = nlp(text).json() as readonly Sentence[];
  const found = sentences.flatMap((s) => (s.terms ?? []).map((term) => term.implicit ?? term.normal ?? ""));
  return found.filter((word) => word !== "");
}
