/** Where the case stands, in the order of the job. Nothing is locked: any may follow any. */
export const PHASES = [
  "assess",
  "resuscitate",
  "prepare",
  "induce",
  "intubate",
  "settle",
  "watch",
  "handOver",
] as const;
export type Phase = (typeof PHASES)[number];
