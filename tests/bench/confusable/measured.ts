import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { ROOT } from "../lab.ts";
import { pairKey } from "./pairKey.ts";

type Heard = { readonly words?: string; readonly said?: string; readonly heard?: string };

/** What the bench heard for what was said, from the reports of its last runs, whichever there are. */
function sayings(): readonly Heard[] {
  const read = (name: string): unknown => {
    const file = join(ROOT, "bench", name);
    return existsSync(file) ? JSON.parse(readFileSync(file, "utf8")) : undefined;
  };
  const full = read("full.json") as { readonly trials?: readonly Heard[] } | undefined;
  return [...(full?.trials ?? []), ...((read("evidence-test.json") as readonly Heard[] | undefined) ?? [])];
}

/** How often one sequence of words was heard for another, either way round; only of sayings that were all but right. */
export function measuredPairs(): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { words, said = words ?? "", heard = "" } of sayings()) {
    if (said === "" || heard === "" || said === heard) continue;
    const differ = onlyDifference(said.split(" "), heard.split(" "));
    if (differ === undefined) continue;
    const key = pairKey(...differ);
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return counts;
}

const MAX_WORDS = 3;

/** The words between what both begin with and what both end with, one of each side at least. */
function onlyDifference(
  said: readonly string[],
  heard: readonly string[],
): readonly [readonly string[], readonly string[]] | undefined {
  const shorter = Math.min(said.length, heard.length);
  let before = 0;
  while (before < shorter - 1 && said[before] === heard[before]) before++;
  let after = 0;
  while (after < shorter - before - 1 && said.at(-1 - after) === heard.at(-1 - after)) after++;
  const differ = [said, heard].map((words) => words.slice(before, words.length - after));
  return differ.every((words) => words.length <= MAX_WORDS) ? [differ[0]!, differ[1]!] : undefined;
}
