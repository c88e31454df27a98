import type { PressureOffer } from "../../rules/pressureOffer.ts";
import { sayDoseUnit } from "./doseUnit.ts";
import { sayNumber } from "./number.ts";
import { sentences } from "./sentence.ts";

/** What lies ready against a falling pressure, as a reminder: "Push dose phenylephrine ready." */
export function sayPressureOffer(offer: PressureOffer): string {
  switch (offer.kind) {
    case "pushDose":
      return sentences(`push dose ${offer.drug} ready`);
    case "infusion":
      return sentences(`${offer.drug} at ${sayNumber(offer.rate.value, 2)} ${sayDoseUnit(offer.rate.unit)}`);
    case "volume":
      return sentences("fluid?", "bleeding?");
  }
}
