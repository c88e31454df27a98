import type { Formula, Source } from "../derivation.ts";
import { COMMON_PRACTICE } from "./sources.ts";

const LOW_PRESSURE: Source = {
  reference:
    "Spaite DW et al. Hypotension depth and duration. Ann Emerg Med 2017;70:522-530. doi:10.1016/j.annemergmed.2017.03.027",
  kind: "trial",
  // The integral is defined in the abstract, which was read.
  primaryRead: true,
};

/** How a pressure, a pulse and an examination go on over time: keys are the functions of `src/core`. */
export const courseFormulas = {
  lowPressureDose: {
    name: "dose of low pressure",
    expression: "∫ max(0, floor − pressure) dt, straight lines between readings",
    source: LOW_PRESSURE,
  },
  lowPressureTotals: {
    name: "dose of low pressure so far",
    expression: "∫ max(0, floor − pressure) dt, straight lines between readings",
    source: LOW_PRESSURE,
  },
  slopePerMin: {
    name: "trend per minute",
    expression: "Σ(t − mean t)(y − mean y) / Σ(t − mean t)²",
    source: { reference: "least squares, a standard form, from memory", kind: "memory", primaryRead: false },
  },
  minutesUntil: {
    name: "minutes until the level at this trend",
    expression: "(value − level) / fall per minute",
    source: COMMON_PRACTICE,
  },
  dropSince: {
    name: "fall since the first value",
    expression: "first − now; 100 × (first − now) / first",
    source: COMMON_PRACTICE,
  },
  hasChangedByPct: {
    name: "change in per cent of the first value",
    expression: "100 × change ≥ limit × first",
    source: COMMON_PRACTICE,
  },
  lowestSince: {
    name: "lowest value since",
    expression: "min(readings since)",
    source: COMMON_PRACTICE,
  },
  cushingPattern: {
    name: "Cushing pattern",
    expression: "SBP rise ≥ limit, SBP − DBP wider, and HR < limit or HR fall ≥ limit",
    source: COMMON_PRACTICE,
  },
  neuroChange: {
    name: "change of the neurological examination",
    expression: "GCS fall ≥ points from under a total, motor fall > 0, pupils newly unequal or newly fixed",
    source: { reference: "signs of herniation, textbook knowledge from memory", kind: "memory", primaryRead: false },
  },
} as const satisfies Record<string, Formula>;
