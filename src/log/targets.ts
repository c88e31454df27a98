import type { Protocol } from "../protocol/protocol.ts";
import { resolveTargets, type Targets, type Traits } from "../protocol/resolveTargets.ts";
import type { CaseState } from "./caseState.ts";
import { rescueRuns, sparesCo2 } from "./rescue.ts";
import { selectLatest } from "./selectors.ts";

/** The targets that hold for the patient now. */
export type CurrentTargets = Targets;

/** What was recorded of the patient that decides which targets hold. Until a cause is said it is unknown. */
function selectTraits(state: CaseState): Traits {
  return {
    ageA: selectLatest(state, "age")?.value,
    cause: state.cause?.cause ?? "unknown",
    herniating: (state.herniation?.present ?? false) || rescueRuns(state),
  };
}

/**
 * The targets that hold now: everything that judges, says or shows a value against its target reads them here. While the
 * brain herniates the floors are raised; the lower CO2 band counts for the limited time alone.
 */
export function selectTargets(state: CaseState, protocol: Protocol): CurrentTargets {
  const traits = selectTraits(state);
  const targets = resolveTargets(protocol, traits);
  if (!traits.herniating || sparesCo2(state)) return targets;
  return { ...targets, etco2MmHg: resolveTargets(protocol, { ...traits, herniating: false }).etco2MmHg };
}
