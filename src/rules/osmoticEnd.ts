import type { CaseState } from "../log/caseState.ts";
import { linksOf } from "../log/chains.ts";
import { findMedicine } from "../protocol/findMedicine.ts";
import type { Protocol } from "../protocol/protocol.ts";

export type OsmoticEnd = {
  readonly drugId: string;
  /** As it is said. */
  readonly name: string;
  readonly startedAtMs: number;
  /** The protocol gives it over a span of time: in at the earliest, and at the latest, Unix ms. */
  readonly earliestAtMs: number;
  readonly atMs: number;
};

const MS_PER_S = 1000;

/**
 * When the newest dose of each osmotic agent should have run in, by the time over which the protocol gives it. A dose that
 * was struck has none.
 */
export function osmoticEnds(state: CaseState, protocol: Protocol): readonly OsmoticEnd[] {
  return Object.entries(state.care.given).flatMap(([drugId, newest]) => {
    const medicine = findMedicine(protocol, drugId);
    if (medicine?.drugClass !== "osmotic") return [];
    for (const { doseId, atMs: startedAtMs } of linksOf(newest)) {
      const overS = medicine.doses.find(({ id }) => id === doseId)?.overS;
      if (overS === undefined) continue;
      const [earliestAtMs, atMs] = [startedAtMs + overS.low * MS_PER_S, startedAtMs + overS.high * MS_PER_S];
      return [{ drugId, name: medicine.spokenName, startedAtMs, earliestAtMs, atMs }];
    }
    return [];
  });
}
