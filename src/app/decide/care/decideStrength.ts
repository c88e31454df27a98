import { concentration, type Strength } from "../../../core/concentration.ts";
import { convertAmount, amount as checkedAmount } from "../../../core/doseAmount.ts";
import type { SpokenAmount, SpokenStrength } from "../../../language/careIntent.ts";
import { askAmountUnit } from "../../../language/sentences/given.ts";
import { askStrengthRight, askStrengthWhole } from "../../../language/sentences/strength.ts";
import type { CaseState } from "../../../log/caseState.ts";
import type { NewFact, RateWanted } from "../../../log/facts.ts";
import { findMedicine } from "../../../protocol/findMedicine.ts";
import { listedStrengths } from "../../../protocol/findStrengths.ts";
import { checkStrength } from "../../../rules/strengthCheck.ts";
import type { AppContext } from "../../context.ts";
import { refused, type Decision } from "../decision.ts";
import type { Source } from "../recordStatement.ts";
import { askToRecord } from "./askCare.ts";

/** Reads a concentration back and waits for "affirm": until then no volume is worked out with it. */
export function askStrengthOf(
  { protocol }: AppContext,
  log: CaseState,
  drugId: string,
  strength: Strength,
  source: Source,
  nowMs: number,
  before: readonly NewFact[] = [],
  forRate?: RateWanted,
): Decision {
  const medicine = findMedicine(protocol, drugId);
  if (medicine === undefined || !concentration(strength).ok) return refused("That is no concentration. Say it again.");
  const { spokenName, drugClass } = medicine;
  const prompt = askStrengthRight(spokenName, strength, checkStrength(protocol, drugId, strength));
  const fact = { type: "strength.affirmed", drugId, drugClass, strength, ...source } as const;
  return askToRecord(log, [fact], { prompt, source, nowMs }, before, forRate);
}

const unitsOf = (known: readonly Strength[]): readonly Strength["unit"][] => [...new Set(known.map((s) => s.unit))];

/**
 * A spoken concentration made whole. No volume: in each millilitre. No unit: that of the known ones, if they have but one.
 *
 * @returns the strength; else the units it could be in.
 */
export function wholeStrength(
  { amount, volumeMl }: SpokenStrength,
  known: readonly Strength[],
): Strength | readonly Strength["unit"][] {
  const units = unitsOf(known);
  const unit = amount.unit ?? (units.length === 1 ? units[0] : undefined);
  return unit === undefined ? units : { amount: amount.value, unit, volumeMl: volumeMl?.value ?? 1 };
}

export const isWhole = (found: ReturnType<typeof wholeStrength>): found is Strength => "volumeMl" in found;

/** The one known strength that names this amount; none where several do, or none does. */
export function strengthWithAmount({ value, unit }: SpokenAmount, known: readonly Strength[]): Strength | undefined {
  const said = unit === undefined ? undefined : checkedAmount(value, unit);
  const matching = known.filter((one) => {
    if (said === undefined) return one.amount === value;
    const inUnit = said.ok ? convertAmount(said.value, one.unit) : said;
    return inUnit.ok && Math.abs(inUnit.value.value / one.amount - 1) < 1e-9;
  });
  const distinct = matching.filter(
    (one, i) => matching.findIndex((o) => o.amount === one.amount && o.volumeMl === one.volumeMl) === i,
  );
  return distinct.length === 1 ? distinct[0] : undefined;
}

/** "Ketamine fifty milligrams per mil", or that as the answer to our question. */
export function decideStrength(
  context: AppContext,
  log: CaseState,
  drugId: string,
  spoken: SpokenStrength,
  source: Source,
  nowMs: number,
  forRate?: RateWanted,
): Decision {
  const known = listedStrengths(context.protocol, drugId);
  const found = wholeStrength(spoken, known);
  if (isWhole(found)) return askStrengthOf(context, log, drugId, found, source, nowMs, [], forRate);
  const name = findMedicine(context.protocol, drugId)?.spokenName ?? source.heard;
  return refused(askAmountUnit(name, spoken.amount.value, found.length === 0 ? ["mcg", "mg"] : found));
}

/** An amount alone where a concentration is wanted: only a strength of the protocol can complete it. */
export function decideStrengthByAmount(
  context: AppContext,
  log: CaseState,
  drugId: string,
  amount: SpokenAmount,
  source: Source,
  nowMs: number,
  forRate?: RateWanted,
): Decision {
  const strength = strengthWithAmount(amount, listedStrengths(context.protocol, drugId));
  if (strength !== undefined) return askStrengthOf(context, log, drugId, strength, source, nowMs, [], forRate);
  return refused(askStrengthWhole(findMedicine(context.protocol, drugId)?.spokenName ?? source.heard));
}
