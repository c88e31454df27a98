/** Both clocks of the device at one moment: the one that people set, Unix ms, and the one that only counts, ms. */
export type ClockReading = { readonly wallMs: number; readonly countMs: number };

/** What happened to the clock since it was last looked at. */
export type ClockMove =
  /** It was set, forward or (under 0) back: the running clock does not follow. */
  | { readonly kind: "set"; readonly byMs: number }
  /** The device slept, or the page was held still: that time has passed, and the running clock counts it. */
  | { readonly kind: "slept"; readonly forMs: number };

export type RunningClockState = {
  readonly last: ClockReading;
  /** How far the device's clock has been set forward; under 0: back. */
  readonly setForwardMs: number;
};

/** It is looked at this often. */
export const CLOCK_PERIOD_MS = 250;
/** Less than this is a clock being steered, or the two being read one after the other. */
const STEERED_MS = 2_000;
/** A device that wakes takes a while to come round; a clock that is merely set delays nothing. */
const LATE_MS = 200;
/** Whatever comes so late was held still all that time, and not merely busy. */
const HELD_MS = 10_000;

/** Case time in Unix ms: the device's clock, as it would be had nobody set it since. */
export const runningMs = ({ last, setForwardMs }: RunningClockState): number => last.wallMs - setForwardMs;

/**
 * Looks at both clocks again.
 *
 * The counting clock stands still while some devices sleep. Forward, a sleep and a clock that was set therefore look alike but
 * for one thing: after a sleep this look comes late. In doubt it counts as a sleep, since a reading that is believed younger
 * than it is does harm, and one believed older is measured again. Either way it is said aloud and recorded. Where the counting
 * clock runs on, as it also does in a page that the browser holds still, the lateness alone tells.
 */
export function lookAtClock(
  { last, setForwardMs }: RunningClockState,
  reading: ClockReading,
): readonly [RunningClockState, ClockMove | undefined] {
  const countedMs = reading.countMs - last.countMs;
  const byMs = Math.round(reading.wallMs - last.wallMs - countedMs);
  const isSteered = Math.abs(byMs) < STEERED_MS;
  if (isSteered && countedMs < HELD_MS) return [{ last: reading, setForwardMs }, undefined];
  if (isSteered || (byMs > 0 && countedMs > CLOCK_PERIOD_MS + LATE_MS))
    return [
      { last: reading, setForwardMs },
      { kind: "slept", forMs: Math.round(reading.wallMs - last.wallMs) },
    ];
  return [
    { last: reading, setForwardMs: setForwardMs + byMs },
    { kind: "set", byMs },
  ];
}
