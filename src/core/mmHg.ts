import { quantityOf, type MmHg } from "./quantity.ts";
import { spanOf } from "./vitals.ts";

/** Any pressure that a vital of this project can have, in mmHg. Each vital's narrower entry limits are in `VITALS`. */
export const mmHg = quantityOf<"mmHg">(spanOf("mm[Hg]"));

/**
 * A pressure that already passed its check: a recorded value, or a number of a validated protocol.
 * Not for: anything that was just said or typed; that goes through `mmHg` or `withinLimits` first.
 */
export const checkedMmHg = (n: number): MmHg => n as MmHg;
