import type { WeightKind } from "../../core/weight.ts";
import { sayMl, sayMlOnce } from "./amount.ts";
import { sayExactly, sayNumber } from "./number.ts";
import { sentences } from "./sentence.ts";

/** For each kilogram, where a weight is known; a guessed one is named. */
export type PerKilo = { readonly mlPerKg: number; readonly weight: WeightKind };

/** "isotonic crystalloid" as it is said. */
type Fluid = { readonly label: string };

const sayPerKilo = ({ mlPerKg, weight }: PerKilo): string =>
  `${sayNumber(mlPerKg, mlPerKg < 10 ? 1 : 0)} per kilo${weight === "estimated" ? ", weight estimated" : ""}`;

/** @param most what the protocol gives at once, where this is over it: mL, or mL for each kilogram of a child. */
export const askFluid = (
  { label }: Fluid,
  volumeMl: number,
  most: { readonly value: number; readonly perKilo: boolean } | undefined,
): string =>
  sentences(
    `${label}, ${sayMl(volumeMl)}?`,
    most && `Over the protocol's ${sayExactly(most.value)}${most.perKilo ? " per kilo" : ""}`,
  );

/** "Isotonic crystalloid five hundred millilitres in all, six per kilo." */
export const sayFluidTotal = ({ label }: Fluid, totalMl: number, perKilo: PerKilo | undefined): string =>
  sentences(
    totalMl === 0
      ? `No ${label} given`
      : [`${label} ${sayMlOnce(totalMl)} in all`, ...(perKilo ? [sayPerKilo(perKilo)] : [])].join(", "),
  );
