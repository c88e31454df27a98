/**
 * What was said, and what it must mean, in the notation of `meantText`:
 * "sbp 110 (cuff), dbp 60 (cuff)" values · "etco2 4.5 kPa" with the unit said · "pupilLeft fixed" a finding ·
 * "do status" · "step suction done" · "number 90" · "unit kPa" · "correction: hr 90" ·
 * "a || b" more than one meaning · "-" not understood.
 */
export type Row = readonly [said: string, meant: string];
