import type { CaseState } from "../../../log/caseState.ts";
import type { Question, RateWanted } from "../../../log/facts.ts";
import type { Protocol } from "../../../protocol/protocol.ts";
import { recipesFor } from "../../../protocol/findStrengths.ts";
import type { StockAsked } from "./decideMake.ts";

/** What the newest question would have told of a drug, fluid or dilution: by what it wants, or by what it read back. */
export type DrugAsked =
  | { readonly kind: "strength"; readonly drugId: string; readonly forRate: RateWanted | undefined }
  | ({ readonly kind: "stock" } & StockAsked)
  | { readonly kind: "amount" | "rate"; readonly drugId: string }
  | { readonly kind: "fluid"; readonly fluidId: string };

/** A read-back that is said otherwise is said anew: "ketamine sixty given?" "fifty". */
function readBackOf(protocol: Protocol, { acts = [] }: Question): DrugAsked | undefined {
  const [act, ...others] = acts;
  const [fact] = act?.kind === "record" && others.length === 0 ? act.facts : [];
  if (act?.kind !== "record" || fact === undefined) return undefined;
  switch (fact.type) {
    case "strength.affirmed":
      return { kind: "strength", drugId: fact.drugId, forRate: act.forRate };
    case "drug.given":
      return { kind: "amount", drugId: fact.drugId };
    case "infusion.set":
      return fact.rate.value === 0 ? undefined : { kind: "rate", drugId: fact.drugId };
    case "fluid.given":
      return { kind: "fluid", fluidId: fact.fluidId };
    case "recipe.started": {
      const purpose = (["pushDose", "infusion"] as const).find((one) =>
        recipesFor(protocol, fact.drugId, one).some(({ id }) => id === fact.recipeId),
      );
      return { kind: "stock", drugId: fact.drugId, purpose: purpose ?? "any" };
    }
    case "rescue.started":
      return undefined;
  }
}

/** What an answer without a name is about: only the newest question, never an older one. */
export function drugAsked(protocol: Protocol, { questions: [question] }: CaseState): DrugAsked | undefined {
  const wants = question?.wants;
  if (question === undefined) return undefined;
  switch (wants?.kind) {
    case undefined:
      return readBackOf(protocol, question);
    case "strength":
      return { kind: "strength", drugId: wants.drugId, forRate: wants.forRate };
    case "stock":
      return wants;
    case "amount":
    case "amountUnit":
      return { kind: "amount", drugId: wants.drugId };
    case "rate":
    case "rateUnit":
      return { kind: "rate", drugId: wants.drugId };
    case "stepValue":
    case "caseLabel":
      return undefined;
  }
}
