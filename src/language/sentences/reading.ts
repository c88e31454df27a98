import type { VitalCode } from "../../core/vitals.ts";
import type { Statement } from "../../log/facts.ts";
import type { Perfusion } from "../../log/perfusion.ts";
import { sayNumber } from "./number.ts";
import { sayRecorded, type UsualUnits } from "./recordedValue.ts";
import { saySafely } from "./safeNumber.ts";
import { sayStatement } from "./statement.ts";
import { sayCpp, sayMap } from "./status.ts";

/**
 * What was recorded, said back in the order of the statement.
 *
 * @param meanFollows the mean is said with its consequence, so it is not said here.
 */
export function sayReading(statement: Statement, usual: UsualUnits, meanFollows = false): string {
  const vitals = statement.vitals.filter((v) => v.code !== "map" || !meanFollows);
  return sayStatement({ ...statement, vitals }, (v) => sayRecorded(v, usual));
}

/**
 * What a reading means for perfusion: MAP against target after a pressure, CPP after an ICP or with one.
 * Nothing where an alert is about to say it.
 */
export function sayConsequence(statement: Statement, perfusion: Perfusion): string | undefined {
  const has = (code: VitalCode) => statement.vitals.some((v) => v.code === code);
  const pressure = has("sbp") || has("dbp") || has("map");
  if (!pressure && !has("icp")) return undefined;
  const parts: string[] = [];
  const { map } = perfusion;
  if (pressure && map !== undefined) parts.push(sayMap(map, saySafely("map", map.mapMmHg, "mmHg", 0)));
  if (perfusion.cpp.kind === "measured") parts.push(sayCpp(perfusion.cpp) ?? "");
  return parts.length === 0 ? undefined : parts.join(". ");
}

/**
 * That a mean which was just said and the pressure said with it do not agree: "systolic and diastolic give ninety four".
 * Nothing where they do, or where the reading held no mean.
 */
export function sayDisagreement(statement: Statement, { map }: Perfusion): string | undefined {
  if (map?.disagreesByMmHg === undefined || !statement.vitals.some((v) => v.code === "map")) return undefined;
  return `systolic and diastolic give ${sayNumber(Math.round(map.mapMmHg + map.disagreesByMmHg), 0)}`;
}
