import type { VitalCode } from "../../core/vitals.ts";
import type { SaidItem, SaidVital } from "../../language/intent.ts";
import type { SaidNumber } from "../../language/saidNumber.ts";
import type { CaseState, VitalEntry } from "../../log/caseState.ts";
import type { Fact, Question, SaidUnit, VitalValue } from "../../log/facts.ts";
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

/** Facts of the patient that are not about a vital, by what they are about. */
const BACKGROUND: Readonly<Partial<Record<Fact["type"], SaidItem["kind"]>>> = {
  "sex.recorded": "sex",
  "cause.recorded": "cause",
  "herniation.recorded": "herniation",
};

/** What a fact of a reading is about, in the terms of what is said. */
export const slotOfFact = (fact: Fact): string | undefined =>
  fact.type === "vital.recorded" || fact.type === "finding.recorded" ? fact.code : BACKGROUND[fact.type];

/** What a question would settle: vitals and findings by their code, and what it holds of the patient besides. */
export const slotsOfQuestion = ({ about, candidates }: Question): readonly string[] => [
  ...about,
  ...candidates.flatMap(({ statement: { sex, cause, herniation } }) => [
    ...(sex === undefined ? [] : ["sex"]),
    ...(cause === undefined ? [] : ["cause"]),
    ...(herniation === undefined ? [] : ["herniation"]),
  ]),
];

/** What the last reading said of the same finding, as a finding or as a number; and the sex, cause and herniation that count. */
export function replacedFindings(log: CaseState, items: readonly SaidItem[]): readonly string[] {
  const codes: readonly string[] = items.flatMap((i) => (i.kind === "finding" ? [i.code] : []));
  const numbers = lastVitals(log).flatMap((f) => (codes.includes(f.code) ? [f.id] : []));
  const kinds = (["sex", "cause", "herniation"] as const).filter((kind) => items.some((i) => i.kind === kind));
  const background = kinds.flatMap((kind) => log[kind]?.id ?? []);
  return [...lastFindings(log, codes), ...numbers, ...background];
}

/** "Correction, ninety": the last reading says which vital that is, unless it held several. */
export function slotForNumber(log: CaseState, number: SaidNumber, unit: SaidUnit | undefined): SaidVital | undefined {
  const [only, ...others] = lastVitals(log);
  if (only === undefined || others.length > 0) return undefined;
  return withNumber(valueOf(only), number, unit ?? inheritedUnit(only));
}
