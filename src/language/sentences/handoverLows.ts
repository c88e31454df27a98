import type { Handover, Low } from "../../log/handover.ts";
import { comma, line, type Line } from "./handoverLine.ts";
import type { Pen } from "./handoverPen.ts";

/** "Nine minutes under ninety", "no reading under ninety". */
function under({ underMin, anyUnder, isLeast }: Low, target: string, pen: Pen): string {
  if (!anyUnder) return `no reading under ${target}`;
  if (underMin === 0) return `under ${target}, how long unknown`;
  const whole = Math.round(underMin);
  const long = whole === 0 ? "less than a minute" : pen.minutes(whole);
  return `${isLeast ? "at least " : ""}${long} under ${target}`;
}

/** The same where time is short: the number of the target is left out, and its name after the first. */
function underBriefly(low: Low, isFirst: boolean, pen: Pen): string {
  if (isFirst) return under(low, "target", pen);
  if (!low.anyUnder) return "never under";
  return low.underMin === 0 ? "unknown time under" : under(low, "", pen).replace(/ under $/u, "");
}

/** The lowest pressures, each a line of its own; that they are the lowest is said of the first alone where all of it is short. */
export function sayLows({ lows }: Handover, rank: number, pen: Pen, isBrief: boolean): readonly Line[] {
  if (lows.length === 0) return line("lows", rank, "No pressure recorded");
  return lows.flatMap((low, i) => {
    const value = pen.low(low);
    const briefly = underBriefly(low, i === 0, pen);
    const whole = comma(`lowest ${value}`, under(low, pen.count(low.targetMmHg), pen));
    const briefest = isBrief && i > 0 ? comma(value, briefly) : undefined;
    return line(`low ${low.code}`, rank, whole, comma(`lowest ${value}`, briefly), briefest);
  });
}
