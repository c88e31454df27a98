import type { StepAnswer } from "../log/facts.ts";
import type { ListId } from "../log/steps/lists.ts";

/** What the lists and the answers to their steps are called wherever they leave the device. */
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
