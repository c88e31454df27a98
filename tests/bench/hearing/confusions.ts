import type { Cell, Table } from "../report.ts";
import type { Saying } from "./saying.ts";

const WORST = 20;

/** Where two word sequences differ: what is left when the words they share at both ends are taken away. */
export function difference(said: string, heard: string): readonly [said: string, heard: string] {
  const [a, b] = [said.split(" "), heard.split(" ")];
  const shortest = Math.min(a.length, b.length);
  let from = 0;
  while (from < shortest && a[from] === b[from]) from++;
  let back = 0;
  while (back < shortest - from && a[a.length - 1 - back] === b[b.length - 1 - back]) back++;
  const middle = (words: readonly string[]): string => words.slice(from, words.length - back).join(" ") || "–";
  return [middle(a), middle(b)];
}

/** What was most often heard for what, meanings that are equal left out; and what the app made of it. */
export function confusionTable(sayings: readonly Saying[]): Table {
  const found = new Map<string, Saying[]>();
  for (const s of sayings) {
    const [only, ...more] = s.utterances;
    if (only === undefined || more.length > 0 || only.isRight || only.heard === "") continue;
    const key = difference(s.said, only.heard).join(" → ");
    found.set(key, [...(found.get(key) ?? []), s]);
  }
  const rows = [...found]
    .sort(([, a], [, b]) => b.length - a.length || wrongs(b) - wrongs(a))
    .slice(0, WORST)
    .map(([key, some]): readonly Cell[] => [
      key,
      some.length,
      wrongs(some),
      some.filter((s) => s.outcome === "askedRight").length,
      some.filter((s) => s.outcome === "askedWrong").length,
      some.filter((s) => s.outcome === "refused" || s.outcome === "silent").length,
      `${some[0]!.said} → ${some[0]!.utterances[0]!.heard}`,
    ]);
  return {
    title: "The worst confusions",
    notes: ["Statements in all conditions: the words in which what was heard first differs from what was said."],
    columns: ["said → heard", "n", "TAKEN", "asked, right offered", "asked, right missing", "not acted on", "example"],
    rows,
  };
}

const wrongs = (sayings: readonly Saying[]): number => sayings.filter((s) => s.outcome === "wrong").length;
