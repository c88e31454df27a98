import type { CaseState } from "../log/caseState.ts";
import type { Priority } from "../protocol/priority.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { airwayTimePrompts, attemptLimit, stopAttempt } from "./prompts/airwayPrompts.ts";
import { fullSetDue, neuroDue, pressureDue, stale, watchPhase } from "./prompts/checkPrompts.ts";
import { pushDoseAgain, sedationDue } from "./prompts/drugPrompts.ts";
import { measuresOver } from "./prompts/measurePrompts.ts";
import type { Prompt } from "./prompts/prompt.ts";
import { supplyPrompts } from "./prompts/supplyPrompts.ts";
import { isStandingBy } from "./standBy.ts";

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

function isDue(state: CaseState, { timers }: Protocol, nowMs: number, prompt: Prompt): boolean {
  if (isStandingBy(state, nowMs) && prompt.priority !== "high" && prompt.always !== true) return false;
  if (prompt.asks === true && state.questions.length > 0) return false;
  const atMs = saidAtMs(state, prompt);
  if (atMs === undefined) return true;
  // Also when the device clock was set back by as much: a reminder must not stay silent until it has caught up.
  return prompt.repeats && Math.abs(nowMs - atMs) >= timers.promptAgainS[prompt.priority].value * 1000;
}

/**
 * What is to be said unasked now, one of each priority at most, the most pressing first. Each is to be put into the log as
 * `prompt.announced`; until then it stays due.
 *
 * @param nowMs Unix ms.
 *
 * Not for: alerts, which judge values against their limits; see `alertsDue`.
 */
export function promptsDue(state: CaseState, protocol: Protocol, nowMs: number): readonly Prompt[] {
  const due = promptsStanding(state, protocol, nowMs).filter((prompt) => isDue(state, protocol, nowMs, prompt));
  const priorities: readonly Priority[] = ["high", "medium", "low"];
  return priorities.flatMap((priority) => due.find((prompt) => prompt.priority === priority) ?? []);
}
