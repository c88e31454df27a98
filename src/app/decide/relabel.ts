import { slotOf, type SaidItem } from "../../language/intent.ts";
import { sayReading } from "../../language/sentences/reading.ts";
import type { UsualUnits } from "../../language/sentences/recordedValue.ts";
import type { CaseState } from "../../log/caseState.ts";
import type { Fact } from "../../log/facts.ts";
import { selectLatest } from "../../log/selectors.ts";
import { selectLastStatement } from "../../log/statements.ts";
import { slotOfFact, slotsOfQuestion } from "./correction.ts";

/** What a correction does to the last reading when it names nothing that was in it. */
export type Relabel =
  /** It corrects something older, or there is nothing to weigh. */
  | { readonly kind: "no" }
  /** It was said of the wrong thing ("right pupil five", "correction left pupil five"): that is struck, and said to be. */
  | { readonly kind: "strike"; readonly ids: readonly string[]; readonly words: string }
  | { readonly kind: "refuse"; readonly words: string };

const NO: Relabel = { kind: "no" };

function hasOlder(log: CaseState, item: SaidItem): boolean {
  if (item.kind !== "vital" && item.kind !== "finding") return log[item.kind] !== undefined;
  const finding = Object.entries(log.findings).some(([code]) => code === item.code);
  return finding || selectLatest(log, item.code) !== undefined;
}

/** The last reading again, number for number, under another name. */
function sameNumber(only: Fact, item: SaidItem): boolean {
  return only.type === "vital.recorded" && item.kind === "vital" && only.said.value === item.value;
}

/** Weighs a correction of something that the last reading did not hold. Never guesses which of two was wrong. */
export function relabels(log: CaseState, items: readonly SaidItem[], usual: UsualUnits): Relabel {
  const last = selectLastStatement(log);
  const [only, ...more] = log.lastReading?.facts ?? [];
  const slots = items.map(slotOf);
  if (last === undefined || only === undefined) return NO;
  if ([only, ...more].some((fact) => slots.includes(slotOfFact(fact) ?? ""))) return NO;
  if (log.questions.some((q) => slotsOfQuestion(q).some((slot) => slots.includes(slot)))) return NO;
  const [item, ...others] = items;
  const single = item !== undefined && others.length === 0 && more.length === 0;
  if (items.some((i) => hasOlder(log, i))) {
    if (!single || !sameNumber(only, item)) return NO;
    return {
      kind: "refuse",
      words: `Last was ${sayReading(last.statement, usual)}. Say disregard, or say it without correction.`,
    };
  }
  if (!single) return { kind: "refuse", words: "Nothing to correct. Say it without correction." };
  return { kind: "strike", ids: [only.id], words: `${sayReading(last.statement, usual)} struck.` };
}
