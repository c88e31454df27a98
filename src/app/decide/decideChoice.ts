import type { Intent } from "../../language/intent.ts";
import { sayHeard } from "../../language/sentences/question.ts";
import { sentences } from "../../language/sentences/sentence.ts";
import type { CaseState } from "../../log/caseState.ts";
import type { Candidate, VitalValue } from "../../log/facts.ts";
import { refused, type Decision } from "./decision.ts";
import type { Source } from "./recordStatement.ts";
import { chooseUnit } from "./units.ts";

/** One reading of the words as a statement, if every value in it has one settled unit and can be. */
function asCandidate(intent: Intent): Candidate | undefined {
  if (intent.kind !== "vitals" || intent.correction) return undefined;
  const vitals: VitalValue[] = [];
  for (const item of intent.items) {
    if (item.kind !== "vital") return undefined;
    const choice = chooseUnit(item);
    if (choice.kind !== "settled") return undefined;
    vitals.push(choice.value);
  }
  const [only, ...more] = vitals;
  const statement = { vitals, findings: [] };
  const number = more.length === 0 ? only?.said.value : undefined;
  return { choose: sayHeard(statement), number, statement };
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
  const about = [...new Set(candidates.flatMap((c) => c.statement.vitals.map((v) => v.code)))];
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
