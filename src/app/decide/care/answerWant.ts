import type { CareIntent, SpokenAmount, SpokenStrength } from "../../../language/careIntent.ts";
import type { SaidNumber } from "../../../language/saidNumber.ts";
import type { CaseState } from "../../../log/caseState.ts";
import { findMedicine } from "../../../protocol/findMedicine.ts";
import type { AppContext } from "../../context.ts";
import { ignored, refused, type Decision } from "../decision.ts";
import type { Source } from "../recordStatement.ts";
import { decideFluid } from "./decideFluid.ts";
import { decideGiven } from "./decideGiven.ts";
import { decideRate } from "./decideInfusion.ts";
import { answerStock, answerStockByAmount } from "./decideMake.ts";
import { listedStrengths, recipesFor } from "../../../protocol/findStrengths.ts";
import { decideStrength, decideStrengthByAmount, strengthWithAmount } from "./decideStrength.ts";
import { drugAsked, type DrugAsked } from "./drugAsked.ts";

/** The question that waits is asked again: what was said is no answer to it. */
const askAgain = ({ questions: [question] }: CaseState): Decision =>
  question === undefined ? ignored : refused(question.prompt);

function answerRate(
  context: AppContext,
  log: CaseState,
  { drugId }: DrugAsked & { kind: "amount" | "rate" },
  rate: Extract<CareIntent, { kind: "rate" }>["rate"],
  source: Source,
  nowMs: number,
): Decision {
  const medicine = findMedicine(context.protocol, drugId);
  return medicine === undefined ? askAgain(log) : decideRate(context, log, medicine, rate, source, nowMs);
}

function answerAmount(
  context: AppContext,
  log: CaseState,
  asked: DrugAsked,
  amount: SpokenAmount,
  source: Source,
  nowMs: number,
): Decision {
  switch (asked.kind) {
    case "strength":
      return decideStrengthByAmount(context, log, asked.drugId, amount, source, nowMs, asked.forRate);
    case "stock":
      return answerStockByAmount(context, log, asked, amount, source, nowMs);
    case "amount":
      return decideGiven(context, log, { drugId: asked.drugId, amount }, source, nowMs);
    case "rate":
      return amount.unit === undefined
        ? answerRate(context, log, { ...asked, kind: "rate" }, withoutUnit(amount), source, nowMs)
        : askAgain(log);
    case "fluid":
      return amount.unit === undefined || amount.unit === "mL"
        ? decideFluid(context, log, { fluidId: asked.fluidId, volumeMl: amount }, source, nowMs)
        : askAgain(log);
  }
}

const withoutUnit = ({ value, words }: SpokenAmount): SaidNumber => ({ value, words });

/** Whether a number alone names one concentration, or one stock, of those that could be meant. */
const isKnown = ({ protocol }: AppContext, { drugId }: { readonly drugId: string }, number: SaidNumber): boolean =>
  [listedStrengths(protocol, drugId), recipesFor(protocol, drugId, "any").map(({ stock }) => stock)].some(
    (known) => strengthWithAmount(number, known) !== undefined,
  );

/**
 * A bare number while the newest question is about a drug or a fluid: its answer, or the amount said anew. A number that an
 * older question of values waits for is never put into the place of an amount.
 *
 * @returns nothing where the number belongs to a question about something else.
 */
export function answerWant(
  context: AppContext,
  log: CaseState,
  number: SaidNumber,
  source: Source,
  nowMs: number,
): Decision | undefined {
  const asked = drugAsked(context.protocol, log);
  const awaited = log.questions.some(({ candidates }) => candidates.some((c) => c.number === number.value));
  if (asked !== undefined && awaited) {
    const takesAny = asked.kind !== "strength" && asked.kind !== "stock";
    return takesAny || isKnown(context, asked, number) ? refused("Say which value.") : undefined;
  }
  return asked && answerAmount(context, log, asked, number, source, nowMs);
}

type Answer = Extract<CareIntent, { kind: "strength" | "amount" | "rate" | "doseUnit" }>;

/** "Fifty milligrams per mil", of a drug or as the answer to our question for a concentration or a stock. */
function answerStrength(
  context: AppContext,
  log: CaseState,
  drugId: string | undefined,
  strength: SpokenStrength,
  source: Source,
  nowMs: number,
): Decision {
  const asked = drugAsked(context.protocol, log);
  if (drugId !== undefined) {
    const forRate = asked?.kind === "strength" && asked.drugId === drugId ? asked.forRate : undefined;
    return decideStrength(context, log, drugId, strength, source, nowMs, forRate);
  }
  if (asked?.kind === "stock") return answerStock(context, log, asked, strength, source, nowMs);
  if (asked?.kind !== "strength") return askAgain(log);
  return decideStrength(context, log, asked.drugId, strength, source, nowMs, asked.forRate);
}

/** A unit alone answers the newest question for one, where it is among those offered. */
function answerUnit(
  context: AppContext,
  log: CaseState,
  unit: Extract<CareIntent, { kind: "doseUnit" }>["unit"],
  source: Source,
  nowMs: number,
): Decision {
  const wants = log.questions[0]?.wants;
  if (wants?.kind === "amountUnit") {
    const choice = wants.choices.find((one) => one.unit === unit);
    if (choice === undefined) return askAgain(log);
    const amount = { ...choice, words: source.heard };
    return decideGiven(context, log, { drugId: wants.drugId, amount }, source, nowMs);
  }
  const choice = wants?.kind === "rateUnit" ? wants.choices.find((one) => one.unit === unit) : undefined;
  if (wants?.kind !== "rateUnit" || choice === undefined) return askAgain(log);
  return answerRate(
    context,
    log,
    { kind: "rate", drugId: wants.drugId },
    { ...choice, words: source.heard },
    source,
    nowMs,
  );
}

/** What answers a question about a drug; a concentration may also name its drug. */
export function decideDrugAnswer(
  context: AppContext,
  log: CaseState,
  intent: Answer,
  source: Source,
  nowMs: number,
): Decision {
  switch (intent.kind) {
    case "strength":
      return answerStrength(context, log, intent.drugId, intent.strength, source, nowMs);
    case "doseUnit":
      return answerUnit(context, log, intent.unit, source, nowMs);
    case "amount": {
      const asked = drugAsked(context.protocol, log);
      return asked === undefined ? askAgain(log) : answerAmount(context, log, asked, intent.amount, source, nowMs);
    }
    case "rate": {
      const asked = drugAsked(context.protocol, log);
      if (asked?.kind !== "rate") return askAgain(log);
      return answerRate(context, log, { ...asked, kind: "rate" }, intent.rate, source, nowMs);
    }
  }
}
