/** As the ear takes it: case and spacing make no difference. */
export const asHeard = (words: string): string => words.trim().toLowerCase().replace(/\s+/gu, " ");

export const wordCount = (words: string): number => asHeard(words).split(" ").length;
