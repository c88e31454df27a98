import { VITALS } from "../../core/vitals.ts";
import type { Candidate, QuestionReason, Statement, VitalValue } from "../../log/facts.ts";
import { sayDigits, sayNumber, sayTwoWays } from "./number.ts";
import { sayStatement } from "./statement.ts";
import { saySaid, sayVital } from "./vital.ts";

const sayAsSaid = (v: VitalValue): string => sayNumber(v.said.value, 2);

/** What the user says to choose this value: its digits, one by one. */
export const sayChoice = (v: VitalValue): string => sayDigits(v.said.value);

/**
 * "ICP fifteen, one five": the number twice, in two forms, so that one misheard form is caught by the other. Months and a
 * guess are named, since both change what is done.
 */
function sayNamedTwice({ code, said, method }: VitalValue): string {
  const guessed = method === "estimated" ? "estimated " : "";
  const months = said.unit === "mo" ? ", months" : "";
  return `${guessed}${VITALS[code].spokenName} ${sayTwoWays(said.value)}${months}`;
}

/** What was heard, each value as it was said, e.g. "pressure one ten over sixty, end tidal five kilopascals". */
export const sayHeard = (statement: Statement): string =>
  sayStatement(statement, (v) =>
    v.said.value === v.value && v.said.unit !== "mo"
      ? sayVital(v.code, v.value)
      : `${VITALS[v.code].spokenName} ${saySaid(v.code, v.said.value, v.said.unit)}`,
  );

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
      return `${candidates.map((c) => sayHeard(c.statement)).join(", or ")}?`;
  }
}
