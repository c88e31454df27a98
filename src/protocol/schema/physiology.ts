import * as v from "valibot";
import { count, notNegative, number, positive, range, source, sourced } from "./parts.ts";

/** When two pressures describe the same moment, and where they were levelled. */
export const pressures = v.strictObject({
  /** Systolic and diastolic said apart are one reading only this close together. */
  halvesWithinS: sourced(positive),
  /** Further apart than this, they do not agree. */
  apartMmHg: sourced(positive),
  /** Where the arterial transducer is taken to be levelled until it is said. */
  transducerLevel: sourced(v.picklist(["heart", "tragus"])),
});

export const shock = v.strictObject({
  /** HR / SBP at or over this: doses are reduced, and it is said. */
  warnAt: sourced(positive),
  strongAt: sourced(positive),
  /** Upper limits of the index in children. */
  childUpper: v.array(v.strictObject({ fromAgeA: notNegative, belowAgeA: positive, upper: positive, source })),
});

export const trend = v.strictObject({
  /** A slope is drawn through the readings of this long. */
  windowS: sourced(positive),
  /** A fall is called one only once there are this many readings in it. */
  fallingReadings: sourced(count),
  cushing: v.strictObject({
    enabled: sourced(v.boolean()),
    sbpRisePct: sourced(positive),
    hrFallPct: sourced(positive),
    hrBelowPerMin: sourced(positive),
  }),
  /** A fall of this many points, from under this total, is a sign of herniation. */
  gcsFall: v.strictObject({ points: sourced(count), fromUnder: sourced(count) }),
  /** Pupils further apart than this are unequal. */
  pupilDifferenceMm: sourced(positive),
  /** A pupil this wide or wider is dilated. */
  pupilDilatedFromMm: sourced(positive),
});

/** Floors under which the depth and length of low pressure are summed, beside the targets themselves. */
export const lowPressure = v.strictObject({
  publishedSbpFloorMmHg: sourced(number),
  /** Readings further apart than this leave the time between them unknown. */
  unknownAfterS: sourced(positive),
});

export const oxygen = v.strictObject({
  preoxygenateS: sourced(positive),
  endTidalO2Fraction: sourced(v.pipe(number, v.gtValue(0), v.maxValue(1))),
  maskLPerMin: sourced(positive),
  nasalLPerMin: sourced(positive),
  /** An attempt stops here. */
  stopSpo2Pct: sourced(number),
  dangerSpo2Pct: sourced(number),
  /** Part of a cylinder that is never counted on. */
  cylinderReserveFraction: sourced(v.pipe(number, v.minValue(0), v.ltValue(1))),
  /** A cylinder that lasts no longer than this to its reserve is warned of. */
  cylinderWarnMin: sourced(positive),
});

export const ventilation = v.strictObject({
  tidalMlPerKg: sourced(v.strictObject({ low: positive, usual: positive, high: positive })),
  startRatePerMin: sourced(range),
  deadSpaceMlPerKg: sourced(positive),
  peepCmH2O: sourced(notNegative),
  herniationRatePerMin: v.strictObject({
    adult: sourced(positive),
    child: sourced(positive),
    infant: sourced(positive),
  }),
});

export const tubes = v.strictObject({
  /** Inner diameter of a child's tube: age / 4 + this. */
  childCuffedPlusMm: sourced(positive),
  childUncuffedPlusMm: sourced(positive),
  /** Depth at the lip of a child's tube: age / 2 + this. */
  childDepthPlusCm: sourced(positive),
  infantMm: sourced(positive),
  /** The infant's tube counts from this weight on. */
  infantFromKg: sourced(positive),
  oneYearOldMm: sourced(positive),
  female: v.strictObject({ sizeMm: sourced(range), depthCm: sourced(positive) }),
  male: v.strictObject({ sizeMm: sourced(range), depthCm: sourced(positive) }),
  spareStepMm: sourced(positive),
  cuffCmH2O: v.strictObject({ adult: sourced(range), child: sourced(range) }),
});
