import type { AirwayEvent, Phase, SpokenClock } from "../log/careFacts.ts";
import type { StepAnswer } from "../log/facts.ts";
import type { ListId } from "../log/steps/lists.ts";

/** What the course of a case is called wherever it leaves the device. */
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
export const LISTS: Readonly<Record<ListId, string>> = {
  prepare: "Preparation",
  afterTube: "After the tube",
  rescue: "Herniation rescue",
  failedAirway: "Failed airway",
};
export const ANSWERS: Readonly<Record<StepAnswer, string>> = {
  done: "done",
  "not-needed": "not needed",
  later: "put off",
  waived: "waived aloud",
};
