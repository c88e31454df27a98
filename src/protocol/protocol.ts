import type { VitalCode } from "../core/vitals.ts";
import type { Priority } from "./priority.ts";

/** A clinical number with where it comes from. Nothing clinical lives outside the protocol file. */
export type Sourced<T> = { readonly value: T; readonly source: string };

/** What an alert watches. `map` is the measured mean, else the computed one; `cpp` exists only with a measured ICP. */
export type WatchedCode = "sbp" | "map" | "cpp" | "spo2";

export type AlertBand = {
  /** The band is entered when the value is below this (or equal to it, where `inclusive`). */
  readonly below: number;
  readonly inclusive: boolean;
  readonly priority: Priority;
  readonly source: string;
};

export type AlertRule = {
  readonly id: string;
  readonly code: WatchedCode;
  /** Mildest first. */
  readonly bands: readonly AlertBand[];
  /** To clear, a value must stand this far above the mildest band … */
  readonly clearBy: number;
  /** … this many readings in a row. */
  readonly clearReadings: number;
  readonly source: string;
};

export type Step = {
  readonly id: string;
  /** Read aloud; at most eight words. */
  readonly challenge: string;
  /** May be waived only aloud. */
  readonly killer: boolean;
  /** Answered by the record itself, without a word: the target is met, or these vitals are recorded. */
  readonly satisfiedBy?:
    { readonly kind: "map-at-target" } | { readonly kind: "recorded"; readonly codes: readonly VitalCode[] };
  readonly source: string;
};

export type StepGroup = { readonly id: string; readonly title: string; readonly steps: readonly Step[] };

export type ConfirmRule = {
  /** Values between two edges lead to the same action; a sound-alike across an edge is asked back. */
  readonly actionEdges: readonly number[];
  /** `always`: thirteen and thirty are asked back whatever they would change. */
  readonly soundAlike: "always" | "if-action-differs";
  /** Further than this from the last value, within the window: asked back. */
  readonly jump?: { readonly by: number; readonly withinS: number };
  readonly source: string;
};

export type Protocol = {
  readonly schema: 1;
  readonly name: string;
  readonly version: string;
  readonly owner: string;
  /** ISO date. */
  readonly date: string;
  /** The caution shown with the name. */
  readonly caution: string;
  readonly targets: {
    readonly mapMmHg: Sourced<number>;
    readonly sbpMmHg: Sourced<number>;
    readonly cppMmHg: Sourced<number>;
    readonly spo2Pct: Sourced<number>;
  };
  /** The range drawn and spoken while ICP is not measured. Always called assumed. */
  readonly assumedIcpMmHg: Sourced<{ readonly low: number; readonly high: number }>;
  /** When two pressures describe the same moment. */
  readonly pressures: {
    /** Systolic and diastolic said apart are one reading only this close together. */
    readonly halvesWithinS: Sourced<number>;
    /** Further apart than this, they do not agree. */
    readonly apartMmHg: Sourced<number>;
  };
  readonly alerts: readonly AlertRule[];
  readonly groups: readonly StepGroup[];
  readonly confirm: Readonly<Partial<Record<VitalCode, ConfirmRule>>>;
  readonly timers: {
    /** An open question turns into an unconfirmed statement. */
    readonly questionTimeoutS: Sourced<number>;
    /** A reading is called stale. */
    readonly staleAfterS: Sourced<number>;
    /** "Stand by" holds prompts and questions this long. */
    readonly standByS: Sourced<number>;
    readonly reannounceS: Readonly<Record<Priority, Sourced<number>>>;
  };
};
