import { herniationSigns, type Confounder, type HerniationReview } from "../core/herniation.ts";
import { neuroChange } from "../core/neuroChange.ts";
import type { Pupil } from "../core/pupils.ts";
import { mm, score } from "../core/quantities.ts";
import { vitalQuantity } from "../core/vitalQuantity.ts";
import type { CaseState } from "../log/caseState.ts";
import type { Question } from "../log/facts.ts";
import { rescueRuns } from "../log/rescue.ts";
import { selectLatest } from "../log/selectors.ts";
import { selectTargets } from "../log/targets.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { hasCushingPattern } from "./cushingWatch.ts";
import { gcsBefore, gcsNow, pupilsNow } from "./neuroFindings.ts";

/** A sign of herniation, by what is seen of it. `said`: somebody called it. */
export type SeenSign =
  | { readonly sign: "leftPupil" | "rightPupil"; readonly how: "fixed" | "dilated" }
  | { readonly sign: "unequal" | "gcsFall" | "cushing" | "said" }
  | { readonly sign: "motor"; readonly score: 1 | 2 };

/** What else could make a sign, to be thought of before it is given that name. */
export type ThinkOf = { readonly confounder: Confounder; readonly present: boolean };

export type NewSign = { readonly signs: readonly SeenSign[]; readonly thinkOf: ThinkOf | undefined };

function gcsFell(state: CaseState, protocol: Protocol): boolean {
  const { gcsFall, pupilDifferenceMm } = protocol.trend;
  const [points, fromUnder] = [score(gcsFall.points.value), score(gcsFall.fromUnder.value)];
  const differenceMm = mm(pupilDifferenceMm.value);
  if (!points.ok || !fromUnder.ok || !differenceMm.ok) return false;
  const limits = {
    gcsFall: { points: points.value, fromUnder: fromUnder.value },
    pupilDifferenceMm: differenceMm.value,
  };
  const now = { gcs: gcsNow(state, protocol), pupils: {} };
  return (["last", "first"] as const).some(
    (which) => neuroChange({ gcs: gcsBefore(state, which), pupils: {} }, now, limits).gcsFell,
  );
}

/** Everything that was found, judged by the protocol's limits. */
function review(state: CaseState, protocol: Protocol): HerniationReview {
  const { spo2Pct, sbpMmHg } = selectTargets(state, protocol);
  const latest = <C extends "spo2" | "sbp" | "glucose">(code: C) => {
    const entry = selectLatest(state, code);
    const value = entry && vitalQuantity(code, entry.value);
    return value?.ok === true ? value.value : undefined;
  };
  return herniationSigns(
    {
      pupils: pupilsNow(state),
      motor: gcsNow(state, protocol).motor,
      gcsFell: gcsFell(state, protocol),
      cushingPattern: hasCushingPattern(state, protocol),
      spo2Pct: latest("spo2"),
      sbpMmHg: latest("sbp"),
      glucoseMmolPerL: latest("glucose"),
    },
    {
      dilatedFromMm: protocol.trend.pupilDilatedFromMm.value,
      pupilDifferenceMm: protocol.trend.pupilDifferenceMm.value,
      hypoxiaBelowPct: spo2Pct.critical.value,
      hypotensionBelowMmHg: sbpMmHg.forAge.value,
      hypoglycaemiaBelowMmolPerL: protocol.targets.glucoseMmolPerL.treatBelow.value,
    },
  );
}

function pupilSign(
  sign: "leftPupil" | "rightPupil",
  pupil: Pupil | undefined,
  dilatedFromMm: number,
): readonly SeenSign[] {
  if (pupil?.reaction === "fixed") return [{ sign, how: "fixed" }];
  const isDilated = pupil?.sizeMm !== undefined && pupil.sizeMm >= dilatedFromMm;
  return isDilated ? [{ sign, how: "dilated" }] : [];
}

/** The signs that stand now. Unequal pupils add nothing where one of them is wide or fixed. */
export function seenSigns(state: CaseState, protocol: Protocol): readonly SeenSign[] {
  const { signs } = review(state, protocol);
  const { left, right } = pupilsNow(state);
  const fromMm = protocol.trend.pupilDilatedFromMm.value;
  const wide = [...pupilSign("leftPupil", left, fromMm), ...pupilSign("rightPupil", right, fromMm)];
  const isUnequal = wide.length === 0 && signs.includes("pupils-unequal");
  return [
    ...wide,
    ...(isUnequal ? [{ sign: "unequal" } as const] : []),
    ...(signs.includes("no-motor-response") ? [{ sign: "motor", score: 1 } as const] : []),
    ...(signs.includes("extensor-posturing") ? [{ sign: "motor", score: 2 } as const] : []),
    ...(signs.includes("gcs-fall") ? [{ sign: "gcsFall" } as const] : []),
    ...(signs.includes("cushing-pattern") ? [{ sign: "cushing" } as const] : []),
    ...(state.herniation?.present === true ? [{ sign: "said" } as const] : []),
  ];
}

const OF_PUPILS: readonly Confounder[] = ["pupil-drugs", "eye-injury"];
const isOfPupils = ({ sign }: SeenSign): boolean =>
  sign === "leftPupil" || sign === "rightPupil" || sign === "unequal" || sign === "said";

/** One thing to think of: what is there, before what nobody has ruled out. Drugs in the eye explain no motor score. */
export function confounderOf(state: CaseState, protocol: Protocol, signs: readonly SeenSign[]): ThinkOf | undefined {
  const { confounders, toAsk } = review(state, protocol);
  const fits = (c: Confounder): boolean => signs.some(isOfPupils) || !OF_PUPILS.includes(c);
  const present = confounders.find(fits);
  if (present !== undefined) return { confounder: present, present: true };
  const open = toAsk.find(fits);
  return open && { confounder: open, present: false };
}

/** Whether this question asks for the rescue measures. */
export const asksRescue = ({ acts = [] }: Question): boolean =>
  acts.some((act) => act.kind === "record" && act.facts.some(({ type }) => type === "rescue.started"));

/**
 * A sign that was not there before this turn: to be asked about once. None while the measures run or are asked about.
 *
 * @param before the case before the utterance.
 * @param after  the case with its facts.
 */
export function newSign(before: CaseState, after: CaseState, protocol: Protocol): NewSign | undefined {
  if (rescueRuns(after) || after.questions.some(asksRescue)) return undefined;
  const known = seenSigns(before, protocol).map(({ sign }) => sign);
  const all = seenSigns(after, protocol);
  const fresh = all.filter(({ sign }) => !known.includes(sign));
  if (fresh.length === 0) return undefined;
  return { signs: fresh, thinkOf: confounderOf(after, protocol, fresh) };
}
