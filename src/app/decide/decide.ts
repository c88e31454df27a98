import type { Intent } from "../../language/intent.ts";
import type { CaseState } from "../../log/caseState.ts";
import type { AppContext, AppState } from "../context.ts";
import type { Interpretation } from "../interpret.ts";
import { slotForNumber } from "./correction.ts";
import { decideNumber, decideUnit } from "./decideAnswer.ts";
import { decideChoice, possibleReadings } from "./decideChoice.ts";
import { decideCommand } from "./decideCommand.ts";
import { decideStep } from "./decideStep.ts";
import { decideVitals } from "./decideVitals.ts";
import { ignored, refused, type Decision } from "./decision.ts";
import type { Source } from "./recordStatement.ts";

const SAY_AGAIN = "Say again.";

function decideBareNumber(
  context: AppContext,
  log: CaseState,
  { correction, number, unit }: Intent & { kind: "number" },
  source: Source,
  nowMs: number,
): Decision {
  const asked = log.questions.length > 0;
  // The value in question and the last reading both wait to be corrected: nobody knows which is meant.
  if (correction && asked && log.lastReading !== undefined) return refused("Say which value.");
  if (!correction || asked) return decideNumber(context, log, number, unit, source, nowMs);
  const said = slotForNumber(log, number, unit);
  if (said === undefined) return refused("Say which value.");
  return decideVitals(context, log, [said], source, nowMs, { correction: true });
}

function decideIntent(context: AppContext, state: AppState, intent: Intent, source: Source, nowMs: number): Decision {
  const { log } = state;
  switch (intent.kind) {
    case "vitals": {
      const { items, correction, doubtful } = intent;
      return decideVitals(context, log, items, source, nowMs, {
        correction,
        unsure: doubtful && source.by !== "typed",
      });
    }
    case "number":
      return decideBareNumber(context, log, intent, source, nowMs);
    case "unit":
      return decideUnit(context, log, intent.unit, nowMs);
    case "command":
      return decideCommand(context, state, intent.command, nowMs);
    case "dose":
    case "why":
      return { facts: [], outcome: "answered", reply: intent };
    case "step":
      return decideStep(context, log, intent.stepId, intent.answer, source);
  }
}

/**
 * What follows from an utterance: facts to append and a reply, a question, or nothing. Pure; time comes in.
 *
 * @param nowMs Unix ms at which the utterance was understood.
 */
export function decide(
  context: AppContext,
  state: AppState,
  heard: Interpretation,
  by: Source["by"],
  nowMs: number,
): Decision {
  const source: Source = { heard: heard.words, by };
  switch (heard.kind) {
    case "outside":
      return ignored;
    case "unclear":
      return refused(SAY_AGAIN);
    case "meant":
      return decideIntent(context, state, heard.intent, source, nowMs);
    case "unsure": {
      const intents = possibleReadings(heard.intents);
      const [first, ...others] = intents;
      if (first === undefined) return ignored;
      if (others.length > 0) return decideChoice(state.log, intents, heard.why, source, nowMs);
      if (first.kind !== "vitals" || first.correction) return refused(SAY_AGAIN);
      return decideVitals(context, state.log, first.items, source, nowMs, { correction: false, unsure: true });
    }
  }
}
