/** Keeps each number on one line with the word after it, so that no unit is parted from its number. Purely typographic. */
export const keepUnits = (text: string): string => text.replace(/(\d) (?=\S)/g, "$1\u00a0");
