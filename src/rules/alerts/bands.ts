import { isWorse, type Priority } from "../../protocol/priority.ts";
import { beyond, type Side } from "../../protocol/alertLimits.ts";
import type { Band, JudgedRule } from "./judgedRule.ts";

const isInside = (band: Band, value: number, side: Side): boolean => {
  const by = beyond(value, band.limit, side);
  return by > 0 || (band.inclusive && by === 0);
};

/** The priority that this value has by itself: that of the worst band it lies in. */
export const priorityOf = ({ bands, side }: JudgedRule, value: number): Priority | undefined =>
  bands.findLast((band) => isInside(band, value, side))?.priority;

/**
 * How many readings back the hysteresis looks, so that judging costs the same in the ninth hour. An alert whose values have
 * hovered just beside its band for longer than this simply goes on standing. This project's choice, no source.
 */
const LOOK_BACK = 100;

function newestOf(newestFirst: Iterable<{ readonly value: number }>): readonly number[] {
  const values: number[] = [];
  for (const { value } of newestFirst) {
    values.push(value);
    if (values.length === LOOK_BACK) break;
  }
  return values;
}

/** Margins are decimal fractions: 38 − 0.3 must be 37.7. */
const ROUNDING = 1e-9;

/** Whether a band, once entered, has not been left for good: enough readings in a row well on its good side. */
function isHeld(rule: JudgedRule, band: Band, newestFirst: readonly number[]): boolean {
  let well = 0;
  for (const value of newestFirst) {
    if (isInside(band, value, rule.side)) return true;
    well = beyond(value, band.limit, rule.side) <= -rule.clearBy + ROUNDING ? well + 1 : 0;
    if (well >= rule.clearReadings) return false;
  }
  return newestFirst.length === LOOK_BACK;
}

/**
 * The worst priority that an alert which stands may keep, by hysteresis. It depends on the readings and the limits alone, so an alert
 * whose readings were struck is held by nothing. When other limits hold since (an age was recorded), older readings are
 * judged by these too, as if they had held from the start.
 *
 * Not for: raising an alert. Only the newest value does that.
 */
export function heldPriority(
  rule: JudgedRule,
  newestFirst: Iterable<{ readonly value: number }>,
): Priority | undefined {
  const values = newestOf(newestFirst);
  return rule.bands.findLast((band) => isHeld(rule, band, values))?.priority;
}

/** The milder of two; none is the mildest. */
export const milder = (a: Priority | undefined, b: Priority | undefined): Priority | undefined =>
  a === undefined || b === undefined ? undefined : isWorse(a, b) ? b : a;

/** The worse of two; none is the mildest. */
export const worse = (a: Priority | undefined, b: Priority | undefined): Priority | undefined =>
  a === undefined ? b : b === undefined || isWorse(a, b) ? a : b;
