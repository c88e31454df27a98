import type { Limits } from "../core/quantity.ts";

/** The way to one value in a protocol file: keys, and numbers of list entries from 0. */
export type Place = readonly (string | number)[];

/** One thing that is wrong, and where. */
export type Fault = { readonly at: Place; readonly message: string };
export type Faults = readonly Fault[];

export const when = (wrong: boolean, at: Place, message: string): Faults => (wrong ? [{ at, message }] : []);

export function within({ min, max }: Limits, value: number, at: Place): Faults {
  return when(value < min || value > max, at, `${value} is outside ${min} to ${max}`);
}

/** Lowest to highest, the ends included. */
type Range = { readonly low: number; readonly high: number };

export const lowToHigh = ({ low, high }: Range, at: Place): Faults =>
  when(high < low, [...at, "high"], `${high} is below the low end of ${low}`);

export const rangeWithin = (limits: Limits, range: Range, at: Place): Faults => [
  ...within(limits, range.low, [...at, "low"]),
  ...within(limits, range.high, [...at, "high"]),
  ...lowToHigh(range, at),
];

/** A name that must stand only once, and where each one stands. */
export type Named = { readonly name: string; readonly at: Place };

/** One fault for each name that was there before. */
export function unique(all: readonly Named[], what: string): Faults {
  const first = new Map<string, Place>();
  return all.flatMap(({ name, at }) => {
    const before = first.get(name);
    if (before === undefined) first.set(name, at);
    return before === undefined ? [] : [{ at, message: `${what} "${name}" is used at ${pathText(before)} already` }];
  });
}

const PLAIN_KEY = /^[A-Za-z_$][\w$]*$/u;

/** "drugs[3].doses[0].cap". A key that is no plain word is quoted: `timers["re announce"]`. */
export function pathText(at: Place): string {
  return at
    .map((key, i) => {
      if (typeof key === "number") return `[${key}]`;
      if (!PLAIN_KEY.test(key)) return `[${JSON.stringify(key)}]`;
      return i === 0 ? key : `.${key}`;
    })
    .join("");
}
