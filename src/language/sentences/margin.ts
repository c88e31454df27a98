import type { Cpp, Perfusion } from "../../log/perfusion.ts";
import { sayNumber } from "./number.ts";
import { saySafely } from "./safeNumber.ts";
import { sentences } from "./sentence.ts";
import { sayAgainstTarget, sayMeanName, sayOld } from "./status.ts";

const whole = (n: number): string => sayNumber(Math.round(n), 0);
const safely = (mmHg: number): string => saySafely("map", mmHg, "mmHg", 0);

/** A number that something follows: "six", "thirteen, one three,". */
const before = (number: string): string => (number.includes(",") ? `${number},` : number);

/** "six over ninety", "thirteen, one three, under ninety". The difference is taken from the value as it is spoken. */
function sayDistance(value: number, target: number): string {
  const over = Math.round(value) - target;
  if (over === 0 || over > 0 !== value >= target) return sayAgainstTarget(value, target);
  return `${before(safely(Math.abs(over)))} ${over > 0 ? "over" : "under"} ${whole(target)}`;
}

function sayCppDistance(cpp: Cpp): string | undefined {
  switch (cpp.kind) {
    case "measured":
      return `CPP ${safely(cpp.cppMmHg)}, ${sayDistance(cpp.cppMmHg, cpp.targetMmHg)}`;
    case "bounded":
      return cpp.underTargetIfIcpOverMmHg < 0
        ? `CPP under ${whole(cpp.targetMmHg)} at any ICP`
        : `CPP under ${whole(cpp.targetMmHg)} if ICP is over ${safely(cpp.underTargetIfIcpOverMmHg)}`;
    case "none":
      return undefined;
  }
}

/** A saturation with its target, in per cent. */
export type Saturation = { readonly spo2Pct: number; readonly targetPct: number };

/** Sats against their target, where they are under it. */
export const saySatsUnder = ({ spo2Pct, targetPct }: Saturation): string | undefined =>
  spo2Pct >= targetPct
    ? undefined
    : `sats ${saySafely("spo2", spo2Pct, "%", 0)}, ${sayAgainstTarget(spo2Pct, targetPct)}`;

/**
 * How far the mean and CPP are from their targets, either way: "MAP ninety six, six over ninety. CPP under sixty if ICP is
 * over thirty six." Sats only where they are under theirs.
 */
export function sayMargin({ map, cpp, oldestInputAgeMs }: Perfusion, sats: Saturation | undefined): string {
  const under = sats && saySatsUnder(sats);
  if (map === undefined) return sentences("MAP not known", under);
  return sentences(
    `${sayMeanName(map.kind)} ${safely(map.mapMmHg)}, ${sayDistance(map.mapMmHg, map.targetMmHg)}`,
    sayCppDistance(cpp),
    oldestInputAgeMs === undefined ? undefined : sayOld(oldestInputAgeMs),
    under,
  );
}
