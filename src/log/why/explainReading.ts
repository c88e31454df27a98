import { fromCanonical } from "../../core/convert.ts";
import type { DerivationInput, Source } from "../../core/derivation.ts";
import { VITALS } from "../../core/vitals.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import type { CaseState } from "../caseState.ts";
import { selectLatest } from "../selectors.ts";
import { selectTargets, type CurrentTargets } from "../targets.ts";
import type { Explanation } from "./explanation.ts";
import { limitInput, recordedInput } from "./inputs.ts";

/** Readings that are judged as they were said, or that have nothing to be judged by. */
export type ExplainedCode = "sbp" | "spo2" | "hr" | "rr" | "etco2" | "icp" | "temp" | "glucose";

type Range = { readonly low: number; readonly high: number; readonly path: string; readonly source: Source };
type Against = { readonly name: string; readonly value: number; readonly path: string; readonly source: Source };

/** The end of a range that a value has left; within it, the nearer one. */
function endOf({ low, high, path, source }: Range, value: number): Against {
  const isLow = value - low < high - value;
  return isLow
    ? { name: "lowest target", value: low, path, source }
    : { name: "highest target", value: high, path, source };
}

/** In the stored unit of the vital. None: the protocol has no limit for it. */
function limitFor(
  code: ExplainedCode,
  value: number,
  targets: CurrentTargets,
  protocol: Protocol,
): Against | undefined {
  const { tempCel, glucoseMmolPerL } = protocol.targets;
  switch (code) {
    case "sbp":
      return { name: "target", ...targets.sbpMmHg.target };
    case "spo2":
      return { name: "target", ...targets.spo2Pct.target };
    case "icp":
      return { name: "treat above", ...targets.icpTreatAboveMmHg };
    case "etco2":
      return endOf(targets.etco2MmHg, value);
    case "temp":
      return endOf({ ...tempCel.hold.value, path: "targets.tempCel.hold", source: tempCel.hold.source }, value);
    case "glucose": {
      const { hold } = glucoseMmolPerL;
      return endOf({ ...hold.value, path: "targets.glucoseMmolPerL.hold", source: hold.source }, value);
    }
    case "hr":
      return endOf(targets.hrPerMin.target, value);
    case "rr":
      return undefined;
  }
}

const UNITS = {
  sbp: "mmHg",
  spo2: "%",
  hr: "/min",
  rr: "/min",
  icp: "mmHg",
  temp: "Cel",
  etco2: "mmHg",
  glucose: "mmol/L",
} as const satisfies Readonly<Record<ExplainedCode, string>>;

/** As people write it. */
const written = (unit: string): string => (unit === "Cel" ? "°C" : unit);

/** Why a measured value is judged as it is: the value, and the limit it is held against. In the units that are usual here. */
export function explainReading(state: CaseState, protocol: Protocol, code: ExplainedCode): Explanation | undefined {
  const latest = selectLatest(state, code);
  if (latest === undefined) return undefined;
  const { co2, glucose } = protocol.region;
  const unit = code === "etco2" ? co2 : code === "glucose" ? glucose : UNITS[code];
  const usual = (value: number): number => {
    const converted = fromCanonical(code, value, unit);
    return converted.ok ? converted.value : value;
  };
  const limit = limitFor(code, latest.value, selectTargets(state, protocol), protocol);
  const against: DerivationInput | undefined =
    limit && limitInput(limit.name, written(unit), { ...limit, value: usual(limit.value) });
  const input = recordedInput(VITALS[code].label, written(unit), { ...latest, value: usual(latest.value) });
  return { kind: "measured", input, against };
}
