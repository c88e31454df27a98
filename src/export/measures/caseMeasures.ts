import { selectLatest } from "../../log/selectors.ts";
import type { RecordedCase } from "../recordedCase.ts";
import { selectAttemptMeasures, selectFirstPass, selectFirstPassWithoutLow, type AttemptMeasure } from "./attempts.ts";
import { selectFloors, type FloorMeasure } from "./floors.ts";
import { selectLowest, selectLowestAround, type LowestValues } from "./lowest.ts";
import type { Measured } from "./measured.ts";
import { selectOverVentilation, type OverVentilation } from "./overVentilation.ts";
import { selectPostIntubation, type PostIntubation } from "./postIntubation.ts";
import { selectSedationMin } from "./sedation.ts";
import { selectWaivedSteps } from "./waivedSteps.ts";

/** How one case went. Nothing in it is a number where the record has none. */
export type CaseMeasures = {
  readonly firstPass: Measured<boolean>;
  /** First pass, and neither hypoxia nor hypotension around induction. */
  readonly firstPassWithoutLow: Measured<boolean>;
  readonly attempts: Measured<readonly AttemptMeasure[]>;
  /** Around induction. */
  readonly around: LowestValues;
  /** In the whole case. */
  readonly lowest: LowestValues;
  readonly floors: readonly FloorMeasure[];
  /** False: the floors are those that the protocol takes where no age is known. */
  readonly ageKnown: boolean;
  /** From the proof of the tube to the first sedative after it, minutes. */
  readonly sedationMin: Measured<number>;
  readonly overVentilation: Measured<OverVentilation>;
  readonly postIntubation: Measured<PostIntubation>;
  /** Ids of steps. */
  readonly waived: Measured<readonly string[]>;
  /** How often the clock of the device was set during the case: lengths are not moved by it, times of the day are. */
  readonly clockChanges: number;
};

/**
 * Everything that is measured of a case, judged by the protocol that it carries. What was struck out, and statements that
 * nobody confirmed, count for nothing.
 *
 * Not for: judging a person. What nobody said is not in the record, and a low value there may have been the patient's from
 * the start.
 */
export const measureCase = (recorded: RecordedCase): CaseMeasures => ({
  firstPass: selectFirstPass(recorded),
  firstPassWithoutLow: selectFirstPassWithoutLow(recorded),
  attempts: selectAttemptMeasures(recorded),
  around: selectLowestAround(recorded),
  lowest: selectLowest(recorded),
  floors: selectFloors(recorded),
  ageKnown: selectLatest(recorded.state, "age") !== undefined,
  sedationMin: selectSedationMin(recorded),
  overVentilation: selectOverVentilation(recorded),
  postIntubation: selectPostIntubation(recorded),
  waived: selectWaivedSteps(recorded),
  clockChanges: recorded.facts.filter(({ type }) => type === "clock.changed").length,
});
