import { readDictionary } from "../../../src/cli/readGrammars.ts";
import { parseDictionary } from "../../../src/listener/dictionary.ts";
import { loadContext } from "../../../src/cli/loadContext.ts";
import type { BenchOptions } from "../options.ts";
import { machine, toMarkdown, writeReport, type Cell, type Table } from "../report.ts";
import { findConfusions, perPhone, BUDGET, type Confusion } from "./findConfusions.ts";
import { measuredPairs } from "./measured.ts";

/** Lists the most confusable pairs of the whole language, by phones and by what was measured. */
export async function runConfusable({ count }: BenchOptions, progress: (text: string) => void): Promise<void> {
  const startedMs = performance.now();
  const context = await loadContext({});
  const dictionary = parseDictionary(readDictionary());
  if (!context.ok || !dictionary.ok) throw new Error("the language does not load");
  const measured = measuredPairs();
  const confusions = findConfusions(context.value, dictionary.value, progress);
  const row = ({ pair, distance, places, worst, example }: Confusion): readonly Cell[] => [
    pair.replace(" | ", " / "),
    distance.toFixed(2),
    places,
    measured.get(pair) ?? 0,
    worst,
    example,
  ];
  const columns = ["pair", "distance a phone", "kinds of place", "measured", "a slip is", "for example"];
  const near = new Set(confusions.map(({ pair }) => pair));
  const far = [...measured].filter(([pair]) => !near.has(pair)).sort(([, a], [, b]) => b - a);
  const tables: readonly Table[] = [
    {
      title: "Most confusable pairs",
      notes: [
        `By phones: 0 alike, 1 nothing in common; pairs that differ by ${BUDGET} or less in all.`,
        `Measured: how often one was heard for the other, whatever came of it, in the reports in bench/ (${measured.size} pairs).`,
        `A slip is "value": whichever is heard is recorded without a question; "value one way": so is one of the two; "asked"; or "command". Judged in a case without readings.`,
      ],
      columns,
      rows: confusions.slice(0, count).map(row),
    },
    {
      title: "Those in which a value would be wrong and nobody asked",
      notes: [],
      columns,
      rows: confusions
        .filter(({ worst }) => worst === "value" || worst === "value one way")
        .slice(0, count)
        .map(row),
    },
    {
      title: "Measured, but further apart by phones, or of one meaning",
      notes: [],
      columns: ["pair", "distance a phone", "measured"],
      rows: far.slice(0, count).flatMap(([pair, times]) => {
        const distance = perPhone(dictionary.value, pair);
        return distance === undefined ? [] : [[pair.replace(" | ", " / "), distance.toFixed(2), times]];
      }),
    },
  ];
  for (const table of tables) process.stdout.write(`${toMarkdown(table)}\n\n`);
  const tookS = Math.round((performance.now() - startedMs) / 1000);
  const info = { date: new Date().toISOString(), machine: machine(), options: "confusable", tookS };
  writeReport("confusable", info, tables, { confusions });
}
