import { lowPressureDose } from "../../core/lowPressureDose.ts";
import { checkedMmHg } from "../../core/mmHg.ts";
import { selectLatest } from "../../log/selectors.ts";
import { resolveTargets, type Limit, type Targets } from "../../protocol/resolveTargets.ts";
import type { RecordedCase } from "../recordedCase.ts";
import { caseSpanMs } from "./caseSpan.ts";
import { known, unknown, type Measured } from "./measured.ts";
import { meansOf, perfusionOf, readingsOf, type Reading } from "./readings.ts";

export type FloorId = "sbpTarget" | "sbpPublished" | "mapTarget" | "cppTarget";

/** Time and depth under one floor. A lower bound as soon as `unknownMin` is not 0. */
export type BelowFloor = {
  readonly belowMin: number;
  readonly doseMmHgMin: number;
  /** Of the time in which somebody spoke of the patient, that between no two readings near enough to each other. */
  readonly unknownMin: number;
};

export type FloorMeasure = {
  readonly id: FloorId;
  /** The floor, with its place in the protocol that judges and its source. */
  readonly floor: Limit;
  readonly below: Measured<BelowFloor>;
};

const MS_PER_MIN = 60_000;

/**
 * The targets of this patient as known at the end of the record: an age that was said late was that age all along. The
 * higher floors for the minutes of herniation are left out, so that each floor is one number in the whole case.
 */
const floorsOfPatient = ({ state, protocol }: RecordedCase): Targets =>
  resolveTargets(protocol, {
    ageA: selectLatest(state, "age")?.value,
    cause: state.cause?.cause ?? "unknown",
    herniating: false,
  });

function belowFloor(
  readings: readonly Reading[],
  floor: Limit,
  unknownAfterMs: number,
  spanMs: number,
): Measured<BelowFloor> {
  if (readings.length === 0) return unknown("not-measured");
  const series = readings.map(({ atMs, value }) => ({ atMs, mmHg: checkedMmHg(value) }));
  const totals = lowPressureDose(series, checkedMmHg(floor.value), unknownAfterMs);
  if (!totals.ok) return unknown("times-out-of-order");
  const { belowMin, doseMmHgMin, knownMin } = totals.value;
  if (knownMin === 0) return unknown("no-two-readings-near");
  return known({ belowMin, doseMmHgMin, unknownMin: Math.max(0, spanMs / MS_PER_MIN - knownMin) });
}

/** Minutes and dose under the targets of the patient and under the systolic of the published dose. */
export function selectFloors(recorded: RecordedCase): readonly FloorMeasure[] {
  const { lowPressure } = recorded.protocol;
  const targets = floorsOfPatient(recorded);
  const published: Limit = { ...lowPressure.publishedSbpFloorMmHg, path: "lowPressure.publishedSbpFloorMmHg" };
  const unknownAfterMs = lowPressure.unknownAfterS.value * 1000;
  const spanMs = caseSpanMs(recorded);
  const measure = (id: FloorId, floor: Limit, readings: readonly Reading[]): FloorMeasure => {
    const below = belowFloor(readings, floor, unknownAfterMs, spanMs);
    return { id, floor, below };
  };
  return [
    measure("sbpTarget", targets.sbpMmHg.target, readingsOf(recorded, "sbp")),
    measure("sbpPublished", published, readingsOf(recorded, "sbp")),
    measure("mapTarget", targets.mapMmHg.target, meansOf(recorded)),
    measure("cppTarget", targets.cppMmHg.target, perfusionOf(recorded)),
  ];
}
