import type { CaseGrammars } from "./compileGrammars.ts";
import { interpret, type Interpretation } from "./interpret.ts";
import type { GrammarState, Utterance } from "./ports.ts";

/**
 * "Sats ninety", a long pause, "four": the first part was taken, and the second is nothing by itself. If both as one are a
 * value, that is asked. It can only ask: what is meant by itself stays what it is.
 *
 * @param alone what the second part means by itself.
 */
export function askWhetherGoingOn(
  grammars: CaseGrammars,
  state: GrammarState,
  { withLast, ...utterance }: Utterance,
  alone: Interpretation,
): Interpretation {
  if (withLast === undefined || alone.kind === "meant" || alone.kind === "unsure") return alone;
  const whole = interpret(grammars, state, { ...utterance, ...withLast });
  const intents = whole.kind === "meant" ? [whole.intent] : whole.kind === "unsure" ? whole.intents : [];
  if (intents.length === 0 || intents.some(({ kind }) => kind !== "vitals")) return alone;
  return { kind: "unsure", words: whole.words, why: "acoustic", intents };
}
