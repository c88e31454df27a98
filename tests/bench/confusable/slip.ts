import type { AppContext } from "../../../src/app/context.ts";
import { truthOf, type Truth } from "../judge.ts";
import { caseAfter } from "../scoring.ts";

/** What hearing one sentence for another would come to. */
export type Slip = "same" | "nothing" | "asked" | "command" | "value one way" | "value";

const START_MS = 1_800_000_000_000;
const LATER_MS = 3_600_000;
/** Brings the case to a question, for sentences that only answer one. */
const QUESTION = ["i c p fifteen"];

/**
 * same: one meaning. nothing: one of them means nothing. asked: whichever is heard is asked back, however clear it was.
 * command: another command would be carried out. value: whichever is heard, a value is recorded that may be the other.
 * value one way: so it is for one of them, the other is asked back.
 */
export function slipOf(context: AppContext, one: string, other: string): Slip {
  const open = [one, other].map((words) =>
    truthOf(context, caseAfter(context, [], START_MS), words, START_MS + LATER_MS),
  );
  const asked = [one, other].map((words) =>
    truthOf(context, caseAfter(context, QUESTION, START_MS), words, START_MS + 1),
  );
  return worseOf(slip(open[0]!, open[1]!), slip(asked[0]!, asked[1]!));
}

const SLIPS: readonly Slip[] = ["nothing", "same", "asked", "command", "value one way", "value"];
export const worseOf = (a: Slip, b: Slip): Slip => (SLIPS.indexOf(a) > SLIPS.indexOf(b) ? a : b);

function slip(one: Truth, other: Truth): Slip {
  if (one.keys.size === 0 || other.keys.size === 0) return "nothing";
  if ([...one.keys].every((key) => other.keys.has(key))) return "same";
  const recorded = [one, other].filter(({ isAsked, entries }) => !isAsked && entries.size > 0).length;
  if (recorded > 0) return recorded === 2 ? "value" : "value one way";
  return one.isAsked || other.isAsked ? "asked" : "command";
}
