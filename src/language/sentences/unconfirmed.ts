import { VITALS } from "../../core/vitals.ts";
import type { AffirmedFact } from "../../log/facts.ts";
import type { Unconfirmed } from "../../log/unconfirmed.ts";
import { sayAmountSafely, sayRateOnce } from "./amount.ts";
import { showAmount } from "./number.ts";
import { showDose } from "./shownDose.ts";

/** How numbers are put into words: aloud or printed. */
type Numbers = {
  readonly amount: typeof sayAmountSafely;
  readonly rate: typeof sayRateOnce;
  readonly ml: (volumeMl: number) => string;
  readonly name: "spokenName" | "label";
};
type NameOf = (id: string) => string;

function factWords(fact: AffirmedFact, nameOf: NameOf, { amount, rate, ml }: Numbers): string {
  switch (fact.type) {
    case "drug.given":
      return `${nameOf(fact.drugId)} ${amount(fact.amount)}`;
    case "infusion.set":
      return fact.rate.value === 0 ? `${nameOf(fact.drugId)} stopped` : `${nameOf(fact.drugId)} ${rate(fact.rate)}`;
    case "fluid.given":
      return `${nameOf(fact.fluidId)} ${ml(fact.volumeMl)}`;
    default:
      return "";
  }
}

const unconfirmedWords =
  (numbers: Numbers) =>
  ({ what }: Unconfirmed, nameOf: NameOf): string => {
    switch (what.kind) {
      case "facts":
        return what.facts
          .map((fact) => factWords(fact, nameOf, numbers))
          .filter((words) => words !== "")
          .join(" and ");
      case "drug":
        return `${nameOf(what.drugId)}, ${what.runs ? "rate" : "amount"} not known`;
      case "values":
        if (what.codes.includes("sbp") && what.codes.includes("dbp")) return "a pressure";
        return what.codes.map((code) => `a value of ${VITALS[code][numbers.name]}`).join(" and ");
      case "words":
        return what.words;
    }
  };

/** "Phenylephrine one hundred micrograms", "ketamine, amount not known", "a value of ICP". */
export const sayUnconfirmedStatement = unconfirmedWords({
  amount: sayAmountSafely,
  rate: sayRateOnce,
  ml: (value) => sayAmountSafely({ value, unit: "mL" }),
  name: "spokenName",
});

/** The same as printed: "phenylephrine 100 micrograms". */
export const showUnconfirmedStatement = unconfirmedWords({
  amount: showDose,
  rate: showDose,
  ml: (value) => `${showAmount(value)} mL`,
  name: "label",
});
