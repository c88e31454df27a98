import Fraction from "fraction.js";

/** Times in whole ms; pressures in mmHg as whole numbers or decimal text, so that nothing is lost on the way in. */
export type ExactReading = { readonly atMs: number; readonly mmHg: number | string };
export type ExactTotals = { doseMmHgMin: number; belowMin: number; knownMin: number; unknownMin: number };

const MS_PER_MIN = 60_000;

type Point = { readonly t: Fraction; readonly v: Fraction };

/**
 * Area and time under the floor between two points, the textbook way, case by case: the line crosses at
 * t0 + (t1 − t0) × (T − v0) / (v1 − v0); a triangle on the low side of that, a trapezium where both ends are low.
 */
function between(from: Point, to: Point, floor: Fraction): { readonly area: Fraction; readonly time: Fraction } {
  const length = to.t.sub(from.t);
  const isLowFrom = from.v.compare(floor) < 0;
  const isLowTo = to.v.compare(floor) < 0;
  if (isLowFrom && isLowTo) return { area: floor.sub(from.v).add(floor.sub(to.v)).div(2).mul(length), time: length };
  if (!isLowFrom && !isLowTo) return { area: new Fraction(0), time: new Fraction(0) };
  const cross = from.t.add(length.mul(floor.sub(from.v)).div(to.v.sub(from.v)));
  const time = isLowFrom ? cross.sub(from.t) : to.t.sub(cross);
  const depth = floor.sub(isLowFrom ? from.v : to.v);
  return { area: depth.mul(time).div(2), time };
}

/** The judge: each interval in whole fractions, rounded once, when it is added to the sums. */
export function exactLowPressure(
  series: readonly ExactReading[],
  floorMmHg: number | string,
  unknownAfterMs: number,
): ExactTotals {
  const floor = new Fraction(floorMmHg);
  const points = series.map(({ atMs, mmHg }) => ({ t: new Fraction(atMs), v: new Fraction(mmHg) }));
  let [area, below, known, unknown] = [0, 0, 0, 0];
  for (const [i, to] of points.slice(1).entries()) {
    const from = points[i]!;
    const length = to.t.sub(from.t).valueOf();
    if (length > unknownAfterMs) {
      unknown += length;
      continue;
    }
    known += length;
    if (length === 0) continue;
    const part = between(from, to, floor);
    area += part.area.valueOf();
    below += part.time.valueOf();
  }
  return {
    doseMmHgMin: area / MS_PER_MIN,
    belowMin: below / MS_PER_MIN,
    knownMin: known / MS_PER_MIN,
    unknownMin: unknown / MS_PER_MIN,
  };
}
