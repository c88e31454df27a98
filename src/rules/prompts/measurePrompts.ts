import type { CaseState } from "../../log/caseState.ts";
import { MEASURES_OVER, rescueRuns, selectMeasures } from "../../log/rescue.ts";
import { selectTargets } from "../../log/targets.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import { resolveTargets } from "../../protocol/resolveTargets.ts";
import { isOver } from "../clock.ts";
import { measureClocks } from "../clocks.ts";
import type { Prompt } from "./prompt.ts";

const usualBand = (state: CaseState, protocol: Protocol) => {
  const { cause } = selectTargets(state, protocol);
  return resolveTargets(protocol, { ageA: undefined, cause, herniating: false }).etco2MmHg;
};

/**
 * The time of a measure is up. That of the rescue is called also while standing by: from then on the usual CO2 band counts
 * again, and nobody may go on blowing off CO2 without knowing.
 */
export function measuresOver(state: CaseState, protocol: Protocol, nowMs: number): readonly Prompt[] {
  return measureClocks(state, protocol).flatMap((clock): readonly Prompt[] => {
    if (!isOver(clock, nowMs)) return [];
    if (clock.id === "hyperventilation") {
      const key = String(clock.startedAtMs);
      return [{ promptId: "hyperventilationOver", key, priority: "medium", repeats: true }];
    }
    const measures = clock.id === "rescue" ? selectMeasures(state) : undefined;
    if (measures === undefined) return [];
    const etco2MmHg = usualBand(state, protocol);
    const { key } = measures;
    // Where nothing was affirmed, only the word that the brain herniates, it is said once: nobody asked for measures.
    const repeats = rescueRuns(state);
    return [{ promptId: MEASURES_OVER, etco2MmHg, key, priority: "medium", repeats, always: true, asks: repeats }];
  });
}
