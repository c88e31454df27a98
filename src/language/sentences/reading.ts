import type { VitalCode } from "../../core/vitals.ts";
import type { Statement, VitalValue } from "../../log/facts.ts";
import type { Perfusion } from "../../log/perfusion.ts";
import { sayStatement } from "./statement.ts";
import { sayCpp, sayMap } from "./status.ts";
import { saySaid, sayVital } from "./vital.ts";

/** A value whose spoken unit is not the stored one is read back as it was said, then as it was stored. */
function sayBoth(v: VitalValue): string {
  const stored = sayVital(v.code, v.value);
  return v.said.value === v.value ? stored : `${stored}, from ${saySaid(v.said.value, v.said.unit)}`;
}

/**
 * What was recorded, said back in the order of the statement.
 *
 * @param meanFollows the mean is said with its consequence, so it is not said here.
 */
export function sayReading(statement: Statement, meanFollows = false): string {
  const vitals = statement.vitals.filter((v) => v.code !== "map" || !meanFollows);
  return sayStatement({ ...statement, vitals }, sayBoth);
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
  if (pressure && perfusion.map !== undefined) parts.push(sayMap(perfusion.map));
  if (perfusion.cpp.kind === "measured") parts.push(sayCpp(perfusion.cpp) ?? "");
  return parts.length === 0 ? undefined : parts.join(". ");
}
