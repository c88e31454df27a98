import { parseArgs } from "node:util";

export type BenchOptions = {
  readonly quick: boolean;
  readonly thresholds: boolean;
  readonly seed: number;
};

/** Wrong options throw with a line for the user. */
export function readOptions(args: readonly string[]): BenchOptions {
  const { values } = parseArgs({
    args: [...args],
    options: {
      quick: { type: "boolean", default: false },
      thresholds: { type: "boolean", default: false },
      seed: { type: "string", default: "1" },
    },
  });
  const seed = Number(values.seed);
  if (!Number.isSafeInteger(seed) || seed < 0) throw new Error(`--seed must be a whole number, not "${values.seed}"`);
  return { quick: values.quick, thresholds: values.thresholds, seed };
}
