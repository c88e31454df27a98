import type { NewFact } from "../log/facts.ts";
import type { Provenance } from "./decide/stamp.ts";
import type { Interpretation } from "./interpret.ts";

/** What goes into the record with what was heard: how sure the recogniser was, and whether it was affirmed. */
export function provenanceOf(heard: Interpretation, said: readonly NewFact[]): Provenance {
  const isAffirmed = said.some((fact) => fact.type === "question.closed" && fact.outcome === "affirmed");
  const certainty = "certainty" in heard ? { certainty: heard.certainty } : {};
  return { ...certainty, confirmation: isAffirmed ? "affirmed" : "readBack" };
}
