import type { Handover, Low } from "../../log/handover.ts";
import { comma, line, type Line } from "./handoverLine.ts";
import type { Pen } from "./handoverPen.ts";

/** "For nine minutes": a word stands between the numbers, or "seventy six, six minutes" would run together. */
function forHowLong({ underMin, isLeast }: Low, pen: Pen): string {
  if (underMin === 0) return ", how long unknown";
  const whole = Math.round(underMin);
  return ` for ${isLeast ? "at least " : ""}${whole === 0 ? "less than a minute" : pen.minutes(whole)}`;
}

/** "Under ninety for nine minutes", "no reading under ninety". */
const under = (low: Low, target: string, pen: Pen): string =>
  low.anyUnder ? `under ${target}${forHowLong(low, pen)}` : `no reading under ${target}`;

/** The same where time is short: the number of the target is left out, and its name after the first. */
function underBriefly(low: Low, isFirst: boolean, pen: Pen): string {
  if (isFirst) return under(low, "target", pen);
  return low.anyUnder ? `under${forHowLong(low, pen)}` : "never under";
}

/** In fewest words: minutes once, and that they are a least is said once, where the first says it. */
function underBriefest(low: Low, isSaid: boolean, pen: Pen): string {
  if (low.anyUnder && low.underMin === 0) return "time unknown";
  return underBriefly({ ...low, isLeast: low.isLeast && !isSaid }, false, { ...pen, minutes: pen.minutesOnce });
}

/** The lowest pressures, each a line of its own; that they are the lowest is said of the first alone where all of it is short. */
export function sayLows({ lows }: Handover, rank: number, pen: Pen, isBrief: boolean): readonly Line[] {
  if (lows.length === 0) return line("lows", rank, "No pressure recorded");
  return lows.flatMap((low, i) => {
    const value = pen.low(low);
    const briefly = underBriefly(low, i === 0, pen);
    const whole = comma(`lowest ${value}`, under(low, pen.count(low.targetMmHg), pen));
    const briefest = isBrief && i > 0 ? comma(value, underBriefest(low, lows[0]?.isLeast === true, pen)) : undefined;
    return line(`low ${low.code}`, rank, whole, comma(`lowest ${value}`, briefly), briefest);
  });
}
