import { selectInductionWindow, type Window } from "../../log/inductionWindow.ts";
import type { RecordedCase } from "../recordedCase.ts";
import { known, unknown, type Measured } from "./measured.ts";
import { meansOf, perfusionOf, readingsOf, type Reading } from "./readings.ts";

/** The lowest of some readings, when it was, and of how many it is the lowest. */
export type LowestOf = Reading & { readonly readings: number };

/** mmHg, but saturation in per cent. CPP only with a measured ICP. */
export type LowestValues = {
  readonly sbp: Measured<LowestOf>;
  readonly map: Measured<LowestOf>;
  readonly cpp: Measured<LowestOf>;
  readonly spo2: Measured<LowestOf>;
};

const EVER: Window = { fromMs: -Infinity, toMs: Infinity };

export const within = (readings: readonly Reading[], { fromMs, toMs }: Window): readonly Reading[] =>
  readings.filter(({ atMs }) => atMs >= fromMs && atMs <= toMs);

function lowestOf(readings: readonly Reading[], window: Window): Measured<LowestOf> {
  const [first, ...rest] = within(readings, window);
  if (first === undefined) return unknown("not-measured");
  const lowest = rest.reduce((low, reading) => (reading.value < low.value ? reading : low), first);
  return known({ ...lowest, readings: rest.length + 1 });
}

const lowestIn = (recorded: RecordedCase, window: Window): LowestValues => ({
  sbp: lowestOf(readingsOf(recorded, "sbp"), window),
  map: lowestOf(meansOf(recorded), window),
  cpp: lowestOf(perfusionOf(recorded), window),
  spo2: lowestOf(readingsOf(recorded, "spo2"), window),
});

/** The lowest values of the whole case. */
export const selectLowest = (recorded: RecordedCase): LowestValues => lowestIn(recorded, EVER);

/** The lowest values around induction: see `INDUCTION_WINDOW`. */
export function selectLowestAround(recorded: RecordedCase): LowestValues {
  const window = selectInductionWindow(recorded.state);
  if (window !== undefined) return lowestIn(recorded, window);
  const none = unknown("no-induction");
  return { sbp: none, map: none, cpp: none, spo2: none };
}
