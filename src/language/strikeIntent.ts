import type { VitalCode } from "../core/vitals.ts";
import type { AirwayEvent } from "../log/careFacts.ts";
import type { SaidNumber } from "./saidNumber.ts";

/** What an entry is of. `entry`: whatever was entered last; `pressure`: systolic, diastolic and mean of one reading. */
export const STRUCK_THINGS = [
  ...(["pressure", "gcs", "cause", "herniation", "drug", "fluid", "entry"] as const),
  ...(["bladeIn", "out", "tubeIn", "tubeConfirmed", "tubeOut"] as const satisfies readonly AirwayEvent[]),
  ...(["map", "hr", "rr", "spo2", "etco2", "icp", "temp", "glucose"] as const satisfies readonly VitalCode[]),
  ...(["weight", "height", "age", "pupilLeft", "pupilRight"] as const satisfies readonly VitalCode[]),
] as const;
export type StruckThing = (typeof STRUCK_THINGS)[number];

/** "Strike the ICP of fifty", "correct the ICP of fifty to fifteen": an entry from before, by what it is of and its number. */
export type StrikeIntent = {
  readonly kind: "strike";
  readonly of: StruckThing;
  /** The drug or the fluid, by its key in the protocol file. */
  readonly id?: string;
  /** The number that was entered; of a pressure the systolic. */
  readonly was?: SaidNumber;
  readonly wasLow?: SaidNumber;
  /** What it should have been; none: it is struck. */
  readonly becomes?: SaidNumber;
  readonly becomesLow?: SaidNumber;
};
