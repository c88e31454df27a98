/** Written variants of one character that never change a number. */
const SAME: ReadonlyMap<string, string> = new Map([
  ["\u2018", "'"],
  ["\u2019", "'"],
  ["\u2010", "-"],
  ["\u2011", "-"],
  ["\u00ba", "°"],
  ["\u2103", "°c"],
  ["\u2109", "°f"],
]);

const FULL_WIDTH = /^[\uff01-\uff5e]$/u;

function folded(character: string): string {
  const plain = FULL_WIDTH.test(character) ? character.normalize("NFKC") : character;
  return SAME.get(plain) ?? plain.toLowerCase();
}

/**
 * Lower case, and one form for characters that are written in several: full-width forms, curly apostrophes, the small
 * two of "SpO₂". Superscripts, fractions, circled and foreign digits are left as they are, so that the grammar
 * refuses them: the usual compatibility folding (NFKC) of a whole text would make "10³" a 103.
 */
export function foldCharacters(text: string): string {
  const characters = Array.from(text, folded);
  return characters.map((c, i) => (c === "\u2082" && ["o", "h"].includes(characters[i - 1] ?? "") ? "2" : c)).join("");
}
