import type { VitalCode } from "../../core/vitals.ts";
import type { SaidItem, SaidNumber, SaidVital } from "../../language/intent.ts";
import type { CaseState } from "../../log/caseState.ts";
import type { SaidUnit, VitalValue } from "../../log/facts.ts";
import { selectLatest } from "../../log/selectors.ts";
import { valueOf } from "../../log/statements.ts";
import { inSlot } from "./saidVital.ts";

export const PRESSURES: readonly VitalCode[] = ["sbp", "dbp", "map"];

const lastVitals = (log: CaseState) =>
  (log.lastReading?.facts ?? []).flatMap((f) => (f.type === "vital.recorded" ? [f] : []));

/** What a correction replaces: fact ids to strike, and the values of the same pressure that stay as they were. */
export type Replaced = { readonly strikes: readonly string[]; readonly carried: readonly VitalValue[] };

/** What a corrected group of codes replaces. A corrected half takes the other half of its pressure along: half a pressure is no reading. */
export function replacedBy(log: CaseState, codes: readonly VitalCode[]): Replaced {
  const last = lastVitals(log);
  const inLast = last.filter((f) => codes.includes(f.code));
  const isPressure = codes.some((c) => PRESSURES.includes(c));
  if (inLast.length > 0) {
    const rest = isPressure ? last.filter((f) => PRESSURES.includes(f.code) && !codes.includes(f.code)) : [];
    return { strikes: [...inLast, ...rest].map((f) => f.id), carried: rest.map(valueOf) };
  }
  const older = codes.flatMap((code) => selectLatest(log, code) ?? []);
  return { strikes: older.map((e) => e.id), carried: [] };
}

/** Findings of the same kind in the last reading. */
export function replacedFindings(log: CaseState, items: readonly SaidItem[]): readonly string[] {
  const codes = items.flatMap((i) => (i.kind === "finding" ? [i.code] : []));
  return (log.lastReading?.facts ?? []).flatMap((f) =>
    f.type === "finding.recorded" && codes.includes(f.code) ? [f.id] : [],
  );
}

/** "Correction, ninety": the last reading says which vital that is, unless it held several. */
export function slotForNumber(log: CaseState, number: SaidNumber, unit: SaidUnit | undefined): SaidVital | undefined {
  const [only, ...others] = lastVitals(log);
  return only === undefined || others.length > 0 ? undefined : inSlot(only.code, number, unit ?? only.said.unit);
}
