import type { AlertRule, WatchedCode } from "./protocol.ts";
import type { Targets } from "./resolveTargets.ts";

/** On which side of its limits a value is to be warned of. */
export type Side = AlertRule["side"];
/** What the words "target" and "critical" of an alert stand for in one patient. */
export type Limits = { readonly target: number | undefined; readonly critical: number | undefined };

const NONE: Limits = { target: undefined, critical: undefined };

/** Limits that values are not to fall under. */
function lowLimits(targets: Targets, code: WatchedCode): Limits {
  const of = ({ target, critical }: Targets["mapMmHg"]): Limits => ({ target: target.value, critical: critical.value });
  switch (code) {
    case "sbp":
      return of(targets.sbpMmHg);
    case "map":
      return of(targets.mapMmHg);
    case "cpp":
    case "cppBound":
      return of(targets.cppMmHg);
    case "spo2":
      return of(targets.spo2Pct);
    case "etco2":
      return { ...NONE, target: targets.etco2MmHg.low };
    case "hr":
      return { target: targets.hrPerMin.target.low, critical: targets.hrPerMin.critical.low };
    case "temp":
      return { ...NONE, target: targets.tempCel.hold.low };
    case "glucose":
      return { target: targets.glucoseMmolPerL.hold.low, critical: targets.glucoseMmolPerL.treatBelow.value };
    case "icp":
      return NONE;
  }
}

/** Limits that values are not to rise over. A ceiling that is suspended is none: it would oppose a floor. */
function highLimits(targets: Targets, code: WatchedCode): Limits {
  switch (code) {
    case "sbp":
      return { ...NONE, target: targets.sbpMmHg.ceiling?.value };
    case "etco2":
      return { ...NONE, target: targets.etco2MmHg.high };
    case "hr":
      return { target: targets.hrPerMin.target.high, critical: targets.hrPerMin.critical.high };
    case "temp":
      return { target: targets.tempCel.hold.high, critical: targets.tempCel.treatFrom.value };
    case "glucose":
      return { ...NONE, target: targets.glucoseMmolPerL.hold.high };
    case "icp":
      return { ...NONE, target: targets.icpTreatAboveMmHg.value };
    case "map":
    case "cpp":
    case "cppBound":
    case "spo2":
      return NONE;
  }
}

/** The limits of what an alert watches, on its side; none where this patient has no such limit now. */
export const limitsOf = (targets: Targets, code: WatchedCode, side: Side): Limits =>
  side === "under" ? lowLimits(targets, code) : highLimits(targets, code);

/** How far a value lies beyond a limit; negative on the good side. */
export const beyond = (value: number, limit: number, side: Side): number =>
  side === "under" ? limit - value : value - limit;
