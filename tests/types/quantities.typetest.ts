// No unit is taken for another. The type check is the test: an unused expectation is an error too.
import type {
  Cel,
  Cm,
  CmH2O,
  Degrees,
  Fraction,
  Kg,
  KPa,
  L,
  LPerMin,
  Minutes,
  Ml,
  MlPerKg,
  MlPerMin,
  Mm,
  MmHg,
  MmolPerL,
  Percent,
  PerMin,
  Score,
  Seconds,
  Years,
} from "../../src/core/quantity.ts";
import type { AgeShockIndex, ModifiedShockIndex, ShockIndex } from "../../src/core/shockIndex.ts";
import type { VitalQuantity } from "../../src/core/vitalQuantity.ts";

/** Every unit by its name. */
type Units = {
  MmHg: MmHg;
  KPa: KPa;
  CmH2O: CmH2O;
  PerMin: PerMin;
  Percent: Percent;
  Fraction: Fraction;
  Kg: Kg;
  Cm: Cm;
  Mm: Mm;
  Years: Years;
  Cel: Cel;
  MmolPerL: MmolPerL;
  Score: Score;
  Ml: Ml;
  L: L;
  LPerMin: LPerMin;
  MlPerMin: MlPerMin;
  MlPerKg: MlPerKg;
  Degrees: Degrees;
  Minutes: Minutes;
  Seconds: Seconds;
  ShockIndex: ShockIndex;
  ModifiedShockIndex: ModifiedShockIndex;
  AgeShockIndex: AgeShockIndex;
};
declare const a: Units;

/** The names of all units that `U` would be accepted as. */
type TakenFor<U> = { [N in keyof Units]: U extends Units[N] ? N : never }[keyof Units];
type Clashing = { [N in keyof Units]: Exclude<TakenFor<Units[N]>, N> }[keyof Units];
type None<T extends never> = T;
/** All pairs at once: a name in here would not compile. */
export type NoPairClashes = None<Clashing>;

// @ts-expect-error kilopascals are no millimetres of mercury
export const kPaAsMmHg: MmHg = a.KPa;
// @ts-expect-error centimetres of water are no millimetres of mercury
export const cmH2OAsMmHg: MmHg = a.CmH2O;
// @ts-expect-error millimetres of mercury are no kilopascals
export const mmHgAsKPa: KPa = a.MmHg;
// @ts-expect-error a rate is no percentage
export const perMinAsPercent: Percent = a.PerMin;
// @ts-expect-error a percentage is no fraction
export const percentAsFraction: Fraction = a.Percent;
// @ts-expect-error a fraction is no percentage
export const fractionAsPercent: Percent = a.Fraction;
// @ts-expect-error a height is no weight
export const cmAsKg: Kg = a.Cm;
// @ts-expect-error millimetres are no centimetres
export const mmAsCm: Cm = a.Mm;
// @ts-expect-error an age is no weight
export const yearsAsKg: Kg = a.Years;
// @ts-expect-error an angle is no temperature
export const degreesAsCel: Cel = a.Degrees;
// @ts-expect-error a temperature is no angle
export const celAsDegrees: Degrees = a.Cel;
// @ts-expect-error a concentration is no score
export const mmolPerLAsScore: Score = a.MmolPerL;
// @ts-expect-error a score is no age
export const scoreAsYears: Years = a.Score;
// @ts-expect-error litres are no millilitres
export const lAsMl: Ml = a.L;
// @ts-expect-error millilitres are no litres
export const mlAsL: L = a.Ml;
// @ts-expect-error a flow in litres is none in millilitres
export const lPerMinAsMlPerMin: MlPerMin = a.LPerMin;
// @ts-expect-error a flow is no volume
export const mlPerMinAsMl: Ml = a.MlPerMin;
// @ts-expect-error a volume for each kilogram is no volume
export const mlPerKgAsMl: Ml = a.MlPerKg;
// @ts-expect-error minutes are no seconds
export const minutesAsSeconds: Seconds = a.Minutes;
// @ts-expect-error seconds are no minutes
export const secondsAsMinutes: Minutes = a.Seconds;
// @ts-expect-error an index of the mean is none of the systolic
export const modifiedAsShockIndex: ShockIndex = a.ModifiedShockIndex;
// @ts-expect-error an unchecked number is no weight
export const unchecked: Kg = 80;

export const systolic: MmHg = {} as VitalQuantity<"sbp">;
export const age: Years = {} as VitalQuantity<"age">;
// @ts-expect-error a heart rate is no pressure
export const heartRate: MmHg = {} as VitalQuantity<"hr">;
