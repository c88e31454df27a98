import type { Fact } from "../log/facts.ts";
import type { RecordedCase } from "./recordedCase.ts";

export type InfusionFact = Extract<Fact, { readonly type: "infusion.set" }>;

/** An infusion at one rate: from the fact that set it to the next setting of the same drug. */
export type InfusionSegment = {
  readonly fact: InfusionFact;
  /** Unix ms; none while it runs, and none of one that was struck. */
  readonly untilMs: number | undefined;
  readonly struck: boolean;
};

/** All segments in the order in which they began. A stop ends one and is none itself, unless it was struck. */
export function infusionSegments({ facts, struckIds }: Pick<RecordedCase, "facts" | "struckIds">) {
  const segments: InfusionSegment[] = [];
  const running = new Map<string, number>();
  for (const fact of facts) {
    if (fact.type !== "infusion.set") continue;
    const struck = struckIds.has(fact.id);
    const before = running.get(fact.drugId);
    if (!struck && before !== undefined) {
      segments[before] = { ...segments[before]!, untilMs: fact.atMs };
      running.delete(fact.drugId);
    }
    if (!struck && fact.rate.value === 0) continue;
    if (!struck) running.set(fact.drugId, segments.length);
    segments.push({ fact, untilMs: undefined, struck });
  }
  return segments as readonly InfusionSegment[];
}
