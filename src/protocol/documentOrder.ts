import type { Fault, Faults, Place } from "./fault.ts";

/** Where a key stands among its neighbours in the file; one that is missing there comes after them. */
function position(holder: unknown, key: string | number): number {
  if (typeof key === "number") return key;
  if (typeof holder !== "object" || holder === null) return 0;
  const index = Object.keys(holder).indexOf(key);
  return index < 0 ? Number.MAX_SAFE_INTEGER : index;
}

function positions(file: unknown, at: Place): readonly number[] {
  let holder = file;
  return at.map((key) => {
    const here = position(holder, key);
    holder = (holder as Readonly<Record<string | number, unknown>> | null | undefined)?.[key];
    return here;
  });
}

function compare(a: readonly number[], b: readonly number[]): number {
  const differs = a.findIndex((n, i) => n !== b[i]);
  return differs < 0 ? a.length - b.length : (a[differs] ?? 0) - (b[differs] ?? -1);
}

/** Faults in the order in which a reader of the file comes to them. */
export function inDocumentOrder(file: unknown, faults: Faults): Faults {
  const placed = faults.map((fault): [Fault, readonly number[]] => [fault, positions(file, fault.at)]);
  return placed.sort(([, a], [, b]) => compare(a, b)).map(([fault]) => fault);
}
