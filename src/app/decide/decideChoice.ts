import { pressureOrder } from "../../core/plausible.ts";
import type { Intent } from "../../language/intent.ts";
import { sayHeard } from "../../language/sentences/question.ts";
import { sentences } from "../../language/sentences/sentence.ts";
import type { CaseState } from "../../log/caseState.ts";
import type { Candidate, VitalValue } from "../../log/facts.ts";
import { refused, type Decision } from "./decision.ts";
import { findingsOf, type Source } from "./recordStatement.ts";
import { chooseUnit } from "./units.ts";

/** One reading of the words as a statement, if every value in it has one settled unit and can be. */
function asCandidate(intent: Intent): Candidate | undefined {
  if (intent.kind !== "vitals" || intent.correction) return undefined;
  const vitals: VitalValue[] = [];
  for (const item of intent.items) {
    if (item.kind !== "vital") continue;
    const choice = chooseUnit(item);
    if (choice.kind !== "settled") return undefined;
    vitals.push(choice.value);
  }
  const valueOf = (code: VitalValue["code"]) => vitals.find((v) => v.code === code)?.value;
  if (!pressureOrder({ sbp: valueOf("sbp"), dbp: valueOf("dbp"), map: valueOf("map") })) return undefined;
  const rest = findingsOf(intent.items);
  const statement = { ...rest, vitals, findings: rest?.findings ?? [] };
  const [only, ...more] = vitals;
  const number = more.length === 0 && rest === undefined ? only?.said.value : undefined;
  return { choose: sayHeard(statement), number, statement };
}

/**
 * Of readings that are all values, those that can be: "ninety over fifty" and "ninety over fifteen" leave one. Where one of
 * them is something else than a value, or none can be, all stay.
 */
export function possibleReadings(intents: readonly Intent[]): readonly Intent[] {
  if (!intents.every((intent) => intent.kind === "vitals" && !intent.correction)) return intents;
  const possible = intents.filter((intent) => asCandidate(intent) !== undefined);
  return possible.length === 0 ? intents : possible;
}

/** Two readings were too close to choose between: both are offered, and the answer is to say the right one again. */
export function decideChoice(
  log: CaseState,
  intents: readonly Intent[],
  why: "acoustic" | "ambiguous",
  source: Source,
  nowMs: number,
): Decision {
  const candidates = intents.flatMap((intent) => asCandidate(intent) ?? []);
  if (candidates.length < 2) return refused("Say again.");
  const prompt = sentences(`${candidates.map((c) => c.choose).join(", or ")}?`);
  const about = [
    ...new Set(candidates.flatMap(({ statement: s }) => [...s.vitals, ...s.findings].map((item) => item.code))),
  ];
  return {
    facts: [
      {
        type: "question.asked",
        question: {
          id: `question-${log.factCount}`,
          reason: why,
          about,
          prompt,
          heard: source.heard,
          by: source.by,
          askedAtMs: nowMs,
          strikes: [],
          candidates,
        },
      },
    ],
    outcome: "asked",
    reply: { kind: "words", text: prompt },
  };
}
