import { childShock } from "../core/childShockIndex.ts";
import type { DerivationInput } from "../core/derivation.ts";
import { shockIndex } from "../core/shockIndex.ts";
import { years } from "../core/quantities.ts";
import { vitalQuantity } from "../core/vitalQuantity.ts";
import type { CaseState } from "../log/caseState.ts";
import { selectLatest } from "../log/selectors.ts";
import { selectTargets } from "../log/targets.ts";
import { recordedInput } from "../log/why/inputs.ts";
import type { Protocol } from "../protocol/protocol.ts";

export type PatientShock = {
  readonly index: number;
  /** At or over the protocol's limit for this patient. */
  readonly shocked: boolean;
  readonly limit: DerivationInput;
  readonly inputs: readonly DerivationInput[];
};

type Limit = { readonly over: boolean; readonly input: DerivationInput };

function adultLimit({ shock }: Protocol, index: number): Limit {
  const { value, source } = shock.warnAt;
  const input = { name: "limit", value, unit: "", kind: "protocol", path: "shock.warnAt", source } as const;
  return { over: index >= value, input };
}

function childLimit(
  { shock }: Protocol,
  ageA: number | undefined,
  index: Parameters<typeof childShock>[1],
): Limit | undefined {
  const age = ageA === undefined ? undefined : years(ageA);
  if (!age?.ok) return undefined;
  const judged = childShock(age.value, index, shock.childUpper);
  if (judged.kind === "no-limit") return undefined;
  const { upper, source } = judged.limit;
  const path = `shock.childUpper[${shock.childUpper.indexOf(judged.limit)}].upper`;
  return {
    over: judged.kind === "above",
    input: { name: "limit", value: upper, unit: "", kind: "protocol", path, source },
  };
}

/**
 * The shock index of the newest heart rate and systolic, held against the protocol's limit for this age.
 *
 * `undefined` while one of the two is missing, stale or in question, or where nothing is published for this age: then nothing may be
 * said of shock, least of all that there is none.
 */
export function patientShock(state: CaseState, protocol: Protocol, nowMs: number): PatientShock | undefined {
  const [hr, sbp] = [selectLatest(state, "hr"), selectLatest(state, "sbp")];
  const isAsked = state.questions.some(({ about }) => about.includes("hr") || about.includes("sbp"));
  if (hr === undefined || sbp === undefined || isAsked) return undefined;
  if (nowMs - Math.min(hr.atMs, sbp.atMs) > protocol.timers.staleAfterS.value * 1000) return undefined;
  const [rate, pressure] = [vitalQuantity("hr", hr.value), vitalQuantity("sbp", sbp.value)];
  const index = rate.ok && pressure.ok ? shockIndex(rate.value, pressure.value) : undefined;
  if (!index?.ok) return undefined;
  const isChild = selectTargets(state, protocol).population.kind === "child";
  const limit = isChild
    ? childLimit(protocol, selectLatest(state, "age")?.value, index.value)
    : adultLimit(protocol, index.value);
  if (limit === undefined) return undefined;
  return {
    index: index.value,
    shocked: limit.over,
    limit: limit.input,
    inputs: [recordedInput("HR", "/min", hr), recordedInput("SBP", "mmHg", sbp)],
  };
}
