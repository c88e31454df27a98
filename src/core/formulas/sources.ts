import type { Source } from "../derivation.ts";

// What several families of formulas rest on; a source of one family alone stands in its file.

/** Known, and not read anywhere. */
export const fromMemory = (reference: string): Source => ({ reference, kind: "memory", primaryRead: false });

export const COMMON_PRACTICE: Source = {
  reference: "common practice, no source",
  kind: "common-practice",
  primaryRead: false,
};
export const STANDARD_FORM = fromMemory("standard form, from memory");
export const ARITHMETIC = fromMemory("arithmetic on the values named");
