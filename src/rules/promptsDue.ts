import type { CaseState } from "../log/caseState.ts";
import type { Priority } from "../protocol/priority.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { hasRoom, isQuiet, speechRoom } from "./alerts/speechRoom.ts";
import { airwayTimePrompts, attemptLimit, stopAttempt } from "./prompts/airwayPrompts.ts";
import { fullSetDue, neuroDue, pressureDue, stale, watchPhase } from "./prompts/checkPrompts.ts";
import { pushDoseAgain, sedationDue } from "./prompts/drugPrompts.ts";
import { measuresOver } from "./prompts/measurePrompts.ts";
import type { Prompt } from "./prompts/prompt.ts";
import { supplyPrompts } from "./prompts/supplyPrompts.ts";

/** Everything that is true now and worth saying, the most pressing first within each priority; said before or not. */
export const promptsStanding = (state: CaseState, protocol: Protocol, nowMs: number): readonly Prompt[] => [
  ...stopAttempt(state, protocol),
  ...attemptLimit(state, nowMs),
  ...measuresOver(state, protocol, nowMs),
  ...sedationDue(state, protocol, nowMs),
  ...supplyPrompts(state, protocol, nowMs),
  ...airwayTimePrompts(state, protocol, nowMs),
  ...pressureDue(state, protocol, nowMs),
  ...pushDoseAgain(state, protocol, nowMs),
  ...fullSetDue(state, protocol, nowMs),
  ...neuroDue(state, protocol, nowMs),
  ...stale(state, protocol, nowMs),
  ...watchPhase(state, protocol, nowMs),
];

/** When this very occurrence was last said; `undefined`: never. */
function saidAtMs({ care }: CaseState, { promptId, key }: Prompt): number | undefined {
  const last = care.prompts[promptId];
  if (last === undefined) return undefined;
  return last.key === key ? last.atMs : last.before.find((other) => other.key === key)?.atMs;
}

const isAcknowledged = ({ care }: CaseState, { promptId, key }: Prompt): boolean =>
  care.prompts[promptId]?.acknowledgedKey === key;

/** Somebody asked for quiet, or for alerts alone: what is held back then. */
function isHeldBack(state: CaseState, nowMs: number, { priority, always }: Prompt): boolean {
  if (priority === "high" || always === true) return false;
  return isQuiet(state, nowMs) || (priority === "low" && state.talk.level === "alerts");
}

/**
 * Nothing else in the turn says what a prompt does, so a new one that is pressing is never held back for want of room: the
 * reminders give way to it. Rounds and repetitions wait.
 */
function fits(room: number, prompt: Prompt, isFirst: boolean, protocol: Protocol): boolean {
  const { priority, always, callOut, routine } = prompt;
  const isNew = isFirst && routine !== true;
  if (callOut === true || always === true || (isNew && priority !== "low")) return true;
  return hasRoom(room, priority, isNew, protocol);
}

function isDue(state: CaseState, protocol: Protocol, nowMs: number, prompt: Prompt): boolean {
  if (isHeldBack(state, nowMs, prompt) || isAcknowledged(state, prompt)) return false;
  if (prompt.asks === true && state.questions.length > 0) return false;
  const atMs = saidAtMs(state, prompt);
  if (atMs === undefined) return true;
  // Also when the device clock was set back by as much: a reminder must not stay silent until it has caught up.
  const againMs = protocol.timers.promptAgainS[prompt.priority].value * 1000;
  return prompt.repeats && Math.abs(nowMs - atMs) >= againMs;
}

/** A prompt to be said now; past the cap by its tone alone. */
export type PromptDue = Prompt & { readonly voice: "spoken" | "tone" };

/**
 * What is to be said unasked now, one of each priority at most, the most pressing first. Each is to be put into the log as
 * `prompt.announced`; until then it stays due.
 *
 * Not while somebody asked for quiet, but for high ones; not again once it was acknowledged; and not past the cap on
 * spoken alerts, but for what is new and pressing. A high one that is said again past it is a tone.
 *
 * @param nowMs Unix ms.
 *
 * Not for: alerts, which judge values against their limits; see `alertsDue`.
 */
export function promptsDue(state: CaseState, protocol: Protocol, nowMs: number): readonly PromptDue[] {
  const due = promptsStanding(state, protocol, nowMs).filter((prompt) => isDue(state, protocol, nowMs, prompt));
  const priorities: readonly Priority[] = ["high", "medium", "low"];
  let room = speechRoom(state, protocol, nowMs);
  const chosen: PromptDue[] = [];
  for (const priority of priorities) {
    const isFit = (prompt: Prompt) => fits(room, prompt, saidAtMs(state, prompt) === undefined, protocol);
    const ofPriority = due.filter((prompt) => prompt.priority === priority);
    const next = ofPriority.find(isFit);
    if (next !== undefined) {
      chosen.push({ ...next, voice: "spoken" });
      if (next.callOut !== true) room -= 1;
    } else if (priority === "high" && ofPriority[0] !== undefined) {
      chosen.push({ ...ofPriority[0], voice: "tone" });
    }
  }
  return chosen;
}
