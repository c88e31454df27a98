import { gcsTotal, type GcsParts, type NoTotal } from "./gcs.ts";
import type { Ml, Score, Years } from "./quantity.ts";
import { ok, type Result } from "./result.ts";

export type Haemorrhage = {
  readonly gcs: GcsParts;
  readonly volumeMl: Ml;
  /** Blood in the ventricles. */
  readonly intraventricular: boolean;
  /** Where it began. */
  readonly infratentorial: boolean;
  readonly ageA: Years;
};

/** The score with what each part gave to it. */
export type IchScore = {
  readonly total: Score;
  readonly points: {
    readonly gcs: 0 | 1 | 2;
    readonly volume: 0 | 1;
    readonly intraventricular: 0 | 1;
    readonly infratentorial: 0 | 1;
    readonly age: 0 | 1;
  };
};

const LOW_GCS_TO = 4;
const MIDDLE_GCS_TO = 12;
const LARGE_FROM_ML = 30;
const OLD_FROM_A = 80;

/**
 * Score of an intracerebral haemorrhage, for handover.
 *
 * @param haemorrhage volume in mL, age in years.
 * @returns           0 to 6 with its parts; or `no-total` where the coma scale has none.
 *
 * Not for: a forecast, or limiting care early. The mortality published beside the score is left out on purpose: spoken at the
 * bedside it would fulfil itself.
 * Source: Hemphill et al., Stroke 2001, read in a reference article: GCS 3–4 two points, 5–12 one, 13–15 none; one each for
 * 30 mL or more, blood in the ventricles, an origin under the tentorium, 80 years or more.
 */
export function ichScore(haemorrhage: Haemorrhage): Result<IchScore, NoTotal> {
  const gcs = gcsTotal(haemorrhage.gcs);
  if (!gcs.ok) return gcs;
  const points = {
    gcs: gcsPoints(gcs.value),
    volume: one(haemorrhage.volumeMl >= LARGE_FROM_ML),
    intraventricular: one(haemorrhage.intraventricular),
    infratentorial: one(haemorrhage.infratentorial),
    age: one(haemorrhage.ageA >= OLD_FROM_A),
  };
  const total = points.gcs + points.volume + points.intraventricular + points.infratentorial + points.age;
  return ok({ total: total as Score, points });
}

function gcsPoints(total: Score): 0 | 1 | 2 {
  if (total <= LOW_GCS_TO) return 2;
  return total <= MIDDLE_GCS_TO ? 1 : 0;
}

const one = (holds: boolean): 0 | 1 => (holds ? 1 : 0);
