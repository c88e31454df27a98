import type { FloorId } from "../../export/measures/floors.ts";
import type { LowestValues } from "../../export/measures/lowest.ts";
import { known, valueIn, WHY_UNKNOWN, type Measured } from "../../export/measures/measured.ts";
import type { Cell } from "../../export/csv/writeCsv.ts";
import type { Judge, ReviewedCase } from "./reviewedCase.ts";

type Column = {
  /** Its unit stands last. */
  readonly header: string;
  readonly of: (row: ReviewedCase) => Measured<Cell>;
};

const truth = (value: boolean): string => (value ? "true" : "false");
const map = <T, U>(measured: Measured<T>, to: (value: T) => U): Measured<U> =>
  "value" in measured ? known(to(measured.value)) : measured;

const plain = (header: string, of: (row: ReviewedCase) => Cell): Column => ({
  header,
  of: (row) => known(of(row)),
});

function aboutCase({ mark }: Judge): readonly Column[] {
  return [
    plain("file", ({ file }) => file),
    plain("case", ({ label }) => label),
    plain("case_id", ({ caseId }) => caseId),
    plain("rehearsal", ({ rehearsal }) => truth(rehearsal)),
    plain("opened_at", ({ openedAtMs }) => (openedAtMs === undefined ? undefined : new Date(openedAtMs).toISOString())),
    plain("facts", ({ facts }) => facts),
    plain("protocol", ({ marks }) => marks.at(-1)?.name),
    plain("protocol_version", ({ marks }) => marks.at(-1)?.version),
    plain("protocol_hash", ({ marks }) => marks.at(-1)?.hash),
    plain("judged_by", () => mark.name),
    plain("judged_by_version", () => mark.version),
    plain("judged_by_hash", () => mark.hash),
    plain("own_protocol", ({ ownProtocol }) => ownProtocol),
    plain("age_known", ({ measures }) => truth(measures.ageKnown)),
    plain("clock_changes", ({ measures }) => measures.clockChanges),
  ];
}

const AIRWAY: readonly Column[] = [
  { header: "first_pass", of: ({ measures }) => map(measures.firstPass, truth) },
  { header: "first_pass_without_low", of: ({ measures }) => map(measures.firstPassWithoutLow, truth) },
  { header: "attempts", of: ({ measures }) => map(measures.attempts, (all) => all.length) },
  {
    header: "attempt_lengths_s",
    of: ({ measures }) =>
      map(measures.attempts, (all) => all.map(({ lengthS }) => valueIn(lengthS) ?? "unknown").join(" ")),
  },
];

const UNITS = { sbp: "mmHg", map: "mmHg", cpp: "mmHg", spo2: "pct" } as const;

/** The lowest value and of how many readings, for each of the four. */
const lows = (header: string, of: (row: ReviewedCase) => LowestValues): readonly Column[] =>
  (["sbp", "map", "cpp", "spo2"] as const).flatMap((code) => [
    {
      header: `lowest_${code}_${header}_${UNITS[code]}`,
      of: (row) => map(of(row)[code], ({ value }) => value),
    },
    plain(`${code}_${header}_readings`, (row) => valueIn(of(row)[code])?.readings ?? 0),
  ]);

const FLOORS: Readonly<Record<FloorId, string>> = {
  sbpTarget: "sbp_target",
  sbpPublished: "sbp_published",
  mapTarget: "map_target",
  cppTarget: "cpp_target",
};

function floorColumns(id: FloorId): readonly Column[] {
  const name = FLOORS[id];
  const floorOf = ({ measures }: ReviewedCase) => measures.floors.find((floor) => floor.id === id);
  const below = (row: ReviewedCase) => floorOf(row)?.below;
  const doseOf = (row: ReviewedCase) => valueIn(below(row) ?? { unknown: "not-measured" });
  return [
    plain(`${name}_mmHg`, (row) => floorOf(row)?.floor.value),
    {
      header: `below_${name}_min`,
      of: (row) => map(below(row) ?? { unknown: "not-measured" }, ({ belowMin }) => belowMin),
    },
    plain(`below_${name}_mmHg_min`, (row) => doseOf(row)?.doseMmHgMin),
    plain(`unknown_${name}_min`, (row) => doseOf(row)?.unknownMin),
  ];
}

const LATER: readonly Column[] = [
  { header: "tube_to_sedation_min", of: ({ measures }) => measures.sedationMin },
  { header: "over_ventilation_min", of: ({ measures }) => map(measures.overVentilation, ({ belowMin }) => belowMin) },
  plain("over_ventilation_unknown_min", ({ measures }) => valueIn(measures.overVentilation)?.unknownMin),
  { header: "low_after_intubation", of: ({ measures }) => map(measures.postIntubation, ({ low }) => truth(low)) },
  plain("watched_after_intubation_min", ({ measures }) => valueIn(measures.postIntubation)?.watchedMin),
  { header: "steps_waived", of: ({ measures }) => map(measures.waived, (steps) => steps.length) },
  plain("waived", ({ measures }) => valueIn(measures.waived)?.join(" ")),
];

/** Why each empty cell of a measure is empty, in one cell. */
const reasons = (columns: readonly Column[], row: ReviewedCase): string =>
  columns
    .flatMap(({ header, of }) => {
      const measured = of(row);
      return "value" in measured ? [] : [`${header}: ${WHY_UNKNOWN[measured.unknown]}`];
    })
    .join("; ");

const columnsOf = (judge: Judge): readonly Column[] => [
  ...aboutCase(judge),
  ...AIRWAY,
  ...lows("around_induction", ({ measures }) => measures.around),
  ...lows("in_case", ({ measures }) => measures.lowest),
  ...(Object.keys(FLOORS) as FloorId[]).flatMap(floorColumns),
  ...LATER,
];

export const csvHeaders = (judge: Judge): readonly string[] => [
  ...columnsOf(judge).map(({ header }) => header),
  "unknown_because",
];

/** One case with every measure; a cell without a value is empty, and the last cell says why. Numbers are not rounded. */
export function csvCells(row: ReviewedCase, judge: Judge): readonly Cell[] {
  const columns = columnsOf(judge);
  return [...columns.map(({ of }) => valueIn(of(row))), reasons(columns, row)];
}
