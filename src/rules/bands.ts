import { isWorse, type Priority } from "../protocol/priority.ts";
import type { AlertBand, AlertRule } from "../protocol/protocol.ts";

const isInside = (band: AlertBand, value: number): boolean =>
  value < band.below || (band.inclusive && value === band.below);

/** The priority that this value has by itself: that of the worst band it lies in. */
export const priorityOf = (rule: AlertRule, value: number): Priority | undefined =>
  rule.bands.findLast((band) => isInside(band, value))?.priority;

/** Whether a band, once entered, has not been left for good: enough readings in a row well above it. */
function isHeld(rule: AlertRule, band: AlertBand, newestFirst: Iterable<{ readonly value: number }>): boolean {
  let well = 0;
  for (const { value } of newestFirst) {
    if (isInside(band, value)) return true;
    well = value >= band.below + rule.clearBy ? well + 1 : 0;
    if (well >= rule.clearReadings) return false;
  }
  return false;
}

/**
 * The worst priority that these readings still hold, by hysteresis. It depends on the readings alone, so an alert whose
 * readings were struck is held by nothing.
 *
 * @param readings makes a fresh walk over the values, newest first.
 */
export const heldPriority = (
  rule: AlertRule,
  readings: () => Iterable<{ readonly value: number }>,
): Priority | undefined => rule.bands.findLast((band) => isHeld(rule, band, readings()))?.priority;

/** The milder of two; none is the mildest. */
export const milder = (a: Priority | undefined, b: Priority | undefined): Priority | undefined =>
  a === undefined || b === undefined ? undefined : isWorse(a, b) ? b : a;

/** The worse of two; none is the mildest. */
export const worse = (a: Priority | undefined, b: Priority | undefined): Priority | undefined =>
  a === undefined ? b : b === undefined || isWorse(a, b) ? a : b;
