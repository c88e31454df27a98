/** A leaf of a JSON file and the way to it. */
export type Leaf = { readonly path: readonly (string | number)[]; readonly value: string | number | boolean };

export function leavesOf(node: unknown, path: readonly (string | number)[] = []): readonly Leaf[] {
  if (Array.isArray(node)) return node.flatMap((each, i) => leavesOf(each, [...path, i]));
  if (typeof node === "object" && node !== null)
    return Object.entries(node).flatMap(([key, each]) => leavesOf(each, [...path, key]));
  if (typeof node === "string" || typeof node === "number" || typeof node === "boolean") return [{ path, value: node }];
  throw new Error(`no leaf: ${String(node)} at ${path.join(".")}`);
}

type Container = Record<string | number, unknown>;

/** The group or list that holds the last key of a path, in a file that may be changed. */
export const holderOf = (file: unknown, path: readonly (string | number)[]): Container =>
  path.slice(0, -1).reduce<unknown>((node, key) => (node as Container)[key], file) as Container;

/** A copy of the file in which one entry is another. */
export function withEntry<T>(file: T, path: readonly (string | number)[], value: unknown): T {
  const copy = structuredClone(file);
  holderOf(copy, path)[path.at(-1)!] = value;
  return copy;
}

/** A copy of the file without one entry. */
export function withoutEntry<T>(file: T, path: readonly (string | number)[]): T {
  const copy = structuredClone(file);
  const holder = holderOf(copy, path);
  const key = path.at(-1)!;
  if (Array.isArray(holder)) holder.splice(Number(key), 1);
  else delete holder[key];
  return copy;
}
