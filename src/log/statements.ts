import type { CaseState } from "./caseState.ts";
import type { Fact, FindingValue, Statement, VitalValue } from "./facts.ts";

type Recorded<T extends Fact["type"]> = Extract<Fact, { readonly type: T }>;

/** How and where a value was taken, as far as that was said. */
export const howTaken = ({
  method,
  site,
  level,
  reaction,
}: Pick<VitalValue, "method" | "site" | "level" | "reaction">) => ({
  ...(method && { method }),
  ...(site && { site }),
  ...(level && { level }),
  ...(reaction && { reaction }),
});

/** The value alone, without the stamp and the reading of its fact or entry. */
export const valueOf = (of: VitalValue): VitalValue => ({
  code: of.code,
  value: of.value,
  unit: of.unit,
  said: of.said,
  ...howTaken(of),
});

function findingOf(fact: Recorded<"finding.recorded">): FindingValue {
  const { v: _v, id: _id, atMs: _atMs, type: _type, readingId: _reading, heard: _heard, by: _by, ...finding } = fact;
  return finding;
}

/** What a statement says of the patient besides values and findings. */
export type Background = Pick<Statement, "sex" | "cause" | "herniation">;

function backgroundOf(fact: Fact): Background {
  switch (fact.type) {
    case "sex.recorded":
      return { sex: fact.sex };
    case "cause.recorded":
      return { cause: fact.cause };
    case "herniation.recorded":
      return { herniation: fact.present };
    default:
      return {};
  }
}

/** The background of several as one, in which the first to say a thing counts. */
export const mergeBackground = (all: readonly Background[]): Background =>
  all.reduceRight<Background>(
    (merged, { sex, cause, herniation }) => ({
      ...merged,
      ...(sex === undefined ? {} : { sex }),
      ...(cause === undefined ? {} : { cause }),
      ...(herniation === undefined ? {} : { herniation }),
    }),
    {},
  );

/** The last reading as one statement, with the facts that hold it: what "read back" says and "disregard" strikes. */
export function selectLastStatement(
  state: CaseState,
): { readonly statement: Statement; readonly factIds: readonly string[]; readonly seq: number } | undefined {
  const last = state.lastReading;
  if (last === undefined) return undefined;
  const statement: Statement = {
    vitals: last.facts.flatMap((f) => (f.type === "vital.recorded" ? [valueOf(f)] : [])),
    findings: last.facts.flatMap((f) => (f.type === "finding.recorded" ? [findingOf(f)] : [])),
    ...mergeBackground(last.facts.map(backgroundOf)),
  };
  return { statement, factIds: last.factIds, seq: last.seq };
}
