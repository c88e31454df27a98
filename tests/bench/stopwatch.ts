/** The value that a share `q` of all are not above (nearest rank). */
export function quantile(values: readonly number[], q: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil(q * sorted.length) - 1))] ?? NaN;
}

/** Milliseconds as a table shows them. */
export const ms = (value: number): string => value.toFixed(value < 10 ? 2 : 0);

/** Times by the name of their stage. */
export class Stopwatches {
  readonly #spent = new Map<string, number[]>();
  async time<T>(stage: string, work: () => T | Promise<T>): Promise<T> {
    const startedMs = performance.now();
    const result = await work();
    this.add(stage, performance.now() - startedMs);
    return result;
  }
  add(stage: string, spentMs: number): void {
    this.#spent.set(stage, [...(this.#spent.get(stage) ?? []), spentMs]);
  }
  of(stage: string): readonly number[] {
    return this.#spent.get(stage) ?? [];
  }
}
