import type { LevelledCpp, MeanLevel } from "../../core/levelledCpp.ts";
import type { Perfusion } from "../../log/perfusion.ts";
import { showNumber } from "./number.ts";

const whole = (n: number): string => showNumber(Math.round(n), 0);

/** "13 under target 90 mmHg", "at or above target 90 mmHg". Rounded the way it is spoken, so that screen and voice agree. */
function showAgainstTarget(value: number, target: number): string {
  if (value >= target) return `at or above target ${whole(target)}`;
  const under = target - Math.round(value);
  return under > 0 ? `${whole(under)} under target ${whole(target)}` : `just under target ${whole(target)}`;
}

export const showMap = (map: NonNullable<Perfusion["map"]>): string => `MAP ${whole(map.mapMmHg)} mmHg, ${map.kind}`;

/** MAP against its target, and what the pressure of the same reading gives instead where the two do not agree. */
export function showMapAgainstTarget({ mapMmHg, targetMmHg, disagreesByMmHg }: NonNullable<Perfusion["map"]>): string {
  const against = showAgainstTarget(mapMmHg, targetMmHg);
  if (disagreesByMmHg === undefined) return against;
  return `${against}; systolic and diastolic give ${whole(mapMmHg + disagreesByMmHg)} mmHg`;
}

const LEVELS: Readonly<Record<MeanLevel, string>> = { tragus: "the tragus", heart: "the heart", cuff: "the cuff" };

/** Where the mean was levelled, if not where the ICP was: with the head up the brain has less than the number says. */
const showLevel = ({ levelsAgree, mapLevel }: LevelledCpp): string =>
  levelsAgree ? "" : `; mean at the level of ${LEVELS[mapLevel]}, less at the brain with the head up`;

/** CPP where ICP is measured; else only what can honestly be said of it. */
export function showCpp(cpp: Perfusion["cpp"]): string {
  switch (cpp.kind) {
    case "measured":
      return `CPP ${whole(cpp.cppMmHg)} mmHg, ${showAgainstTarget(cpp.cppMmHg, cpp.targetMmHg)}${showLevel(cpp)}`;
    case "bounded": {
      const bound =
        cpp.underTargetIfIcpOverMmHg < 0
          ? `CPP under ${whole(cpp.targetMmHg)}`
          : `CPP under ${whole(cpp.targetMmHg)} if ICP is over ${whole(cpp.underTargetIfIcpOverMmHg)}`;
      const { low, high } = cpp.assumedIcp;
      return `${bound}. If ICP is ${whole(low)} to ${whole(high)} (assumed), CPP is ${whole(cpp.lowMmHg)} to ${whole(cpp.highMmHg)}`;
    }
    case "none":
      return "CPP not known: no pressure recorded";
  }
}
