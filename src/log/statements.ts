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

/** The last reading as one statement, with the facts that hold it: what "read back" says and "disregard" strikes. */
export function selectLastStatement(
  state: CaseState,
): { readonly statement: Statement; readonly factIds: readonly string[]; readonly seq: number } | undefined {
  const last = state.lastReading;
  if (last === undefined) return undefined;
  const sex = last.facts.find((f) => f.type === "sex.recorded");
  const statement: Statement = {
    vitals: last.facts.flatMap((f) => (f.type === "vital.recorded" ? [valueOf(f)] : [])),
    findings: last.facts.flatMap((f) => (f.type === "finding.recorded" ? [findingOf(f)] : [])),
    ...(sex?.type === "sex.recorded" ? { sex: sex.sex } : {}),
  };
  return { statement, factIds: last.factIds, seq: last.seq };
}
