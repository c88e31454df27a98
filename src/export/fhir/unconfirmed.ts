import type { Communication } from "@medplum/fhirtypes";
import type { Fact } from "../../log/facts.ts";
import { tellWords } from "../verbatim.ts";
import { own } from "./codes.ts";
import { concept, type Context, type Exported } from "./elements.ts";
import { resourceId } from "./resourceId.ts";

const NOT_TOLD = "Words left out: an age may be in them.";

/**
 * Statements that nobody confirmed, as a `Communication` with the words alone. Not as a preliminary Observation: whoever
 * asks a server for values by their code would get one that may never have been meant.
 */
export function unconfirmed(context: Context): readonly Exported<Communication>[] {
  const { facts } = context.recorded;
  const closed = new Map(facts.flatMap((f) => (f.type === "question.closed" ? [[f.questionId, f.outcome]] : [])));
  return facts.flatMap((fact: Fact): readonly Exported<Communication>[] => {
    if (fact.type !== "question.asked") return [];
    const { id, heard, prompt } = fact.question;
    const outcome = closed.get(id);
    if (outcome !== undefined && outcome !== "unconfirmed") return [];
    const words = [heard, prompt].map((text) => tellWords(text) ?? NOT_TOLD);
    const resource: Communication = {
      resourceType: "Communication",
      id: resourceId(fact.id),
      ...context.meta,
      status: outcome === undefined ? "in-progress" : "completed",
      category: [concept("Statement that nobody confirmed: it counts for nothing", own("unconfirmed"))],
      subject: context.subject,
      encounter: context.encounter,
      sent: context.time(fact.atMs),
      payload: words.map((contentString) => ({ contentString })),
    };
    return [{ resource, origins: ["spoken"] }];
  });
}
