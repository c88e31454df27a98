import type { VitalCode } from "../../core/vitals.ts";
import type { SaidItem, SaidNumber, SaidVital } from "../../language/intent.ts";
import type { CaseState, VitalEntry } from "../../log/caseState.ts";
import type { Question, SaidUnit, VitalValue } from "../../log/facts.ts";
import { selectLatest } from "../../log/selectors.ts";
import { valueOf } from "../../log/statements.ts";
import { withNumber } from "./saidVital.ts";
import { inheritedUnit } from "./units.ts";

export const PRESSURES: readonly VitalCode[] = ["sbp", "dbp", "map"];

const lastVitals = (log: CaseState) =>
  (log.lastReading?.facts ?? []).flatMap((f) => (f.type === "vital.recorded" ? [f] : []));

const lastFindings = (log: CaseState, codes: readonly string[]): readonly string[] =>
  (log.lastReading?.facts ?? []).flatMap((f) =>
    f.type === "finding.recorded" && codes.includes(f.code) ? [f.id] : [],
  );

/** What a correction replaces: fact ids to strike, and the values of the same pressure that stay as they were. */
export type Replaced = { readonly strikes: readonly string[]; readonly carried: readonly VitalValue[] };

/** What a corrected group of codes replaces. A corrected half takes the other half of its pressure along: half a pressure is no reading. */
export function replacedBy(log: CaseState, codes: readonly VitalCode[]): Replaced {
  const last = lastVitals(log);
  const inLast = last.filter((f) => codes.includes(f.code));
  const found = lastFindings(log, codes);
  const isPressure = codes.some((c) => PRESSURES.includes(c));
  if (inLast.length > 0 || found.length > 0) {
    const rest = isPressure ? last.filter((f) => PRESSURES.includes(f.code) && !codes.includes(f.code)) : [];
    return { strikes: [...inLast, ...rest].map((f) => f.id).concat(found), carried: rest.map(valueOf) };
  }
  const older = codes.flatMap((code) => selectLatest(log, code) ?? []);
  const rest = isPressure ? sameReading(log, older).filter((e) => !codes.includes(e.code)) : [];
  return { strikes: [...older, ...rest].map((e) => e.id), carried: rest.map(valueOf) };
}

const sameReading = (log: CaseState, of: readonly VitalEntry[]): readonly VitalEntry[] =>
  PRESSURES.flatMap((code) => selectLatest(log, code) ?? []).filter((e) => of.some((o) => o.readingId === e.readingId));

/**
 * What a restatement that answers questions replaces: only what those questions were to replace. A correction said while
 * its own question waits corrects what was asked, never an older value of the same vital.
 */
export function replacedThrough(log: CaseState, questions: readonly Question[], codes: readonly VitalCode[]): Replaced {
  const strikes = questions.flatMap((q) => q.strikes);
  const rest = lastVitals(log).filter((f) => strikes.includes(f.id) && !codes.includes(f.code));
  return { strikes, carried: rest.map(valueOf) };
}

/** What the last reading said of the same finding, as a finding or as a number, and of the sex. */
export function replacedFindings(log: CaseState, items: readonly SaidItem[]): readonly string[] {
  const codes: readonly string[] = items.flatMap((i) => (i.kind === "finding" ? [i.code] : []));
  const numbers = lastVitals(log).flatMap((f) => (codes.includes(f.code) ? [f.id] : []));
  const sex = items.some((i) => i.kind === "sex")
    ? (log.lastReading?.facts ?? []).flatMap((f) => (f.type === "sex.recorded" ? [f.id] : []))
    : [];
  return [...lastFindings(log, codes), ...numbers, ...sex];
}

/** "Correction, ninety": the last reading says which vital that is, unless it held several. */
export function slotForNumber(log: CaseState, number: SaidNumber, unit: SaidUnit | undefined): SaidVital | undefined {
  const [only, ...others] = lastVitals(log);
  if (only === undefined || others.length > 0) return undefined;
  return withNumber(valueOf(only), number, unit ?? inheritedUnit(only));
}
