import { fail, ok, type Result } from "../../core/result.ts";
import { csvCells, csvHeaders } from "./csvColumns.ts";
import { csvLine } from "../../export/csv/writeCsv.ts";
import type { Progress } from "./progress.ts";
import { readCase, type ReadCaseOptions } from "./readCase.ts";
import { recordPaths } from "./recordPaths.ts";
import { ServiceFigures } from "./serviceFigures.ts";
import { fileWidth, printable, skippedRow, tableHead, tableRow } from "./table.ts";

/** Takes text and settles once there is room for more. */
export type Sink = (text: string) => Promise<void>;

export type Review = ReadCaseOptions & {
  readonly rehearsals: boolean;
  readonly print: Sink;
  /** Where the CSV goes, if one is wanted. */
  readonly csv?: Sink;
  readonly progressOf: (total: number) => Pick<Progress, "step" | "clear">;
};

const LEGEND = [
  "SBP, MAP, CPP, SpO2: the lowest around induction. Under SBP, MAP, CPP target: minutes / mmHg·min / minutes not known.",
  "Sedation: minutes after the tube. CO2 low: minutes under the band. BP low: hypotension after intubation. ?: not known.",
];

const HASH_SHOWN = 12;

function sayJudge({ judge: { mark } }: Review): string {
  const hash = mark.hash === undefined ? "" : `, ${mark.hash.slice(0, HASH_SHOWN)}`;
  return printable(`Judged by: ${mark.name}, version ${mark.version}${hash}.`);
}

/**
 * Reads every record of a folder, one at a time, and prints a row a case and then the figures of the service. Only the
 * names of the files and what `KeptCases` keeps of each case outlive its row.
 *
 * Errors: a sentence, where the folder cannot be read at all. A file that cannot is a row with the reason.
 */
export async function runReview(review: Review): Promise<Result<void, string>> {
  let found: ReturnType<typeof recordPaths>;
  try {
    found = recordPaths(review.folder);
  } catch (error) {
    return fail(error instanceof Error ? error.message : String(error));
  }
  const { judge, csv } = review;
  const width = fileWidth([...found.paths, ...found.unreadable]);
  const progress = review.progressOf(found.paths.length);
  const figures = new ServiceFigures();
  const print = async (line: string): Promise<void> => {
    progress.clear();
    await review.print(`${line}\n`);
  };
  for (const line of [sayJudge(review), ...LEGEND, "", tableHead(width)]) await print(line);
  await csv?.(csvLine(csvHeaders(judge)));
  let skipped = found.unreadable.length;
  for (const path of found.unreadable) await print(skippedRow(path, "this folder cannot be read", width));
  for (const [place, path] of found.paths.entries()) {
    const read = await readCase(path, review);
    if (read.ok) {
      const before = figures.add(read.value, place);
      const again = before === undefined ? [] : [`same case as ${printable(found.paths[before] ?? "")}`];
      await print(tableRow(read.value, width, again));
      await csv?.(csvLine(csvCells(read.value, judge)));
    } else {
      skipped += 1;
      await print(skippedRow(path, read.error, width));
    }
    progress.step();
  }
  progress.clear();
  for (const line of ["", ...figures.lines(review.rehearsals), "", `Files skipped: ${skipped}.`]) await print(line);
  return ok(undefined);
}
