import type { AirwayEvent, Phase, SpokenClock } from "./careFacts.ts";

/** What the course of a case is called wherever it is said, shown or written. */
export const PHASES: Readonly<Record<Phase, string>> = {
  assess: "assess",
  resuscitate: "resuscitate",
  prepare: "prepare",
  induce: "induce",
  intubate: "intubate",
  settle: "settle",
  watch: "watch",
  handOver: "hand over",
};
export const AIRWAY_EVENTS: Readonly<Record<AirwayEvent, string>> = {
  bladeIn: "blade in",
  out: "blade out",
  tubeIn: "tube in",
  tubeConfirmed: "tube confirmed",
  tubeOut: "tube out",
};
export const CLOCKS: Readonly<Record<SpokenClock, string>> = {
  preoxygenation: "preoxygenation",
  apnoea: "apnoea",
  hyperventilation: "hyperventilation",
};
