import type { NewFact } from "../log/facts.ts";
import { reduceFacts } from "../log/reduceFact.ts";
import type { AppState } from "./context.ts";
import { stamp } from "./decide/stamp.ts";
import { followHandover, sayAgainOf } from "./handover.ts";
import { emptyTurn } from "./quietTurn.ts";
import type { Turn } from "./takeTurn.ts";

/** Words that begin to sound, or end before their end. */
export type SpeechFact = Extract<NewFact, { readonly type: "speech.started" | "speech.cut" }>;

/**
 * What our voice does goes into the record, and how far a handover came is known by it; it changes nothing else. Words that
 * were cut off since their case was closed or erased are in no record. Pure.
 */
export function takeSpeech(state: AppState, speech: SpeechFact, nowMs: number): Turn {
  const { log } = state;
  const isOfAnother = speech.type === "speech.cut" && !speech.startedId.startsWith(`${log.caseId}-`);
  if (isOfAnother) return emptyTurn(state);
  const facts = stamp(log, [speech], nowMs);
  const handover = followHandover(state.handover, facts);
  const lastSaid = sayAgainOf(handover, state.handover) ?? state.lastSaid;
  return { ...emptyTurn({ ...state, log: reduceFacts(facts, log), handover, lastSaid }), facts };
}
