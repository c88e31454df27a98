import { parseArgs } from "node:util";
import type { SetName } from "./hearing/speakers.ts";

/** Parts that can be measured alone, and how many statements a condition (or pairs listed) each then takes. */
const PARTS = {
  hearing: { full: 2_000, quick: 60 },
  called: { full: 150, quick: 30 },
  confusable: { full: 60, quick: 20 },
  teenTy: { full: 300, quick: 20 },
  fit: { full: 0, quick: 0 },
  task: { full: 1_000, quick: 50 },
  second: { full: 310, quick: 20 },
  speed: { full: 5_000, quick: 300 },
  list: { full: 0, quick: 0 },
  voice: { full: 100, quick: 20 },
  alerts: { full: 6, quick: 2 },
  bargein: { full: 60, quick: 8 },
} as const;
type Part = keyof typeof PARTS;

export type BenchOptions = {
  readonly quick: boolean;
  readonly seed: number;
  /** Only this, at length. Undefined: everything else. */
  readonly part: Part | undefined;
  /** For a part: statements a condition. */
  readonly count: number;
  readonly set: SetName;
};

/** Wrong options throw with a line for the user. */
export function readOptions(args: readonly string[]): BenchOptions {
  const { values, positionals } = parseArgs({
    args: [...args],
    allowPositionals: true,
    options: {
      quick: { type: "boolean", default: false },
      seed: { type: "string", default: "1" },
      n: { type: "string" },
      set: { type: "string", default: "test" },
    },
  });
  const whole = (name: string, text: string): number => {
    const value = Number(text);
    if (!Number.isSafeInteger(value) || value < 0) throw new Error(`--${name} must be a whole number, not "${text}"`);
    return value;
  };
  const { quick, set } = values;
  if (set !== "tuning" && set !== "test") throw new Error(`--set is "tuning" or "test", not "${set}"`);
  const [named, ...others] = positionals;
  const part = (Object.keys(PARTS) as Part[]).find((name) => name === named);
  if (others.length > 0 || part !== named)
    throw new Error(`the parts are ${Object.keys(PARTS).join(", ")}, not "${positionals.join(" ")}"`);
  return {
    quick,
    seed: whole("seed", values.seed),
    part,
    count: values.n === undefined ? PARTS[part ?? "hearing"][quick ? "quick" : "full"] : whole("n", values.n),
    set,
  };
}
