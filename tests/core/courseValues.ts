import { checkedMmHg } from "../../src/core/mmHg.ts";
import { mm, percent, perMin, score } from "../../src/core/quantities.ts";
import type { PressureReading } from "../../src/core/lowPressure.ts";
import { taken } from "./taken.ts";

export const mmHgOf = checkedMmHg;
export const pctOf = (n: number) => taken(percent(n));
export const perMinOf = (n: number) => taken(perMin(n));
export const scoreOf = (n: number) => taken(score(n));
export const mmOf = (n: number) => taken(mm(n));

export const MIN_MS = 60_000;

/** Minutes and mmHg, as a published row gives them, into readings. */
export const readingsOf = (samples: readonly (readonly [atMin: number, mmHg: number])[]): PressureReading[] =>
  samples.map(([atMin, mmHg]) => ({ atMs: atMin * MIN_MS, mmHg: mmHgOf(mmHg) }));
