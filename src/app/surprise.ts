import type { Intent } from "../language/intent.ts";
import type { CaseState } from "../log/caseState.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { isJump } from "./decide/jump.ts";
import { chooseUnit } from "./decide/units.ts";

/** This share of the jump that the protocol always asks about is already a surprise. This project's choice, no source. */
const SURPRISING_SHARE = 0.5;

/**
 * What the case makes unlikely: a value far from the last one of its kind, a short while after it. It never makes anything
 * more likely: a number that fits the last reading is believed no sooner than any other.
 */
export function isSurprising(log: CaseState, protocol: Protocol, intent: Intent, nowMs: number): boolean {
  if (intent.kind !== "vitals") return false;
  return intent.items.some((item) => {
    if (item.kind !== "vital") return false;
    const choice = chooseUnit(item);
    return choice.kind === "settled" && isJump(log, protocol, choice.value, nowMs, SURPRISING_SHARE);
  });
}
