import { normalise } from "../language/normalise/normalise.ts";
import type { Interpretation } from "./interpret.ts";

const wordsOf = (said: string): readonly string[] => said.split(/[.,:;?!]+/u).flatMap((part) => normalise(part));

/** Whether these words stand in a row in what our own voice said. */
function isEcho(words: string, voiced: string): boolean {
  return words !== "" && ` ${wordsOf(voiced).join(" ")} `.includes(` ${words} `);
}

/**
 * What was heard while our own voice sounded, trusted less: our own words are nobody's, a value is asked back whatever its
 * margins, and a bare number or unit must be said again, since our questions hold them too.
 *
 * @param voiced what our voice said last.
 */
export function doubtOverlap(heard: Interpretation, voiced: string): Interpretation {
  if (isEcho(heard.words, voiced)) return { kind: "outside", words: heard.words };
  if (heard.kind !== "meant") return heard;
  const { words, intent } = heard;
  switch (intent.kind) {
    case "vitals":
      return { kind: "unsure", words, why: "acoustic", intents: [intent] };
    case "number":
    case "unit":
      return { kind: "unclear", words };
    case "amount":
    case "rate":
    case "doseUnit":
    case "strength":
      return { kind: "unclear", words };
    default:
      return heard;
  }
}
