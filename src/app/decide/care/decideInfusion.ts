import { infusionRate } from "../../../core/infusionRate.ts";
import type { CareIntent, SpokenRate } from "../../../language/careIntent.ts";
import { sayNoDose } from "../../../language/sentences/dose.ts";
import {
  askInfusion,
  askRate,
  askRateUnit,
  askStartRate,
  askStop,
  sayNotRunning,
} from "../../../language/sentences/infusion.ts";
import type { SaidRate } from "../../../log/careFacts.ts";
import type { CaseState } from "../../../log/caseState.ts";
import { findMedicine, type Medicine } from "../../../protocol/findMedicine.ts";
import { fittingInfusions, infusionSetting, infusionsFor } from "../../../rules/infusionSetting.ts";
import type { AppContext } from "../../context.ts";
import { refused, type Decision } from "../decision.ts";
import type { Source } from "../recordStatement.ts";
import { askFor, askToRecord } from "./askCare.ts";
import { infusionFact, stopFact } from "./infusionFact.ts";

/** The units that a rate said without one could be in: those whose order it fits, else all, and the pump's. */
export function possibleUnits(
  { protocol }: AppContext,
  log: CaseState,
  medicine: Medicine,
  value: number,
): readonly SaidRate["unit"][] {
  const orders = infusionsFor(log, protocol, medicine);
  const fitting = [...new Set(fittingInfusions(orders, value).map(({ unit }) => unit))];
  return fitting.length > 0 ? fitting : [...new Set([...orders.map(({ unit }) => unit), "mL/h" as const])];
}

function stop(log: CaseState, medicine: Medicine, source: Source, nowMs: number): Decision {
  const running = log.care.infusions[medicine.id];
  const { spokenName } = medicine;
  if (running === undefined || running.rate.value === 0) return refused(sayNotRunning(spokenName));
  const fact = stopFact(medicine, running.rate.unit, source);
  return askToRecord(log, [fact], { prompt: askStop(spokenName), source, nowMs });
}

/** No rate was said: the protocol's start is proposed where it has one, and none runs yet. */
function withoutRate(
  { protocol }: AppContext,
  log: CaseState,
  medicine: Medicine,
  source: Source,
  nowMs: number,
): Decision {
  const { id: drugId, spokenName } = medicine;
  const [order] = infusionsFor(log, protocol, medicine);
  const running = log.care.infusions[drugId];
  if (order === undefined || (running !== undefined && running.rate.value > 0))
    return askFor(log, { kind: "rate", drugId }, { prompt: askRate(spokenName), source, nowMs });
  const setting = infusionSetting(log, protocol, medicine, { value: order.start, unit: order.unit });
  const fact = infusionFact(log, medicine, setting, order.unit, source);
  return askToRecord(log, [fact], { prompt: askStartRate(spokenName, setting), source, nowMs });
}

/** A rate with its unit: read back both ways, recorded once it is affirmed. */
function setRate(
  { protocol }: AppContext,
  log: CaseState,
  medicine: Medicine,
  rate: SaidRate,
  source: Source,
  nowMs: number,
): Decision {
  if (!infusionRate(rate.value, rate.unit).ok) return refused(askRate(medicine.spokenName));
  const setting = infusionSetting(log, protocol, medicine, rate);
  const fact = infusionFact(log, medicine, setting, rate.unit, source);
  // Read back from the fact: what is affirmed is what is recorded.
  const said = { ...setting, rate: fact.rate, mlPerH: fact.mlPerH };
  return askToRecord(log, [fact], { prompt: askInfusion(medicine.spokenName, said), source, nowMs });
}

/** An infusion starts, changes or stops. */
export function decideInfusion(
  context: AppContext,
  log: CaseState,
  { drugId, change, rate }: Omit<Extract<CareIntent, { kind: "infusion" }>, "kind">,
  source: Source,
  nowMs: number,
): Decision {
  const medicine = findMedicine(context.protocol, drugId);
  if (medicine === undefined) return refused(sayNoDose({ kind: "no-medicine" }, drugId));
  if (change === "stop") return stop(log, medicine, source, nowMs);
  return rate === undefined
    ? withoutRate(context, log, medicine, source, nowMs)
    : decideRate(context, log, medicine, rate, source, nowMs);
}

/** A rate, whose unit may be missing: one that fits the protocol's orders is taken and read back, else it is asked for. */
export function decideRate(
  context: AppContext,
  log: CaseState,
  medicine: Medicine,
  { value, unit: said }: SpokenRate,
  source: Source,
  nowMs: number,
): Decision {
  const units = said === undefined ? possibleUnits(context, log, medicine, value) : [said];
  const [unit, ...others] = units;
  if (unit !== undefined && others.length === 0) return setRate(context, log, medicine, { value, unit }, source, nowMs);
  const choices = units.map((one) => ({ value, unit: one }));
  const prompt = askRateUnit(medicine.spokenName, value, units);
  return askFor(log, { kind: "rateUnit", drugId: medicine.id, choices }, { prompt, source, nowMs });
}
