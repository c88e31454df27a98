import { VITALS, type VitalCode } from "../../core/vitals.ts";
import type { StruckThing } from "../strikeIntent.ts";
import { sentences } from "./sentence.ts";
import { sayAge } from "./vital.ts";

/** An entry in words, and how old it is; no age where the record keeps none, such as of a cause. */
export type Aged = { readonly words: string; readonly ageMs: number | undefined };

const NAMES: Readonly<Partial<Record<StruckThing, string>>> = {
  gcs: "GCS",
  bladeIn: "blade in",
  out: "blade out",
  tubeIn: "tube in",
  tubeConfirmed: "tube confirmed",
  tubeOut: "tube out",
};

/** What an entry is of: "ICP", "pressure", "tube in". */
export const sayThing = (of: StruckThing): string =>
  of in VITALS ? VITALS[of as VitalCode].spokenName : (NAMES[of] ?? of);

function aged({ words, ageMs }: Aged): string {
  if (ageMs === undefined) return words;
  const age = sayAge(ageMs);
  return `${words}, ${age === "now" ? "just now" : `${age} ago`}`;
}

/** "ICP fifty, five zero, twelve minutes ago. Strike it?" */
export const askStrike = (entry: Aged): string => sentences(aged(entry), "Strike it?");

/** "ICP fifty, five zero, twelve minutes ago. Correct to ICP fifteen, one five?" */
export const askCorrect = (entry: Aged, becomes: string): string => sentences(aged(entry), `Correct to ${becomes}?`);

/** What is asked for is not there: with what there is of that kind. */
export const sayNoEntry = (asked: string, last: Aged | undefined): string =>
  last === undefined ? sentences(`No ${asked} recorded`) : sentences(`No ${asked}`, `Last ${aged(last)}`);

/** A pressure is two numbers, or it is one: the correction must be the same. */
export const sayOtherShape = (entry: Aged): string => sentences(aged(entry), "Say as many numbers");

/** It is struck, with what counts now: the entry before it, or none. */
export const sayStruck = (words: string, left: Aged | string | undefined): string =>
  sentences(`Struck: ${words}`, left === undefined ? undefined : typeof left === "string" ? left : `Now ${aged(left)}`);

export const sayCorrected = (becomes: string): string => sentences(`Corrected: ${becomes}`);

export const STRUCK_ALREADY = "Struck already.";
