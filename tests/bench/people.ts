import { wordsToNumber } from "../../src/language/numbers/wordsToNumber.ts";
import type { Row } from "./audioSet.ts";

/** What was said as a number, or nothing where it is no number of ours ("fifty two thirteen"). */
export function saidNumber({ words = "" }: Row): number | undefined {
  const value = wordsToNumber(words.split(" "));
  return value.ok ? value.value : undefined;
}
