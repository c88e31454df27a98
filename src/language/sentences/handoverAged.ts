import type { FindingEntry, VitalEntry } from "../../log/caseState.ts";
import { comma, line, type Line } from "./handoverLine.ts";
import type { Pen } from "./handoverPen.ts";

export type Entry = VitalEntry | FindingEntry;

/** Two pupils that are alike are said as one. */
function sayEntries(entries: readonly Entry[], pen: Pen): readonly string[] {
  const said = entries.map(pen.entry);
  const [left = "", right = "", ...others] = said;
  const [first, second] = entries;
  const isPair = first?.code === "pupilLeft" && second?.code === "pupilRight";
  const isAlike = isPair && left.replace(/^left/iu, "") === right.replace(/^right/iu, "");
  return isAlike ? [pen.bothPupils(left), ...others] : said;
}

/** Those of one age together, each with that age; in short all together, with the greatest age. */
export function aged(key: string, rank: number, entries: readonly Entry[], pen: Pen, nowMs: number): readonly Line[] {
  const agoOf = ({ atMs }: Entry): string => pen.taken(nowMs - atMs);
  const ages = [...new Set(entries.map(agoOf))];
  const whole = ages
    .map((ago) =>
      comma(
        ...sayEntries(
          entries.filter((entry) => agoOf(entry) === ago),
          pen,
        ),
        ago,
      ),
    )
    .join("; ");
  const [oldest] = entries.toSorted((a, b) => a.atMs - b.atMs);
  if (oldest === undefined || ages.length === 1) return line(key, rank, whole);
  return line(key, rank, whole, comma(...sayEntries(entries, pen), `oldest ${agoOf(oldest)}`));
}
