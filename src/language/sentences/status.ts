import type { Perfusion } from "../../log/perfusion.ts";
import { sayNumber } from "./number.ts";
import { sentences } from "./sentence.ts";
import { sayAge, sayPair } from "./vital.ts";

const whole = (n: number): string => sayNumber(Math.round(n), 0);

/**
 * "thirteen under ninety", "on target". The difference is taken from the value as it is spoken, so that the listener's own
 * subtraction agrees; a shortfall under half a unit is not rounded away but called "just under".
 */
export function sayAgainstTarget(value: number, target: number): string {
  if (value >= target) return "on target";
  const under = target - Math.round(value);
  return under > 0 ? `${whole(under)} under ${whole(target)}` : `just under ${whole(target)}`;
}

/**
 * CPP where ICP is measured; else what it would be at the lowest ICP that the protocol assumes: the best it can be.
 * The condition comes first, so that a sentence cut short never leaves a bare CPP.
 */
export function sayCpp(cpp: Perfusion["cpp"]): string | undefined {
  switch (cpp.kind) {
    case "measured":
      return `CPP ${whole(cpp.cppMmHg)}, ${sayAgainstTarget(cpp.cppMmHg, cpp.targetMmHg)}`;
    case "bounded":
      return `if ICP ${whole(cpp.assumedIcp.low)}, CPP ${whole(cpp.highMmHg)}`;
    case "none":
      return undefined;
  }
}

/** What the mean is called aloud: one that was said is told apart from one that was worked out. */
export const sayMeanName = (kind: "measured" | "computed"): string => (kind === "measured" ? "measured MAP" : "MAP");

/**
 * MAP with its standing against the target, e.g. "MAP seventy seven, thirteen under ninety".
 *
 * @param number how the number is said: plainly, unless given.
 */
export const sayMap = (
  { kind, mapMmHg, targetMmHg }: NonNullable<Perfusion["map"]>,
  number: string = whole(mapMmHg),
): string => `${sayMeanName(kind)} ${number}, ${sayAgainstTarget(mapMmHg, targetMmHg)}`;

/** How old a number is, aloud: "two minutes old". Nothing for one that was just said. */
export function sayOld(ageMs: number): string | undefined {
  const age = sayAge(ageMs);
  return age === "now" ? undefined : `${age} old`;
}

/** A measured CPP without its target, which the status sentence has no time for; else as ever. */
function sayCppBriefly(cpp: Perfusion["cpp"]): string | undefined {
  if (cpp.kind !== "measured") return sayCpp(cpp);
  const number = `CPP ${whole(cpp.cppMmHg)}`;
  if (cpp.cppMmHg >= cpp.targetMmHg) return number;
  const under = cpp.targetMmHg - Math.round(cpp.cppMmHg);
  return `${number}, ${under > 0 ? whole(under) : "just"} under`;
}

/** The status sentence: pressure, MAP, target, deficit, CPP or its bound, age of the oldest input. In as few words as can be. */
export function sayStatus(p: Perfusion): string {
  if (p.map === undefined && p.pressure === undefined) return "No pressure recorded yet.";
  const { pressure, map, oldestInputAgeMs } = p;
  const age = oldestInputAgeMs === undefined ? "now" : sayAge(oldestInputAgeMs);
  return sentences(
    pressure && sayPair(pressure.sbp, pressure.dbp),
    map === undefined ? "MAP not known" : sayMap(map),
    sayCppBriefly(p.cpp),
    age === "now" ? undefined : age,
  );
}
