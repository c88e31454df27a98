import type { CaseIntent } from "../caseIntent.ts";
import type { Parse } from "../jsgf/grammarTypes.ts";
import { tagValue } from "./tagValues.ts";

/** Other words for a digit of a label. */
const DIGIT_WORDS: Readonly<Partial<Record<string, string>>> = { oh: "zero", niner: "nine" };

/** What is said of the case as a whole; undefined: it is about something else. */
export function readCase(parse: Parse): CaseIntent | undefined {
  const words = parse.find(({ tag }) => tag === "label")?.words.map((word) => DIGIT_WORDS[word] ?? word);
  const label = words?.join(" ");
  switch (tagValue(parse, "case")) {
    case "new":
      return { kind: "newCase", rehearsal: false };
    case "rehearse":
      return { kind: "newCase", rehearsal: true };
    case "erase":
      return { kind: "eraseCase", ...(label === undefined ? {} : { label }) };
    case "which":
      return { kind: "whichCase" };
    case undefined:
      return undefined;
  }
}
