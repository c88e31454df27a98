import { bar, freeGas, freeGasL, waterVolumeL } from "../../../core/cylinder.ts";
import { lPerMin } from "../../../core/quantities.ts";
import type { CareIntent } from "../../../language/careIntent.ts";
import {
  askFlow,
  NO_CYLINDER,
  NO_SUCH_CYLINDER,
  sayCylinder,
  WHICH_SIZE,
  type TakenOver,
} from "../../../language/sentences/cylinder.ts";
import type { CaseState } from "../../../log/caseState.ts";
import { linksOf } from "../../../log/chains.ts";
import type { NewFact } from "../../../log/facts.ts";
import { reduceFacts } from "../../../log/reduceFact.ts";
import { cylinderEnd } from "../../../rules/cylinderEnd.ts";
import type { AppContext } from "../../context.ts";
import { answered, recorded, refused, type Decision } from "../decision.ts";
import type { Source } from "../recordStatement.ts";
import { stamp } from "../stamp.ts";

type Said = Omit<Extract<CareIntent, { kind: "cylinder" }>, "kind">;

/** Litres of free gas that were said, by contents or by gauge and size; a gauge without a size says nothing. */
function saidContents({ contentsL, pressureBar, waterL }: Said): number | "no-size" | "impossible" | undefined {
  if (contentsL !== undefined) {
    const checked = freeGasL(contentsL.value);
    return checked.ok ? checked.value : "impossible";
  }
  if (pressureBar === undefined) return undefined;
  if (waterL === undefined) return "no-size";
  const [gauge, water] = [bar(pressureBar.value), waterVolumeL(waterL.value)];
  return gauge.ok && water.ok ? freeGas(gauge.value, water.value) : "impossible";
}

/**
 * How long the oxygen lasts. What is said is recorded at once and read back, as readings are; what is not said is taken from
 * the last record, its contents less what has flowed since, and that is said too.
 */
export function decideCylinder(
  { protocol }: AppContext,
  log: CaseState,
  said: Said,
  source: Source,
  nowMs: number,
): Decision {
  const contents = saidContents(said);
  if (contents === "no-size") return refused(WHICH_SIZE);
  if (contents === "impossible") return refused(NO_SUCH_CYLINDER);
  const last = cylinderEnd(log, protocol, nowMs);
  const contentsL = contents ?? last?.contentsL;
  if (contentsL === undefined) return refused(NO_CYLINDER);
  const flowLPerMin = said.flowLPerMin?.value ?? last?.flowLPerMin;
  if (flowLPerMin === undefined) return refused(askFlow(contentsL));
  const taken: TakenOver = { contents: contents === undefined, flow: said.flowLPerMin === undefined };
  if (taken.contents && taken.flow && last !== undefined) return answered(sayCylinder(last, taken));
  const flow = lPerMin(flowLPerMin);
  if (!flow.ok || flow.value === 0) return refused(askFlow(contentsL));
  const fullL = Math.max(contentsL, ...[...linksOf(log.care.cylinder)].map((entry) => entry.fullL));
  const fact: NewFact = { type: "cylinder.recorded", contentsL, fullL, flowLPerMin, ...source };
  const end = cylinderEnd(reduceFacts(stamp(log, [fact], nowMs), log), protocol, nowMs);
  return end === undefined ? refused(NO_SUCH_CYLINDER) : recorded(sayCylinder(end, taken), [fact]);
}
