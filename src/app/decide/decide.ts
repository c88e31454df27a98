import { atStake } from "../../language/atStake.ts";
import type { CareIntent } from "../../language/careIntent.ts";
import type { Intent } from "../../language/intent.ts";
import { understand } from "../../language/understand/understand.ts";
import type { CaseState } from "../../log/caseState.ts";
import type { NewFact, Question } from "../../log/facts.ts";
import { reduceFacts } from "../../log/reduceFact.ts";
import { asksRescue } from "../../rules/herniationWatch.ts";
import { grammarState, type AppContext, type AppState } from "../context.ts";
import type { Interpretation } from "../interpret.ts";
import { slotForNumber } from "./correction.ts";
import { decideCare } from "./care/decideCare.ts";
import { decideDose } from "./care/decideDose.ts";
import { correctStepValue } from "./care/list/stepNumber.ts";
import { moveRecipe } from "./care/moveRecipe.ts";
import { askAct, closedBy, SAY_AGAIN } from "./decideAct.ts";
import { decideNumber, decideUnit } from "./decideAnswer.ts";
import { decideChoice, possibleReadings } from "./decideChoice.ts";
import { decideCommand } from "./decideCommand.ts";
import { decideVitals } from "./decideVitals.ts";
import { ignored, refused, type Decision } from "./decision.ts";
import type { Source } from "./recordStatement.ts";
import { stamp } from "./stamp.ts";

const NOT_CARE: readonly Intent["kind"][] = ["vitals", "number", "unit", "command", "dose", "why"];
const isCare = (intent: Intent): intent is CareIntent => !NOT_CARE.includes(intent.kind);
const isReadBack = (intent: Intent): boolean => isCare(intent) && atStake(intent) === "affirmed";

/** A question asked after the last reading was entered is what was said last. */
const isSaidLast = ({ askedAtMs }: Question, { lastReading }: CaseState): boolean =>
  lastReading?.facts.every(({ atMs }) => atMs < askedAtMs) ?? true;

function decideBareNumber(
  context: AppContext,
  log: CaseState,
  { correction, denies, number, unit }: Intent & { kind: "number" },
  source: Source,
  nowMs: number,
): Decision {
  // A rescue is no number: asked about after a reading, it must not stand between that reading and its correction.
  const question = log.questions.find((q) => !asksRescue(q));
  if (!correction) return decideNumber(context, log, number, unit, source, nowMs);
  // Nothing was read back where our question only wants to be told: a correction is then of the last reading.
  if (question !== undefined && question.wants === undefined) {
    const isAnswer = denies === true && isSaidLast(question, log);
    // The value in question and the last reading both wait to be corrected: nobody knows which is meant.
    if (!isAnswer && log.lastReading !== undefined) return refused("Say which value.");
    // "Negative" to a number, and then that same number: one of the two was misheard.
    if (denies === true && question.candidates[0]?.number === number.value) return refused(question.prompt);
    return decideNumber(context, log, number, unit, source, nowMs);
  }
  const ofStep = correctStepValue(context, log, number, source, nowMs);
  if (ofStep !== undefined) return ofStep;
  const said = slotForNumber(log, number, unit);
  if (said === undefined) return refused("Say which value.");
  return decideVitals(context, log, [said], source, nowMs, { correction: true });
}

type WordsAsked = { readonly question: Question; readonly words: string };

/** Words that were heard with a doubt and wait to be affirmed. */
function wordsInQuestion({ questions: [question] }: CaseState): WordsAsked | undefined {
  const [act] = question?.acts ?? [];
  return question !== undefined && act?.kind === "words" ? { question, words: act.words } : undefined;
}

/** They were meant: what follows is what would have followed had they been heard well. */
function affirmWords(context: AppContext, state: AppState, { question, words }: WordsAsked, nowMs: number): Decision {
  const closed: NewFact = { type: "question.closed", questionId: question.id, outcome: "affirmed" };
  const meaning = understand(context.grammars.of(grammarState(context.protocol, state.log)), words.split(" "));
  if (meaning.kind !== "one") return { ...refused(SAY_AGAIN), facts: [closed] };
  const log = reduceFacts(stamp(state.log, [closed], nowMs), state.log);
  const { heard, by } = question;
  const decision = decideIntent(context, { ...state, log }, meaning.intent, { heard, by }, nowMs);
  return { ...decision, facts: [closed, ...decision.facts] };
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
    case "command": {
      const asked = intent.command === "affirm" ? wordsInQuestion(log) : undefined;
      if (asked !== undefined) return affirmWords(context, state, asked, nowMs);
      const moved = intent.command === "next" ? moveRecipe(context, log, source, nowMs) : undefined;
      if (moved !== undefined) return moved;
      return decideCommand(context, state, intent.command, source, nowMs);
    }
    case "dose": {
      return decideDose(context, log, intent.drugId, source, nowMs, closedBy(log, [intent]));
    }
    case "why":
      return { facts: [], outcome: "answered", reply: intent };
    default:
      return decideCare(context, state, intent, source, nowMs);
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
      // It is read back and waits for "affirm" however well it was heard.
      if (isReadBack(first) && intents.every(isReadBack)) return decideIntent(context, state, first, source, nowMs);
      if (intents.every(({ kind }) => kind !== "vitals")) return askAct(context, state.log, intents, source, nowMs);
      if (others.length > 0) return decideChoice(state.log, intents, heard.why, source, nowMs);
      if (first.kind !== "vitals" || first.correction) return refused(SAY_AGAIN);
      return decideVitals(context, state.log, first.items, source, nowMs, { correction: false, unsure: true });
    }
  }
}
