import { howTaken } from "../log/statements.ts";
import type { Fact } from "../log/facts.ts";
import type { RecordedCase } from "./recordedCase.ts";

export type TakenFact = Extract<Fact, { readonly type: "vital.recorded" | "finding.recorded" }>;

/** When it was taken, Unix ms: what corrects an older value is as old as that one. */
export const takenMs = (fact: Fact): number =>
  fact.type === "vital.recorded" ? (fact.corrects?.takenAtMs ?? fact.atMs) : fact.atMs;

/** Values and findings said in one breath and taken in one way, of each kind at most one; all of them struck, or none. */
export type Reading = { readonly struck: boolean; readonly facts: readonly [TakenFact, ...TakenFact[]] };

/** Which facts may stand together. The reaction of a pupil belongs to the pupil alone. */
function keyOf(fact: TakenFact, struck: boolean): string {
  const { reaction: _reaction, ...how } = fact.type === "vital.recorded" ? howTaken(fact) : {};
  return JSON.stringify([fact.readingId, struck, how]);
}

/** Everything measured or examined, in the order of the first value of each reading. */
export function readingsOf({ facts, struckIds }: Pick<RecordedCase, "facts" | "struckIds">): readonly Reading[] {
  const readings: { struck: boolean; facts: [TakenFact, ...TakenFact[]] }[] = [];
  const open = new Map<string, (typeof readings)[number]>();
  for (const fact of facts) {
    if (fact.type !== "vital.recorded" && fact.type !== "finding.recorded") continue;
    const struck = struckIds.has(fact.id);
    const key = keyOf(fact, struck);
    const reading = open.get(key);
    if (reading !== undefined && reading.facts.every(({ code }) => code !== fact.code)) reading.facts.push(fact);
    else {
      const begun: (typeof readings)[number] = { struck, facts: [fact] };
      open.set(key, begun);
      readings.push(begun);
    }
  }
  return readings;
}
