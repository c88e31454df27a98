import { asInput, derive, type Derivation, type DerivationInput } from "../../core/derivation.ts";
import { pressureFormulas } from "../../core/formulas/pressure.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import type { CaseState } from "../caseState.ts";
import { pressurePairs } from "../meanReadings.ts";
import { selectPerfusion, type Perfusion } from "../perfusion.ts";
import { selectTargets } from "../targets.ts";
import type { Explanation } from "./explanation.ts";
import { limitInput, recordedInput } from "./inputs.ts";

const MMHG = "mmHg";

function meanDerivation(
  state: CaseState,
  protocol: Protocol,
  map: NonNullable<Perfusion["map"]>,
  target: DerivationInput,
) {
  const pair = pressurePairs(state, protocol).next().value;
  if (map.kind === "measured" || pair === undefined) return undefined;
  return derive({
    formula: pressureFormulas.meanArterialPressure,
    name: "MAP",
    value: map.mapMmHg,
    unit: MMHG,
    inputs: [recordedInput("SBP", MMHG, pair.sbp), recordedInput("DBP", MMHG, pair.dbp)],
    against: target,
  });
}

/** Why the mean pressure is what it is: measured, or worked out from a systolic and a diastolic. */
export function explainMap(state: CaseState, protocol: Protocol, nowMs: number): Explanation | undefined {
  const { map } = selectPerfusion(state, protocol, nowMs);
  if (map === undefined) return undefined;
  const against = limitInput("target", MMHG, selectTargets(state, protocol).mapMmHg.target);
  const derivation = meanDerivation(state, protocol, map, against);
  if (derivation !== undefined) return { kind: "derived", derivation };
  return { kind: "measured", input: recordedInput("MAP", MMHG, { value: map.mapMmHg, atMs: map.atMs }), against };
}

/** The mean as it goes into a perfusion pressure: with its own derivation where it has one. */
const meanInput = (mean: Explanation): [DerivationInput, readonly Derivation[]] =>
  mean.kind === "derived" ? [asInput(mean.derivation), [mean.derivation]] : [mean.input, []];

/** The ICP that stands in for a measured one: the low end of the protocol's assumption, where CPP is at its best. */
const assumedIcp = (protocol: Protocol): DerivationInput => ({
  name: "ICP",
  value: protocol.assumedIcpMmHg.value.low,
  unit: MMHG,
  kind: "assumed",
  path: "assumedIcpMmHg",
  source: protocol.assumedIcpMmHg.source,
});

/** Why the perfusion pressure is what it is, or what it would be if ICP were as the protocol assumes. */
export function explainCpp(state: CaseState, protocol: Protocol, nowMs: number): Explanation | undefined {
  const { cpp, icp } = selectPerfusion(state, protocol, nowMs);
  const mean = explainMap(state, protocol, nowMs);
  if (cpp.kind === "none" || mean === undefined) return undefined;
  const [meanIn, parts] = meanInput(mean);
  const measuredIcp = icp && recordedInput("ICP", MMHG, { value: icp.icpMmHg, atMs: icp.atMs });
  const derivation = derive({
    formula: pressureFormulas.cerebralPerfusionPressure,
    name: "CPP",
    value: cpp.kind === "measured" ? cpp.cppMmHg : cpp.highMmHg,
    unit: MMHG,
    inputs: [meanIn, measuredIcp ?? assumedIcp(protocol)],
    against: limitInput("target", MMHG, selectTargets(state, protocol).cppMmHg.target),
    parts,
  });
  return { kind: "derived", derivation };
}
