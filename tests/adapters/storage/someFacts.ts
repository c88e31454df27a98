import type { Fact } from "../../../src/log/facts.ts";

/** The fact that opens a case. */
export const opened = (caseId: string): Fact => ({
  v: 2,
  id: `${caseId}-opened`,
  atMs: 1_000,
  type: "case.opened",
  caseId,
  label: "kilo four seven",
  rehearsal: false,
  protocol: { name: "test", version: "1" },
});

/** A heart rate told apart by its value. */
export const rate = (value: number): Fact => ({
  v: 2,
  id: `rate-${value}`,
  atMs: 2_000 + value,
  type: "vital.recorded",
  readingId: `reading-${value}`,
  heard: `rate ${value}`,
  by: "typed",
  code: "hr",
  value,
  unit: "/min",
  said: { value, unit: "/min", words: `rate ${value}` },
});
