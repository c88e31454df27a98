import { lowPressureDose } from "../../core/lowPressureDose.ts";
import type { PressureReading } from "../../core/lowPressure.ts";
import { checkedMmHg } from "../../core/mmHg.ts";
import { emptyCase } from "../../log/caseState.ts";
import { linksOf } from "../../log/chains.ts";
import type { Fact } from "../../log/facts.ts";
import { reduceFact } from "../../log/reduceFact.ts";
import { selectTargets } from "../../log/targets.ts";
import type { RecordedCase } from "../recordedCase.ts";
import { selectCaseSpan } from "./caseSpan.ts";
import { known, unknown, type Measured } from "./measured.ts";
import type { Reading } from "./readings.ts";
import { selectTubes, type TubeSpan } from "./tubeSpans.ts";

/** Minutes with an EtCO2 under the band that counted then; `unknownMin`: of the time with that tube, the rest. */
export type OverVentilation = { readonly belowMin: number; readonly unknownMin: number };

/** From this moment on, the band begins here. */
type BandFrom = { readonly atMs: number; readonly lowMmHg: number };

const MS_PER_MIN = 60_000;

/** A fact that changes nothing in the place of a struck one, so that all others keep their numbers. */
const nothing = ({ v, id, atMs }: Fact): Fact => ({ v, id, atMs, type: "clock.changed", byMs: 0 });

/** Where the CO2 band began, each time it changed: it is lower while herniation is treated, and for that time alone. */
function bandsOf({ facts, struckIds, protocol }: RecordedCase): readonly BandFrom[] {
  const bands: BandFrom[] = [{ atMs: -Infinity, lowMmHg: selectTargets(emptyCase, protocol).etco2MmHg.low }];
  let state = emptyCase;
  for (const fact of facts) {
    state = reduceFact(state, struckIds.has(fact.id) ? nothing(fact) : fact);
    const lowMmHg = selectTargets(state, protocol).etco2MmHg.low;
    if (lowMmHg !== bands.at(-1)?.lowMmHg) bands.push({ atMs: fact.atMs, lowMmHg });
  }
  return bands;
}

const lowAt = (bands: readonly BandFrom[], atMs: number): number =>
  bands.findLast((band) => band.atMs <= atMs)?.lowMmHg ?? NaN;

/** How far each reading stands over its band, mmHg, with a point on the line between two readings where the band changes. */
function overBand(
  readings: readonly Reading[],
  bands: readonly BandFrom[],
  apartMs: number,
): readonly PressureReading[] {
  return readings.flatMap((to, i) => {
    const here = { atMs: to.atMs, mmHg: checkedMmHg(to.value - lowAt(bands, to.atMs)) };
    const from = readings[i - 1];
    // In a gap nothing is known: a point in the middle of it would make two short ones of it.
    if (from === undefined || to.atMs - from.atMs > apartMs) return [here];
    const changes = bands.flatMap(({ atMs, lowMmHg }, b): readonly PressureReading[] => {
      if (atMs <= from.atMs || atMs >= to.atMs) return [];
      const value = from.value + ((to.value - from.value) * (atMs - from.atMs)) / (to.atMs - from.atMs);
      const beforeMmHg = bands[b - 1]?.lowMmHg ?? lowMmHg;
      return [beforeMmHg, lowMmHg].map((low) => ({ atMs, mmHg: checkedMmHg(value - low) }));
    });
    return [...changes, here];
  });
}

function co2Through(recorded: RecordedCase, tube: TubeSpan): readonly Reading[] {
  const through = [...linksOf(recorded.state.vitals.etco2)].map(({ entry }) => entry);
  return through
    .filter(({ seq }) => seq > tube.in.seq && seq < (tube.out?.seq ?? Infinity))
    .toSorted((a, b) => a.atMs - b.atMs || a.seq - b.seq);
}

/**
 * Minutes with an EtCO2 under the band while a tube was in. A tube that came out again and was never called confirmed may
 * have been in the gullet: what came through it is left out.
 *
 * Not for: the cause. A failing circulation lowers EtCO2 as well.
 */
export function selectOverVentilation(recorded: RecordedCase): Measured<OverVentilation> {
  const tubes = selectTubes(recorded.state).filter((tube) => tube.confirmed !== undefined || tube.out === undefined);
  if (tubes.length === 0) return unknown("tube-not-proved");
  const apartMs = recorded.protocol.lowPressure.unknownAfterS.value * 1000;
  const bands = bandsOf(recorded);
  const endMs = selectCaseSpan(recorded)?.toMs ?? 0;
  let [belowMin, knownMin, tubeMin, readings] = [0, 0, 0, 0];
  for (const tube of tubes) {
    const through = co2Through(recorded, tube);
    const totals = lowPressureDose(overBand(through, bands, apartMs), checkedMmHg(0), apartMs);
    if (!totals.ok) return unknown("times-out-of-order");
    belowMin += totals.value.belowMin;
    knownMin += totals.value.knownMin;
    tubeMin += ((tube.out?.atMs ?? endMs) - tube.in.atMs) / MS_PER_MIN;
    readings += through.length;
  }
  if (readings === 0) return unknown("not-measured");
  if (knownMin === 0) return unknown("no-two-readings-near");
  return known({ belowMin, unknownMin: Math.max(0, tubeMin - knownMin) });
}
