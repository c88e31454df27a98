import type { Fact } from "../../src/log/facts.ts";

type Recorded = Extract<Fact, { type: "vital.recorded" }> & { readonly seq: number };
/** One value of what a protocol watches, recorded or worked out; `atMs` of its newest part. */
export type Reading = { readonly value: number; readonly atMs: number };

/** Values said so far that were not struck, in the order in which they were said. The judge's own book, not the app's. */
export class Readings {
  #facts: Recorded[] = [];
  #seq = 0;

  take(fact: Fact): void {
    this.#seq += 1;
    if (fact.type === "vital.recorded") this.#facts.push({ ...fact, seq: this.#seq });
    if (fact.type === "entry.struck") this.#facts = this.#facts.filter(({ id }) => !fact.targetIds.includes(id));
  }

  latest(code: string): number | undefined {
    return this.#facts.findLast((f) => f.code === code)?.value;
  }

  #of(code: string): readonly Recorded[] {
    return this.#facts.filter((f) => f.code === code);
  }

  /** Mean pressures: one that was measured before one worked out of the pair that was said in the same breath. */
  #means(): readonly (Reading & { readonly seq: number; readonly sbp: number | undefined })[] {
    const breaths = new Map<string, Recorded[]>();
    for (const fact of this.#facts) breaths.set(fact.readingId, [...(breaths.get(fact.readingId) ?? []), fact]);
    return [...breaths.values()].flatMap((breath) => {
      const of = (code: string): Recorded | undefined => breath.findLast((f) => f.code === code);
      const [map, sbp, dbp] = [of("map"), of("sbp"), of("dbp")];
      const last = map ?? sbp;
      if (last === undefined || (map === undefined && dbp === undefined)) return [];
      const value = map?.value ?? (sbp!.value + 2 * dbp!.value) / 3;
      return [{ value, atMs: last.atMs, seq: last.seq, sbp: sbp?.value }];
    });
  }

  /** All values of one thing that is watched, oldest first. */
  history(code: string, lowestIcpMmHg: number): readonly Reading[] {
    if (code === "map") return this.#means();
    if (code === "cppBound")
      return this.#of("icp").length > 0
        ? []
        : this.#means().map(({ value, atMs }) => ({ value: value - lowestIcpMmHg, atMs }));
    if (code !== "cpp") return this.#of(code);
    let mean: number | undefined;
    let icp: number | undefined;
    const parts = [
      ...this.#means().map(({ value, atMs, seq }) => ({ mean: value, icp: undefined, atMs, seq })),
      ...this.#of("icp").map(({ value, atMs, seq }) => ({ mean: undefined, icp: value, atMs, seq })),
    ].sort((a, b) => a.seq - b.seq);
    return parts.flatMap((part) => {
      mean = part.mean ?? mean;
      icp = part.icp ?? icp;
      return mean === undefined || icp === undefined ? [] : [{ value: mean - icp, atMs: part.atMs }];
    });
  }

  /** Whether the last mean still holds: a systolic said alone after it may show that it does not. */
  meanHolds(apartMmHg: number): boolean {
    const mean = this.#means().at(-1);
    const sbp = this.#of("sbp").at(-1);
    if (mean === undefined) return false;
    if (sbp === undefined || sbp.seq <= mean.seq || sbp.value === mean.sbp) return true;
    return mean.value < sbp.value && (mean.sbp === undefined || Math.abs(sbp.value - mean.sbp) <= apartMmHg);
  }
}
