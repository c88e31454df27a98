import { concentration, type Strength } from "../core/concentration.ts";
import { infusionRate, mlPerH, pumpRate, type MlPerH } from "../core/infusionRate.ts";
import { infusedVolume, timeToEmpty, type Segment } from "../core/infusionTime.ts";
import { kg } from "../core/quantities.ts";
import type { Minutes, Ml } from "../core/quantity.ts";
import type { InfusionEntry, StrengthEntry } from "../log/careState.ts";
import type { CaseState } from "../log/caseState.ts";
import { linksOf } from "../log/chains.ts";
import { findMedicine } from "../protocol/findMedicine.ts";
import type { Protocol } from "../protocol/protocol.ts";

export type InfusionEnd = {
  readonly drugId: string;
  /** As it is said. */
  readonly name: string;
  /** Unix ms at which the bag or syringe is empty; in the past where it should be by now. */
  readonly atMs: number;
  readonly remainingMl: number;
};

const MS_PER_MIN = 60_000;
/** "In each millilitre" names no bag. */
const SMALLEST_BAG_ML = 1;

/**
 * What the pump is set to: as it was read back, else worked out with a strength that was affirmed only later.
 *
 * @returns mL/h; nothing where it stands still or cannot be worked out.
 */
function pumpOf({ rate, weightKg, mlPerH: saidMlPerH }: InfusionEntry, strength: Strength): MlPerH | undefined {
  if (rate.value === 0) return undefined;
  const said = saidMlPerH === undefined ? undefined : mlPerH(saidMlPerH);
  if (said?.ok) return said.value;
  const [ordered, of, weight] = [
    infusionRate(rate.value, rate.unit),
    concentration(strength),
    weightKg === undefined ? undefined : kg(weightKg),
  ];
  if (!ordered.ok || !of.ok) return undefined;
  const pump = pumpRate(ordered.value, { kg: weight?.ok ? weight.value : undefined, concentration: of.value });
  return pump.ok ? pump.value : undefined;
}

/**
 * What ran out of the bag until now: one stretch for each rate since its strength was affirmed, which is when it was hung.
 * Nothing where one of the rates has no mL/h.
 */
function segmentsOf(
  newest: InfusionEntry,
  { strength, atMs: hungAtMs }: StrengthEntry,
  nowMs: number,
): readonly Segment[] | undefined {
  const segments: Segment[] = [];
  let untilMs = nowMs;
  for (const entry of linksOf(newest)) {
    const fromMs = Math.max(entry.atMs, hungAtMs);
    const minutes = Math.max(0, (untilMs - fromMs) / MS_PER_MIN) as Minutes;
    if (entry.rate.value > 0 && minutes > 0) {
      const rate = pumpOf(entry, strength);
      if (rate === undefined) return undefined;
      segments.push({ mlPerH: rate, minutes });
    }
    if (entry.atMs <= hungAtMs) break;
    untilMs = fromMs;
  }
  return segments;
}

/**
 * When each infusion that runs will have emptied what it runs from. The volume is that of the strength as affirmed ("four
 * milligrams in two hundred and fifty"); affirming it anew is a new bag.
 *
 * @returns one for each drug whose bag and mL/h are known, in no order.
 *
 * Not for: what is left in the line, nor a bag that was hung half empty.
 */
export function infusionEnds(state: CaseState, protocol: Protocol, nowMs: number): readonly InfusionEnd[] {
  return Object.entries(state.care.infusions).flatMap(([drugId, newest]) => {
    const hung = state.care.strengths[drugId];
    const name = findMedicine(protocol, drugId)?.spokenName;
    const rate = hung && pumpOf(newest, hung.strength);
    if (hung === undefined || name === undefined || rate === undefined) return [];
    const bagMl = hung.strength.volumeMl;
    if (bagMl <= SMALLEST_BAG_ML) return [];
    const segments = segmentsOf(newest, hung, nowMs);
    if (segments === undefined) return [];
    const remainingMl = bagMl - infusedVolume(segments);
    const atMs = nowMs + timeToEmpty(remainingMl as Ml, rate) * MS_PER_MIN;
    return [{ drugId, name, atMs, remainingMl: Math.max(0, remainingMl) }];
  });
}
