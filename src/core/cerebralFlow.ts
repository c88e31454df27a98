import type { PaCo2 } from "./carbonDioxide.ts";
import { quantityOf, type Percent, type Quantity } from "./quantity.ts";

export type PctPerMmHg = Quantity<"%/mmHg">;

/** How steeply flow follows CO2. The limits are this project's entry check. */
export const pctPerMmHg = quantityOf<"%/mmHg">({ min: 0, max: 10 });

/** How flow answers to CO2: so much for each mmHg, and not at all outside a range. */
export type Co2Response = {
  readonly slopePctPerMmHg: PctPerMmHg;
  readonly fromMmHg: PaCo2;
  readonly toMmHg: PaCo2;
};

/** A change out of a model: about, never measured. */
export type ModelChange = { readonly kind: "model"; readonly percent: Percent };

/**
 * About how much cerebral blood flow changes with arterial CO2: for teaching what hyperventilation costs.
 *
 * @param before   PaCO2, mmHg.
 * @param after    PaCO2, mmHg.
 * @param response slope, % per mmHg, and the range in which it holds, mmHg; pressures outside count as its nearer end.
 * @returns        slope × (after − before), %, unrounded, marked as a model's; negative for a fall, never below −100.
 *
 * Not for: any patient's flow. The slope varies between people, and an injured brain may not answer.
 * Source: linear response about a normal PaCO2, from memory.
 */
export function cerebralFlowChange(before: PaCo2, after: PaCo2, response: Co2Response): ModelChange {
  const { slopePctPerMmHg, fromMmHg, toMmHg } = response;
  const within = (mmHg: number): number => Math.min(Math.max(mmHg, fromMmHg), toMmHg);
  const change = Math.max(-100, slopePctPerMmHg * (within(after) - within(before)));
  return { kind: "model", percent: change as Percent };
}
