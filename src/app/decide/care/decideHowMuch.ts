import type { CareIntent } from "../../../language/careIntent.ts";
import { sayNoDose } from "../../../language/sentences/dose.ts";
import { askRateUnit, sayHowMuch } from "../../../language/sentences/infusion.ts";
import { sentences } from "../../../language/sentences/sentence.ts";
import { askStrength } from "../../../language/sentences/strength.ts";
import type { SaidRate } from "../../../log/careFacts.ts";
import type { CaseState } from "../../../log/caseState.ts";
import type { RateWanted } from "../../../log/facts.ts";
import { selectLatest } from "../../../log/selectors.ts";
import { findMedicine, type Medicine } from "../../../protocol/findMedicine.ts";
import { infusionSetting, infusionsFor } from "../../../rules/infusionSetting.ts";
import type { AppContext } from "../../context.ts";
import { answered, refused, type Decision } from "../decision.ts";
import type { Source } from "../recordStatement.ts";
import { askFor } from "./askCare.ts";
import { decideDose } from "./decideDose.ts";
import { possibleUnits } from "./decideInfusion.ts";

/** The rate that is worked out: the one said, else the protocol's start. */
export function rateWanted(
  { protocol }: AppContext,
  log: CaseState,
  medicine: Medicine,
  { rate }: RateWanted,
): SaidRate | undefined {
  const [order] = infusionsFor(log, protocol, medicine);
  return rate ?? (order && { value: order.start, unit: order.unit });
}

/** The rate in its unit and in mL/h; without an affirmed concentration, that is asked for. */
function workOut(
  context: AppContext,
  log: CaseState,
  medicine: Medicine,
  wanted: RateWanted,
  source: Source,
  nowMs: number,
): Decision {
  const { id: drugId, spokenName } = medicine;
  const rate = rateWanted(context, log, medicine, wanted);
  if (rate === undefined) return refused(sayNoDose({ kind: "no-medicine" }, spokenName));
  const setting = infusionSetting(log, context.protocol, medicine, rate, wanted.weightKg);
  const words = sayHowMuch(spokenName, setting, wanted.weightKg, wanted.rate === undefined ? "Start " : "");
  if (setting.lacks !== "strength") return answered(words);
  const prompt = askStrength(spokenName);
  const asked = askFor(log, { kind: "strength", drugId, forRate: wanted }, { prompt, source, nowMs });
  return { ...asked, reply: { kind: "words", text: sentences(words, prompt) } };
}

/** "How much noradrenaline for eighty kilos at point one": worked out and said, never recorded. */
export function decideHowMuch(
  context: AppContext,
  log: CaseState,
  { drugId, weightKg, rate }: Extract<CareIntent, { kind: "howMuch" }>,
  source: Source,
  nowMs: number,
): Decision {
  const medicine = findMedicine(context.protocol, drugId);
  if (medicine === undefined) return refused(sayNoDose({ kind: "no-medicine" }, drugId));
  const isDose = infusionsFor(log, context.protocol, medicine).length === 0 || medicine.doses.length > 0;
  if (rate === undefined && isDose) {
    // A dose goes by the weight of the patient, which is recorded and read back, not by one said in passing.
    return weightKg === undefined || selectLatest(log, "weight")?.value === weightKg.value
      ? decideDose(context, log, drugId, source, nowMs)
      : refused("A dose goes by the recorded weight. Record the weight first.");
  }
  const forKg = weightKg === undefined ? {} : { weightKg: weightKg.value };
  if (rate === undefined) return workOut(context, log, medicine, forKg, source, nowMs);
  const { value, unit: said } = rate;
  const units = said === undefined ? possibleUnits(context, log, medicine, value) : [said];
  const [unit, ...others] = units;
  if (unit === undefined || others.length > 0)
    return refused(sentences(askRateUnit(medicine.spokenName, value, units), "Say it with the unit"));
  return workOut(context, log, medicine, { ...forKg, rate: { value, unit } }, source, nowMs);
}
