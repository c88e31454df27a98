import { VITALS } from "../core/vitals.ts";
import type { HowOldAbout } from "../language/talkIntent.ts";
import { sayHowOld } from "../language/sentences/howOld.ts";
import { sayRecorded } from "../language/sentences/recordedValue.ts";
import { saySafely } from "../language/sentences/safeNumber.ts";
import { sentences } from "../language/sentences/sentence.ts";
import { sayMeanName } from "../language/sentences/status.ts";
import { sayPressure } from "../language/sentences/vital.ts";
import type { CaseState } from "../log/caseState.ts";
import { selectPerfusion } from "../log/perfusion.ts";
import { selectLatest } from "../log/selectors.ts";
import type { Protocol } from "../protocol/protocol.ts";
import type { NumberCode, Topic, WhyState } from "./topic.ts";

type Aged = { readonly words: string; readonly atMs: number };

const mmHg = (value: number): string => saySafely("map", value, "mmHg", 0);

function pressureOf(log: CaseState, protocol: Protocol, nowMs: number): Aged | undefined {
  const { pressure } = selectPerfusion(log, protocol, nowMs);
  return pressure && { words: sayPressure(pressure.sbp, pressure.dbp), atMs: pressure.atMs };
}

/** A value as it is read back, with the time of its oldest part. */
function agedOf(log: CaseState, protocol: Protocol, code: NumberCode, nowMs: number): Aged | undefined {
  const { map, icp, cpp } = selectPerfusion(log, protocol, nowMs);
  if (code === "map") return map && { words: `${sayMeanName(map.kind)} ${mmHg(map.mapMmHg)}`, atMs: map.atMs };
  if (code === "cpp") {
    if (cpp.kind !== "measured" || map === undefined || icp === undefined) return undefined;
    return { words: `CPP ${mmHg(cpp.cppMmHg)}`, atMs: Math.min(map.atMs, icp.atMs) };
  }
  const latest = selectLatest(log, code);
  return latest && { words: sayRecorded(latest, protocol.region), atMs: latest.atMs };
}

const NAMES = { pressure: "pressure", map: "MAP", cpp: "measured CPP" } as const;
const nameOf = (about: NumberCode | "pressure"): string =>
  about === "pressure" || about === "map" || about === "cpp" ? NAMES[about] : VITALS[about].spokenName;

/** A CPP that is only a bound is as old as its mean, and that is what was said of it. */
const saidOf = (log: CaseState, protocol: Protocol, code: NumberCode, nowMs: number): NumberCode =>
  code === "cpp" && selectPerfusion(log, protocol, nowMs).cpp.kind !== "measured" ? "map" : code;

/** The age of a number, with the number; the topic is what "why" then means. */
export function tellHowOld(
  protocol: Protocol,
  log: CaseState,
  about: HowOldAbout,
  { lastNumber }: WhyState,
  nowMs: number,
): { readonly text: string; readonly topic?: Topic } {
  if (about === "last" && lastNumber === undefined) return { text: "No number said yet." };
  if (about === "last" && lastNumber?.kind === "dose") return { text: "That was a dose, worked out as it was said." };
  const last = lastNumber?.kind === "value" ? saidOf(log, protocol, lastNumber.code, nowMs) : undefined;
  const asked = about === "last" ? last : about;
  if (asked === undefined) return { text: "No number said yet." };
  const aged = asked === "pressure" ? pressureOf(log, protocol, nowMs) : agedOf(log, protocol, asked, nowMs);
  if (aged === undefined) return { text: sentences(`No ${nameOf(asked)} recorded`) };
  const topic: Topic = { kind: "value", code: asked === "pressure" ? "map" : asked };
  return { text: sayHowOld(aged.words, nowMs - aged.atMs), topic };
}
