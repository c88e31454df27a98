import { normalise } from "../language/normalise/normalise.ts";
import type { Interpretation } from "./interpret.ts";

const wordsOf = (said: string): readonly string[] => said.split(/[.,:;?!]+/u).flatMap((part) => normalise(part));

/** Whether these words stand in a row in what our own voice said. */
function isEcho(words: string, voiced: string): boolean {
  return words !== "" && ` ${wordsOf(voiced).join(" ")} `.includes(` ${words} `);
}

/**
 * Our own words heard with a slip: "over" for "under" among eight. Fewer words than that many are more often an answer to
 * ours, "ICP five zero" to "ICP fifteen, one five?". This project's choice; `tests/app/selfHearing.test.ts` judges it.
 */
const NEARLY = { words: 6, share: 0.7 } as const;

/** Whether most of these words stand in what our own voice said, in this order. */
function isNearlyEcho(words: string, voiced: string): boolean {
  const heard = words.split(" ");
  const ourWords = wordsOf(voiced);
  if (heard.length < NEARLY.words) return false;
  // How many of the words so far stand in a common order with those of ours up to each one.
  let common = new Array<number>(ourWords.length + 1).fill(0);
  for (const word of heard) {
    const next = [0];
    ourWords.forEach((ours, i) => {
      next.push(ours === word ? (common[i] ?? 0) + 1 : Math.max(next[i] ?? 0, common[i + 1] ?? 0));
    });
    common = next;
  }
  return (common.at(-1) ?? 0) >= NEARLY.share * heard.length;
}

/**
 * What was heard while our own voice sounded, trusted less: our own words are nobody's; what is nearly our own, and a bare
 * number or unit, since our questions hold them too, must be said again; a value is asked back whatever its margins.
 *
 * @param voiced what our voice said last.
 */
export function doubtOverlap(heard: Interpretation, voiced: string): Interpretation {
  if (isEcho(heard.words, voiced)) return { kind: "outside", words: heard.words };
  if (heard.kind !== "outside" && isNearlyEcho(heard.words, voiced)) return { kind: "unclear", words: heard.words };
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
