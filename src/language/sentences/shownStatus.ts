import type { Perfusion } from "../../log/perfusion.ts";
import { showNumber } from "./number.ts";

const whole = (n: number): string => showNumber(Math.round(n), 0);

/** "13 under target 90 mmHg", "at or above target 90 mmHg". Rounded the way it is spoken, so that screen and voice agree. */
export function showAgainstTarget(value: number, target: number): string {
  if (value >= target) return `at or above target ${whole(target)}`;
  const under = target - Math.round(value);
  return under > 0 ? `${whole(under)} under target ${whole(target)}` : `just under target ${whole(target)}`;
}

export const showMap = (map: NonNullable<Perfusion["map"]>): string => `MAP ${whole(map.mapMmHg)} mmHg, ${map.kind}`;

/** CPP where ICP is measured; else only what can honestly be said of it. */
export function showCpp(cpp: Perfusion["cpp"]): string {
  switch (cpp.kind) {
    case "measured":
      return `CPP ${whole(cpp.cppMmHg)} mmHg, ${showAgainstTarget(cpp.cppMmHg, cpp.targetMmHg)}`;
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
