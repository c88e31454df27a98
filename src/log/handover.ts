import type { MmHg } from "../core/quantity.ts";
import type { GivenEntry, InfusionEntry } from "./careState.ts";
import type { CaseState, FindingEntry, VitalEntry } from "./caseState.ts";
import type { StepValue } from "./facts.ts";
import type { Perfusion } from "./perfusion.ts";
import type { FluidTotal, GivenTotal } from "./totals.ts";
import type { Unconfirmed } from "./unconfirmed.ts";

/** How low a pressure was, and for how long it was under the target that holds now. */
export type Low = {
  readonly code: "map" | "sbp" | "cpp";
  readonly lowestMmHg: MmHg;
  /** Unix ms of the first reading as low as that. */
  readonly atMs: number;
  readonly targetMmHg: MmHg;
  /** Minutes under the target, unrounded; 0 with `anyUnder` is a single reading without a neighbour. */
  readonly underMin: number;
  readonly anyUnder: boolean;
  /** There was time, up to now, in which nobody knows the pressure: the minutes are a least. */
  readonly isLeast: boolean;
};

/** A number or a finding of a vital as it was called last, and what it was at first, where that was something else. */
export type Course = {
  readonly now: VitalEntry | FindingEntry;
  readonly first: VitalEntry | FindingEntry | undefined;
};

export type GivenDrug = {
  readonly drugId: string;
  readonly drugClass: GivenEntry["drugClass"];
  readonly total: GivenTotal;
  /** Unix ms of the last dose. */
  readonly lastAtMs: number;
};

/** How the airway stands. */
export type AirwayNow = {
  readonly attempts: number;
  readonly tube: { readonly atMs: number; readonly confirmed: boolean; readonly co2: boolean } | undefined;
  readonly size: StepValue | undefined;
  readonly depth: StepValue | undefined;
  readonly supraglottic: boolean;
  /** A failed airway was called, and no tube was confirmed since. */
  readonly failed: boolean;
};

/** What is handed over, as numbers and facts; the words are the reader's. Struck entries are in none of it. */
export type Handover = {
  readonly lows: readonly Low[];
  /** Age and weight; the sex where it was said. */
  readonly patient: readonly VitalEntry[];
  readonly sex: NonNullable<CaseState["sex"]>["sex"] | undefined;
  /** Unix ms; the case has no other beginning. */
  readonly openedAtMs: number | undefined;
  readonly cause: NonNullable<CaseState["cause"]>["cause"] | undefined;
  readonly herniation: CaseState["herniation"];
  readonly findings: readonly Course[];
  /** In the order first given. */
  readonly given: readonly GivenDrug[];
  readonly fluids: readonly FluidTotal[];
  readonly airway: AirwayNow;
  readonly perfusion: Perfusion;
  /** Everything else that was measured. */
  readonly numbers: readonly VitalEntry[];
  /** Infusions that run, by the id of the drug. */
  readonly infusions: readonly (readonly [drugId: string, infusion: InfusionEntry])[];
  /** Said and never affirmed: in none of the above. */
  readonly unconfirmed: readonly Unconfirmed[];
};
