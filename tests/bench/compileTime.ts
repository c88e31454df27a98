import { compileGrammars } from "../../src/app/compileGrammars.ts";
import { readGrammarSources } from "../../src/cli/readGrammars.ts";
import { searchesFor, searchFor } from "./lab.ts";
import type { Cell, Table } from "./report.ts";
import { ms, quantile } from "./stopwatch.ts";

/** How long it takes to make the grammars ready. */
export function compileTable(): Table {
  const timed = (name: string, work: () => unknown): readonly Cell[] => {
    const spent = [1, 2, 3, 4, 5].map(() => {
      const startedMs = performance.now();
      work();
      return performance.now() - startedMs;
    });
    return [name, spent.length, ms(quantile(spent, 0.5)), ms(Math.max(...spent))];
  };
  const sources = readGrammarSources();
  return {
    title: "Grammars made ready",
    notes: [],
    columns: ["what", "n", "median ms", "slowest ms"],
    rows: [
      timed("text matcher, both states", () => compileGrammars(sources)),
      timed("acoustic search, open and asked together, as at the start", () => searchesFor("case", ["open", "asked"])),
      timed("acoustic search, open alone (files to phone graph)", () => searchFor("case", "open")),
      timed("acoustic search, numbers", () => searchFor("numbers", "number")),
    ],
  };
}
