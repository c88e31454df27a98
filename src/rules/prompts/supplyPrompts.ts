import type { CaseState } from "../../log/caseState.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import { isOver, leftOf } from "../clock.ts";
import { supplyClocks } from "../supplyClocks.ts";
import type { Prompt } from "./prompt.ts";

const MS_PER_MIN = 60_000;

/**
 * An osmotic agent should have run in; a bag will be empty before the pressure is next taken; the cylinder is soon at its
 * reserve. Each once, but the bag and the cylinder again until there is another.
 */
export function supplyPrompts(state: CaseState, protocol: Protocol, nowMs: number): readonly Prompt[] {
  const bagSoonMs = protocol.timers.pressureEveryS.usual.value * 1000;
  const cylinderSoonMs = protocol.oxygen.cylinderWarnMin.value * MS_PER_MIN;
  return supplyClocks(state, protocol, nowMs).flatMap((clock): readonly Prompt[] => {
    const leftMs = leftOf(clock, nowMs) ?? Infinity;
    const subject = clock.subject ?? "";
    const key = `${subject}:${clock.startedAtMs}`;
    switch (clock.id) {
      case "osmotic":
        if (!isOver(clock, nowMs)) return [];
        return [{ promptId: "osmoticOver", agent: subject, key, priority: "low", repeats: false }];
      case "bag":
        if (leftMs > bagSoonMs) return [];
        return [{ promptId: "bagLow", drug: subject, leftMs, key, priority: "medium", repeats: true }];
      case "cylinder":
        if (leftMs > cylinderSoonMs) return [];
        return [{ promptId: "cylinderLow", leftMs, key, priority: "medium", repeats: true }];
      default:
        return [];
    }
  });
}
