import { VITALS } from "../../core/vitals.ts";
import type { Statement, VitalValue } from "../../log/facts.ts";
import { sayPressure } from "./vital.ts";

/** Why ICP is raised, as it is said and printed. */
export const CAUSES: Readonly<Record<NonNullable<Statement["cause"]>, string>> = {
  injury: "head injury",
  bleed: "bleed",
  unknown: "unknown",
};

/** Herniation, as it is said and printed. */
export const herniationWords = (present: boolean): string => (present ? "herniation suspected" : "no herniation");

/**
 * The values and findings of a statement in the order in which they were said; a pressure as one, a pupil with its reaction.
 *
 * @param sayValue how one value is said.
 */
export function sayStatement(
  { vitals, findings, sex, cause, herniation }: Statement,
  sayValue: (v: VitalValue) => string,
): string {
  const of = (code: VitalValue["code"]) => vitals.find((v) => v.code === code);
  const sbp = of("sbp");
  const dbp = of("dbp");
  const parts: string[] = [];
  for (const v of vitals) {
    if (v === dbp && sbp !== undefined) continue;
    if (v === sbp) parts.push(sayPressure(sbp.value, dbp?.value));
    else parts.push(v.reaction === undefined ? sayValue(v) : `${sayValue(v)} ${v.reaction}`);
  }
  for (const f of findings) parts.push(`${VITALS[f.code].spokenName} ${f.finding.replace("-", " ")}`);
  if (sex !== undefined) parts.push(`sex ${sex}`);
  if (cause !== undefined) parts.push(`cause ${CAUSES[cause]}`);
  if (herniation !== undefined) parts.push(herniationWords(herniation));
  return parts.join(", ");
}
