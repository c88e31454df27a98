import type { SaidRate } from "../../log/careFacts.ts";
import { outsideRange, type InfusionSetting } from "../../rules/infusionSetting.ts";
import { sayRate, sayRateOnce } from "./amount.ts";
import { sayDoseUnit } from "./doseUnit.ts";
import { roundedRate, sayExactly, sayExactlyTwoWays } from "./number.ts";
import { sayAgeSafely } from "./howOld.ts";
import { sentences } from "./sentence.ts";
import { sayAge } from "./vital.ts";

const perHour = (mlPerH: number): SaidRate => ({ value: mlPerH, unit: "mL/h" });

/** "thirty, three zero, millilitres per hour"; nothing where the rate is in that unit already. */
const sayPump = ({ rate, mlPerH }: InfusionSetting): string | undefined =>
  mlPerH === undefined || rate.unit === "mL/h" ? undefined : sayRate(perHour(roundedRate(mlPerH)));

/** A weight that nobody measured is named wherever a number rests on it. */
function sayGuessed({ weight, mlPerH }: InfusionSetting): string | undefined {
  return weight?.kind === "estimated" && mlPerH !== undefined
    ? `By an estimated weight of ${sayExactlyTwoWays(Math.round(weight.kg * 10) / 10)}, kilos`
    : undefined;
}

function sayOutside(setting: InfusionSetting): string | undefined {
  const side = outsideRange(setting);
  const { infusion } = setting;
  if (side === undefined || infusion === undefined) return undefined;
  return `${side} the protocol's range, ${sayExactly(infusion.low)} to ${sayExactly(infusion.high)}`;
}

/** Why there is no number for the pump, or none of drug; "strength" is left to the question that asks for it. */
function sayLacks({ rate, lacks }: InfusionSetting): string | undefined {
  if (lacks === undefined) return undefined;
  const missing = { strength: "the concentration", weight: "the weight", unit: "a strength in that unit" }[lacks];
  return rate.unit === "mL/h" ? `How much drug that is needs ${missing}` : `Millilitres per hour need ${missing}`;
}

const joined = (...parts: readonly (string | undefined)[]): string =>
  parts.filter((part) => part !== undefined).join(", ");

/** Read back in the unit of the drug and in that of the pump. */
export const askInfusion = (name: string, setting: InfusionSetting): string =>
  sentences(
    `${joined(name, sayRate(setting.rate), sayPump(setting))}?`,
    sayGuessed(setting),
    sayOutside(setting),
    sayLacks(setting),
  );

/** The same where no rate was said: the protocol's start. */
export const askStartRate = (name: string, setting: InfusionSetting): string =>
  sentences(askInfusion(name, setting), "The protocol's start: affirm, or say the rate");

export const askRate = (name: string): string => sentences(`${name}, at what rate?`);

export const askRateUnit = (name: string, value: number, units: readonly string[]): string =>
  sentences(`${name} ${sayExactlyTwoWays(value)}: ${units.map(sayDoseUnit).join(", or ")}?`);

export const askStop = (name: string): string => sentences(`stop ${name}?`);

export const sayNotRunning = (name: string): string => sentences(`${name} is not recorded as running`);

/** "Noradrenaline for eighty, eight zero, kilos": worked out, nothing is recorded. */
export const sayHowMuch = (name: string, setting: InfusionSetting, forKg: number | undefined, lead = ""): string =>
  sentences(
    forKg === undefined ? name : `${name} for ${sayExactlyTwoWays(forKg)}, kilos`.trimStart(),
    sayWorkedOut(setting, lead),
  );

/**
 * A rate both ways, with what it rests on and what it lacks; the concentration is left to the question that asks for it.
 *
 * @param lead words before it: "start" where it is the protocol's and not anybody's.
 */
export const sayWorkedOut = (setting: InfusionSetting, lead = ""): string =>
  sentences(
    joined(`${lead}${sayRate(setting.rate)}`, sayPump(setting)),
    sayGuessed(setting),
    sayOutside(setting),
    setting.lacks === "strength" ? undefined : sayLacks(setting),
  );

export const EMPTY_UNKNOWN = "when it is empty is not known";

export type SetInfusion = {
  readonly rate: SaidRate;
  readonly mlPerH: number | undefined;
};

/** What runs from now on, and when the bag is empty. */
export function sayInfusion(name: string, { rate, mlPerH }: SetInfusion, emptyInMs: number | undefined): string {
  if (rate.value === 0) return sentences(`${name} stopped`);
  const pump = mlPerH === undefined || rate.unit === "mL/h" ? undefined : sayRateOnce(perHour(mlPerH));
  return sentences(
    joined(`${name} ${sayRateOnce(rate)}`, pump),
    emptyInMs === undefined
      ? undefined
      : emptyInMs <= 0
        ? "The bag should be empty"
        : `Bag empty in ${sayAge(emptyInMs)}`,
  );
}

/** "Empty in five hours thirty two", "should be empty"; in short "empty in over five hours", which nothing outlasts. */
function sayEmpty(inMs: number, isShort: boolean): string {
  if (inMs <= 0) return "should be empty";
  const hours = Math.floor(inMs / 3_600_000);
  return `empty in ${isShort && hours > 1 ? `over ${sayExactly(hours)} hours` : sayAgeSafely(inMs)}`;
}

/**
 * What runs, as it is handed over: whole, without the rate of the pump, with the pump's alone, and without a rate.
 *
 * @param emptyInMs none: nobody knows.
 */
export function sayInfusionForHandover(
  name: string,
  { rate, mlPerH }: SetInfusion,
  emptyInMs: number | undefined,
): readonly string[] {
  const empty = emptyInMs === undefined ? undefined : sayEmpty(emptyInMs, false);
  const soon = emptyInMs === undefined ? undefined : sayEmpty(emptyInMs, true);
  const pump = mlPerH === undefined || rate.unit === "mL/h" ? undefined : sayRateOnce(perHour(mlPerH));
  const ordered = `${name} ${sayRateOnce(rate)}`;
  return [
    joined(ordered, pump, empty ?? EMPTY_UNKNOWN),
    joined(ordered, empty),
    joined(pump === undefined ? ordered : `${name} ${pump}`, soon),
    joined(`${name} runs`, soon),
  ];
}
