import type { Confounder } from "../../core/herniation.ts";
import type { SeenSign, ThinkOf } from "../../rules/herniationWatch.ts";
import { sayLength } from "./clock.ts";
import { sentences } from "./sentence.ts";

const BOTH = ["leftPupil", "rightPupil"];

/** The sign that is named: one is enough to be asked about. */
export function saySign(signs: readonly SeenSign[]): string {
  const [first, second] = signs;
  switch (first?.sign) {
    case "leftPupil":
    case "rightPupil": {
      const both = second !== undefined && BOTH.includes(second.sign);
      const how = both && "how" in second && second.how !== first.how ? "abnormal" : first.how;
      return `${both ? "both pupils" : first.sign === "leftPupil" ? "left pupil" : "right pupil"} ${how}`;
    }
    case "unequal":
      return "pupils unequal";
    case "motor":
      return first.score === 1 ? "no motor response" : "motor two";
    case "gcsFall":
      return "Glasgow score fell";
    case "cushing":
      return "pressure up, pulse slow";
    case "said":
    case undefined:
      return "herniation";
  }
}

/** Seen, it may be herniation; called, it is called that. */
function sayPerhaps(signs: readonly SeenSign[]): string {
  const name = saySign(signs);
  return signs[0] === undefined || signs[0].sign === "said" ? name : `${name}, perhaps herniation`;
}

/** What is there is named; what nobody has ruled out is to be thought of. */
const CONFOUNDERS: Readonly<Record<Confounder, string>> = {
  "pupil-drugs": "pupil drugs, eye injury",
  "eye-injury": "eye injury",
  hypoxia: "low oxygen",
  hypotension: "low pressure",
  hypoglycaemia: "low glucose",
  seizure: "a seizure",
};

const sayThinkOf = ({ confounder, present }: ThinkOf): string =>
  present ? `Also ${CONFOUNDERS[confounder]}` : `Think of ${CONFOUNDERS[confounder]}`;

/**
 * The one question that stands before the rescue: what was seen, what else could make it, and whether to start. In at most
 * fifteen words.
 */
export const askRescue = (signs: readonly SeenSign[], thinkOf: ThinkOf | undefined): string =>
  sentences(sayPerhaps(signs), thinkOf && sayThinkOf(thinkOf), "start rescue measures?");

/** The measures begin, with how long they may last. */
export const sayRescueStarted = (forMs: number): string => sentences(`Rescue, ${sayLength(forMs)}`);
export const RESCUE_ENDED = "Rescue ended.";
export const NO_RESCUE = "No rescue runs.";
export const RESCUE_DENIED = "No rescue started.";
/** What a question that we asked by ourselves is called in the record, and when nobody answers it. */
export const RESCUE_MEASURES = "rescue measures";
