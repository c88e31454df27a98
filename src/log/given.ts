import type { DrugClass } from "../protocol/protocol.ts";
import type { GivenEntry } from "./careState.ts";
import type { CaseState } from "./caseState.ts";
import { linksOf } from "./chains.ts";

/** What keeps a paralysed patient asleep. An opioid alone does not. */
export const SEDATIVES: readonly DrugClass[] = ["induction", "benzodiazepine"];

/** Everything given of drugs of these classes, struck doses left out, in no order. A case holds few of each. */
export function* givenOf({ care }: Pick<CaseState, "care">, classes: readonly DrugClass[]): Generator<GivenEntry> {
  for (const newest of Object.values(care.given)) if (classes.includes(newest.drugClass)) yield* linksOf(newest);
}

type Numbered = { readonly seq: number };

/** The one recorded first; `undefined` where there is none. */
export const earliestOf = <T extends Numbered>(entries: Iterable<T>): T | undefined =>
  [...entries].reduce<T | undefined>((first, e) => (first === undefined || e.seq < first.seq ? e : first), undefined);

/** The one recorded last; `undefined` where there is none. */
export const latestOf = <T extends Numbered>(entries: Iterable<T>): T | undefined =>
  [...entries].reduce<T | undefined>((last, e) => (last === undefined || e.seq > last.seq ? e : last), undefined);
