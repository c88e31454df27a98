import { VITALS } from "../../core/vitals.ts";
import type { Candidate, QuestionReason, Statement, VitalValue } from "../../log/facts.ts";
import { sayDigits, sayNumber, sayTwoWays } from "./number.ts";
import { sayPressure, saySaid, sayVital } from "./vital.ts";

const sayAsSaid = (v: VitalValue): string => sayNumber(v.said.value, 2);

/** What the user says to choose this value: its digits, one by one. */
export const sayChoice = (v: VitalValue): string => sayDigits(v.said.value);

/** "ICP fifteen, one five": the number twice, in two forms, so that one misheard form is caught by the other. */
const sayNamedTwice = (v: VitalValue): string => `${VITALS[v.code].spokenName} ${sayTwoWays(v.said.value)}`;

/** The values of a statement as one would say them, e.g. "one ten over sixty, heart rate ninety". */
export function sayStatement(statement: Statement): string {
  const of = (code: VitalValue["code"]) => statement.vitals.find((v) => v.code === code);
  const sbp = of("sbp");
  const dbp = of("dbp");
  const parts: string[] = [];
  if (sbp !== undefined && dbp !== undefined) parts.push(sayPressure(sbp.value, dbp.value));
  for (const v of statement.vitals) {
    if (parts.length > 0 && (v === sbp || v === dbp)) continue;
    const converted = v.said.value !== v.value;
    parts.push(
      converted ? `${VITALS[v.code].spokenName} ${saySaid(v.said.value, v.said.unit)}` : sayVital(v.code, v.value),
    );
  }
  for (const f of statement.findings) parts.push(`${VITALS[f.code].spokenName} ${f.finding.replace("-", " ")}`);
  if (statement.sex !== undefined) parts.push(`sex ${statement.sex}`);
  return parts.join(", ");
}

function sayWhatIsWrong(about: VitalValue, others: readonly VitalValue[]): string {
  const { limits, spokenName } = VITALS[about.code];
  if (about.value < limits.min || about.value > limits.max) {
    const range = `${sayNumber(limits.min, 1)} to ${sayNumber(limits.max, 1)}`;
    return `${spokenName} ${sayAsSaid(about)} is outside ${range}. Say it again.`;
  }
  const order = others.map((v) => `${VITALS[v.code].spokenName} ${sayAsSaid(v)}`).join(", ");
  return `${order} cannot be. Say it again.`;
}

/**
 * The words of a question. With one candidate it can be answered by "affirm" or "negative"; with two or more of them
 * by naming one, or, where only the sound was in doubt, "affirm" for the first.
 *
 * @param together the values said in the same breath, to name what contradicts what.
 */
export function sayQuestion(
  reason: QuestionReason,
  about: VitalValue,
  candidates: readonly Candidate[],
  together: readonly VitalValue[],
  last: number | undefined,
): string {
  const [first, second] = candidates;
  if (first === undefined) return sayWhatIsWrong(about, together);
  switch (reason) {
    case "unit":
      return second === undefined
        ? `${VITALS[about.code].spokenName} ${sayAsSaid(about)} ${first.choose}?`
        : `${VITALS[about.code].spokenName} ${sayAsSaid(about)}: ${candidates.map((c) => c.choose).join(", or ")}?`;
    case "jump":
      return `${sayNamedTwice(about)}? Last was ${last === undefined ? "not recorded" : sayNumber(last, VITALS[about.code].decimals)}.`;
    case "sound-alike":
    case "implausible":
    case "always-confirm":
      return `${sayNamedTwice(about)}?`;
    case "acoustic":
    case "ambiguous":
      return `${candidates.map((c) => sayStatement(c.statement)).join(", or ")}?`;
  }
}
