import { cm, kg, years } from "../core/quantities.ts";
import type { Quantity, QuantityError } from "../core/quantity.ts";
import type { Result } from "../core/result.ts";
import type { VitalCode } from "../core/vitals.ts";
import type { Body, ScaledWeight } from "../core/weightFor.ts";
import type { CaseState } from "../log/caseState.ts";
import { selectLatest } from "../log/selectors.ts";
import { selectTargets } from "../log/targets.ts";
import type { Protocol } from "../protocol/protocol.ts";

type Door<U extends string> = (n: number) => Result<Quantity<U>, QuantityError>;

function latest<U extends string>(state: CaseState, code: VitalCode, door: Door<U>): Quantity<U> | undefined {
  const entry = selectLatest(state, code);
  const checked = entry && door(entry.value);
  return checked?.ok ? checked.value : undefined;
}

/** Said to be a guess when it was recorded. */
const isGuessed = (state: CaseState, code: VitalCode): boolean => selectLatest(state, code)?.method === "estimated";

/** The weight as it was recorded, or as it was worked out from a guessed height: whatever rests on a guess is one. */
export const withHeightGuess = (state: CaseState, weight: ScaledWeight): ScaledWeight =>
  weight.scalarUsed !== "actual" && isGuessed(state, "height") ? { ...weight, kind: "estimated" } : weight;

/** What is known of the patient's size, for the weight that a dose goes by. */
export function patientBody(state: CaseState, protocol: Protocol): Body {
  const kind = isGuessed(state, "weight") ? "estimated" : "measured";
  const weight = latest(state, "weight", kg);
  const heightCm = latest(state, "height", cm);
  const ageA = latest(state, "age", years);
  return {
    isChild: selectTargets(state, protocol).population.kind === "child",
    ...(weight !== undefined && { actual: { kg: weight, kind } as const }),
    ...(heightCm !== undefined && { heightCm }),
    ...(state.sex !== undefined && { sex: state.sex.sex }),
    ...(ageA !== undefined && { ageA }),
  };
}
