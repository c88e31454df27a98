import type { Procedure } from "@medplum/fhirtypes";
import type { Fact } from "../../log/facts.ts";
import { own } from "./codes.ts";
import { concept, notes, period, type Context, type Exported } from "./elements.ts";
import { resourceId } from "./resourceId.ts";

type Start = Extract<Fact, { readonly type: "rescue.started" }>;
/** The measures from one start to their end; none while they run. A struck start has none and is no rescue. */
export type Rescue = { readonly start: Start; readonly endMs: number | undefined; readonly struck: boolean };

/** "No herniation" ends them as "end rescue" does. */
const ends = (fact: Fact): boolean =>
  fact.type === "rescue.ended" || (fact.type === "herniation.recorded" && !fact.present);

/** Every start of the time-limited measures against herniation, oldest first. A start while they run is none anew. */
export function rescuesOf({ recorded: { facts, struckIds } }: Context): readonly Rescue[] {
  const rescues: Rescue[] = [];
  let running: number | undefined;
  for (const fact of facts) {
    const struck = struckIds.has(fact.id);
    if (fact.type === "rescue.started" && (struck || running === undefined)) {
      if (!struck) running = rescues.length;
      rescues.push({ start: fact, endMs: undefined, struck });
    } else if (!struck && running !== undefined && ends(fact)) {
      rescues[running] = { ...rescues[running]!, endMs: fact.atMs };
      running = undefined;
    }
  }
  return rescues;
}

/** Each rescue as one `Procedure`; the answers to its list are part of it. */
export const rescues = (context: Context): readonly Exported<Procedure>[] =>
  rescuesOf(context).map(({ start, endMs, struck }) => {
    const status = endMs === undefined ? "in-progress" : "completed";
    const resource: Procedure = {
      resourceType: "Procedure",
      id: resourceId(start.id),
      ...context.meta,
      status: struck ? "entered-in-error" : status,
      code: concept("Time-limited measures against herniation", own("herniationRescue")),
      subject: context.subject,
      encounter: context.encounter,
      performedPeriod: period(context, start.atMs, endMs),
      ...notes(context, start),
    };
    return { resource, origins: ["spoken"] };
  });
