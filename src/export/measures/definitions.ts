import type { Sourced } from "../../protocol/protocol.ts";

/**
 * What the published measures count, as they were published. They are no settings of the protocol: a figure with a floor of
 * one's own could not be held against anybody else's. What a service aims at itself, the floors of its targets, is read
 * from its protocol.
 *
 * Numbers as in the summaries named; `primaryRead` says whether the number was read in the document itself.
 */
type Definitions = {
  readonly withoutLow: Sourced<{ readonly spo2BelowPct: number; readonly sbpBelowMmHg: number }>;
  readonly postIntubation: Sourced<{
    readonly sbpBelowMmHg: number;
    readonly withinMin: number;
    readonly lowBeforeMin: number;
    readonly fromAgeA: number;
  }>;
};

export const DEFINITIONS: Definitions = {
  /** First attempt with neither hypoxia nor hypotension. */
  withoutLow: {
    value: { spo2BelowPct: 90, sbpBelowMmHg: 90 },
    source: {
      reference:
        "Powell EK et al., predictors of definitive airway without hypoxia or hypotension on first attempt in injured patients; numbers in the abstract of a critical care transport service's review of 541 patients",
      kind: "trial",
      primaryRead: false,
    },
    choice: {
      instead: ["a further fall of 10 % where the value was already under 90 before the attempt"],
      reason: "The strict reading flatters nobody: who was low before counts as low.",
    },
  },
  /** Hypotension after intubation. */
  postIntubation: {
    value: { sbpBelowMmHg: 90, withinMin: 60, lowBeforeMin: 30, fromAgeA: 18 },
    source: {
      reference:
        "Heffner AC et al., Predictors of the complication of postintubation hypotension during emergency airway management, J Crit Care 2012, abstract",
      kind: "trial",
      primaryRead: true,
    },
    choice: {
      instead: [
        "under or at 90, a fall of 20 %, a mean of 65 or less, or a new pressor within 30 min",
        "mean under 65, systolic under 80 or a fall of 40 %, or a pressor begun or raised within 30 min",
      ],
      reason: "It needs nothing but systolic pressures and the time of the tube, which the record has.",
    },
  },
};
