import type { Cell, Table } from "../report.ts";
import { percent, shareText } from "../shares.ts";
import type { Saying } from "./saying.ts";

/** A group this far below the mean is named, in points. */
const FAR_BELOW = 5;
/** Of smaller groups nothing can be said. */
const LEAST = 20;

const isRight = (s: Saying): boolean => s.outcome === "right" || (s.askedByRule && s.outcome === "askedRight");
const shareOf = (sayings: readonly Saying[]): number => sayings.filter(isRight).length / Math.max(1, sayings.length);

type Grouping = {
  readonly name: string;
  readonly of: (s: Saying) => string;
  /** Only groups that are far below the mean are shown. */
  readonly onlyNamed?: true;
};

const GROUPINGS: readonly Grouping[] = [
  { name: "training", of: (s) => s.standing },
  { name: "sex", of: (s) => s.sex },
  { name: "accent", of: (s) => s.accent },
  { name: "voice", of: (s) => s.speaker, onlyNamed: true },
];

/** Every group against the mean of all: who is heard worse. The same for people and for made voices, never mixed. */
export function fairnessTable(title: string, sayings: readonly Saying[]): Table {
  const mean = shareOf(sayings);
  const rows = GROUPINGS.flatMap(({ name, of, onlyNamed }) => {
    const groups = new Map<string, Saying[]>();
    for (const s of sayings) groups.set(of(s), [...(groups.get(of(s)) ?? []), s]);
    return [...groups]
      .filter(([, some]) => some.length >= LEAST)
      .map(([group, some]) => ({ group, some, points: 100 * (shareOf(some) - mean) }))
      .filter(({ points }) => onlyNamed === undefined || points < -FAR_BELOW)
      .sort((a, b) => a.points - b.points)
      .map(({ group, some, points }): readonly Cell[] => [
        name,
        group,
        some.length,
        shareText(some.filter(isRight).length, some.length),
        `${points < 0 ? "−" : "+"}${Math.abs(points).toFixed(1)}`,
        points < -FAR_BELOW ? "far below" : "",
        some.filter((s) => s.outcome === "wrong").length,
      ]);
  });
  return {
    title,
    notes: [
      `Right at the first try, or asked by rule, in all conditions together; mean ${percent(mean)} % of ${sayings.length}. Groups of ${LEAST} or more. Of single voices only those more than ${FAR_BELOW} points below the mean.`,
    ],
    columns: ["by", "group", "n", "right %", "points from the mean", "", "WRONG"],
    rows,
  };
}
