/** Widths in CSS pixels, 1/96 inch: the plot is drawn at its true size, so its 12 px letters are 9 pt on paper. */
export const PLOT_PX = { width: 680, left: 124, right: 610 } as const;
export const ROW_PX = 14;

/** One stretch of time that is drawn side by side. */
export type Strip = { readonly fromMs: number; readonly toMs: number };

const MIN_MS = 60_000;
/** As many as can still be leafed through. */
const MOST_STRIPS = 12;
const SHORTEST_MIN = 30;
const TICKS = 6;

/** How long a strip is: the shortest of half an hour, an hour, two, … of which not too many cover the case. */
function stripMs(lengthMs: number): number {
  let min = SHORTEST_MIN;
  while (lengthMs > min * MIN_MS * MOST_STRIPS) min *= 2;
  return min * MIN_MS;
}

/** The strips that cover the case, each beginning at a full five minutes (or more) of the clock. */
export function stripsOf(fromMs: number, toMs: number): readonly Strip[] {
  const lengthMs = stripMs(toMs - fromMs);
  const tickMs = lengthMs / TICKS;
  const first = Math.floor(fromMs / tickMs) * tickMs;
  const count = Math.max(1, Math.ceil((toMs - first) / lengthMs));
  return Array.from({ length: count }, (_, i) => ({ fromMs: first + i * lengthMs, toMs: first + (i + 1) * lengthMs }));
}

export const ticksOf = ({ fromMs, toMs }: Strip): readonly number[] =>
  Array.from({ length: TICKS + 1 }, (_, i) => fromMs + ((toMs - fromMs) / TICKS) * i);

export const isIn = ({ fromMs, toMs }: Strip, atMs: number): boolean => atMs >= fromMs && atMs < toMs;

const round = (px: number): number => Math.round(px * 10) / 10;

/** Where an instant stands in its strip, px; one outside of it stands outside of the plot. */
export const xOf = ({ fromMs, toMs }: Strip, atMs: number): number =>
  round(PLOT_PX.left + ((atMs - fromMs) / (toMs - fromMs)) * (PLOT_PX.right - PLOT_PX.left));

/** The values that a panel shows, and where it lies. */
export type Axis = {
  readonly low: number;
  readonly high: number;
  readonly step: number;
  readonly topPx: number;
  readonly heightPx: number;
};

export const yOf = ({ low, high, topPx, heightPx }: Axis, value: number): number =>
  round(topPx + heightPx * (1 - (value - low) / (high - low)));

/** An axis of whole steps that holds all these values, and at least what is usual. */
export function axisOf(
  values: readonly number[],
  usual: { readonly low: number; readonly high: number; readonly step: number },
  heightPx: number,
): Omit<Axis, "topPx"> {
  const low = values.reduce((least, value) => Math.min(least, value), usual.low);
  const high = values.reduce((most, value) => Math.max(most, value), usual.high);
  const { step } = usual;
  return { low: Math.floor(low / step) * step, high: Math.ceil(high / step) * step, step, heightPx };
}

export const stepsOf = ({ low, high, step }: Omit<Axis, "topPx">): readonly number[] =>
  Array.from({ length: Math.round((high - low) / step) + 1 }, (_, i) => low + i * step);
