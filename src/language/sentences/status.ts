import type { Perfusion } from "../../log/perfusion.ts";
import { sayNumber } from "./number.ts";
import { sentences } from "./sentence.ts";
import { sayAge, sayPressure } from "./vital.ts";

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
 * CPP where ICP is measured; else the honest bound: which ICP would put it under target. Never a CPP number without an ICP.
 */
export function sayCpp(cpp: Perfusion["cpp"]): string | undefined {
  switch (cpp.kind) {
    case "measured":
      return `CPP ${whole(cpp.cppMmHg)}, ${sayAgainstTarget(cpp.cppMmHg, cpp.targetMmHg)}`;
    case "bounded":
      return cpp.underTargetIfIcpOverMmHg < 0
        ? `CPP under ${whole(cpp.targetMmHg)}`
        : `CPP under ${whole(cpp.targetMmHg)} if ICP over ${whole(cpp.underTargetIfIcpOverMmHg)}`;
    case "none":
      return undefined;
  }
}

/** MAP with its standing against the target, e.g. "MAP seventy seven, thirteen under ninety". */
export function sayMap(map: NonNullable<Perfusion["map"]>): string {
  return `MAP ${whole(map.mapMmHg)}, ${sayAgainstTarget(map.mapMmHg, map.targetMmHg)}`;
}

/** How old a number is, aloud: "two minutes old". Nothing for one that was just said. */
export function sayOld(ageMs: number): string | undefined {
  const age = sayAge(ageMs);
  return age === "now" ? undefined : `${age} old`;
}

/** The status sentence: pressure, MAP, target, deficit, CPP or its bounds, age of the oldest input. Kept under four seconds of speech. */
export function sayStatus(p: Perfusion): string {
  if (p.map === undefined && p.pressure === undefined) return "No pressure recorded yet.";
  const { pressure, map } = p;
  const age = p.oldestInputAgeMs === undefined ? undefined : sayOld(p.oldestInputAgeMs);
  return sentences(
    pressure && sayPressure(pressure.sbp, pressure.dbp),
    map === undefined ? "MAP not known" : sayMap(map),
    sayCpp(p.cpp),
    age,
  );
}
