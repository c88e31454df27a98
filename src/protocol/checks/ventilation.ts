import { VITALS } from "../../core/vitals.ts";
import { lowToHigh, rangeWithin, when, within, type Faults } from "../fault.ts";
import type { Protocol } from "../protocol.ts";

const RATES = ["adult", "child", "infant"] as const;

function checkVentilator({ ventilation }: Protocol): Faults {
  const { tidalMlPerKg, startRatePerMin, deadSpaceMlPerKg, herniationRatePerMin } = ventilation;
  const { low, usual, high } = tidalMlPerKg.value;
  const tidal = ["ventilation", "tidalMlPerKg", "value"];
  const { limits } = VITALS.rr;
  return [
    ...when(usual < low, [...tidal, "usual"], `${usual} mL/kg is below the low end of ${low} mL/kg`),
    ...when(high < usual, [...tidal, "high"], `${high} mL/kg is below the usual ${usual} mL/kg`),
    ...rangeWithin(limits, startRatePerMin.value, ["ventilation", "startRatePerMin", "value"]),
    ...when(
      deadSpaceMlPerKg.value >= low,
      ["ventilation", "deadSpaceMlPerKg", "value"],
      `${deadSpaceMlPerKg.value} mL/kg leaves nothing of the smallest breath of ${low} mL/kg`,
    ),
    ...RATES.flatMap((who) =>
      within(limits, herniationRatePerMin[who].value, ["ventilation", "herniationRatePerMin", who, "value"]),
    ),
  ];
}

/** Breaths that are possible, tubes and cuffs whose ranges are the right way round. */
export function checkVentilation(protocol: Protocol): Faults {
  const { female, male, cuffCmH2O } = protocol.tubes;
  return [
    ...checkVentilator(protocol),
    ...lowToHigh(female.sizeMm.value, ["tubes", "female", "sizeMm", "value"]),
    ...lowToHigh(male.sizeMm.value, ["tubes", "male", "sizeMm", "value"]),
    ...lowToHigh(cuffCmH2O.adult.value, ["tubes", "cuffCmH2O", "adult", "value"]),
    ...lowToHigh(cuffCmH2O.child.value, ["tubes", "cuffCmH2O", "child", "value"]),
  ];
}
