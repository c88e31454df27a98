import { DEFINITIONS } from "../../export/measures/definitions.ts";
import { valueIn, type Measured } from "../../export/measures/measured.ts";
import type { CaseMeasures } from "../../export/measures/caseMeasures.ts";
import type { FloorId } from "../../export/measures/floors.ts";
import { median } from "../../app/median.ts";
import type { ReviewedCase } from "./reviewedCase.ts";
import { oneDecimal, waivedOf } from "./table.ts";

type Yes = {
  readonly name: string;
  readonly of: (m: CaseMeasures) => Measured<boolean>;
  /** What more is to be known of the answer "no". */
  readonly more?: (all: readonly CaseMeasures[]) => string;
};
type Amount = { readonly name: string; readonly of: (m: CaseMeasures) => number | undefined };

const mapped = <T>(measured: Measured<T>, to: (value: T) => boolean): Measured<boolean> =>
  "value" in measured ? { value: to(measured.value) } : measured;

const { withoutLow, postIntubation } = DEFINITIONS;

/** Of cases without a low systolic after the tube, those that were watched as long as the definition looks. */
function watchedWhole(all: readonly CaseMeasures[]): string {
  const none = all.flatMap((m) => valueIn(m.postIntubation) ?? []).filter(({ low }) => !low);
  const whole = none.filter(({ watchedMin, ofMin }) => watchedMin >= ofMin).length;
  return none.length === 0 ? "" : `of ${none.length} without, ${whole} watched all that time`;
}

const SHARES: readonly Yes[] = [
  { name: "first pass", of: (m) => m.firstPass },
  {
    name: `first pass, SpO2 not under ${withoutLow.value.spo2BelowPct} %, SBP not under ${withoutLow.value.sbpBelowMmHg}`,
    of: (m) => m.firstPassWithoutLow,
  },
  {
    name: `SBP under ${postIntubation.value.sbpBelowMmHg} within ${postIntubation.value.withinMin} min of the tube`,
    of: (m) => mapped(m.postIntubation, ({ low }) => low),
    more: watchedWhole,
  },
  { name: "a step waived", of: (m) => mapped(m.waived, (steps) => steps.length > 0) },
];

const floor = (m: CaseMeasures, id: FloorId) => {
  const found = m.floors.find((one) => one.id === id);
  return found && valueIn(found.below);
};

const AMOUNTS: readonly Amount[] = [
  { name: "attempts", of: (m) => valueIn(m.attempts)?.length },
  { name: "lowest SBP around induction, mmHg", of: (m) => valueIn(m.around.sbp)?.value },
  { name: "lowest MAP around induction, mmHg", of: (m) => valueIn(m.around.map)?.value },
  { name: "lowest CPP around induction, mmHg", of: (m) => valueIn(m.around.cpp)?.value },
  { name: "lowest SpO2 around induction, %", of: (m) => valueIn(m.around.spo2)?.value },
  { name: "SBP under target, min", of: (m) => floor(m, "sbpTarget")?.belowMin },
  { name: "SBP under target, mmHg·min", of: (m) => floor(m, "sbpTarget")?.doseMmHgMin },
  { name: "SBP under the published floor, mmHg·min", of: (m) => floor(m, "sbpPublished")?.doseMmHgMin },
  { name: "MAP under target, min", of: (m) => floor(m, "mapTarget")?.belowMin },
  { name: "MAP under target, mmHg·min", of: (m) => floor(m, "mapTarget")?.doseMmHgMin },
  { name: "CPP under target, min", of: (m) => floor(m, "cppTarget")?.belowMin },
  { name: "CPP under target, mmHg·min", of: (m) => floor(m, "cppTarget")?.doseMmHgMin },
  { name: "tube to sedation, min", of: (m) => valueIn(m.sedationMin) },
  { name: "CO2 under its band, min", of: (m) => valueIn(m.overVentilation)?.belowMin },
];

/** How many waived steps are named. */
const WAIVED_NAMED = 5;

/** The figures of a service, gathered case by case. Of each case it keeps its numbers alone, so memory grows by little. */
export class ServiceFigures {
  readonly #cases = new Map<string, ReviewedCase>();

  /**
   * Takes a case in. Where it was there already, from another file, the longer record counts.
   *
   * @returns the file that holds the same case, if one did.
   */
  add(row: ReviewedCase): string | undefined {
    const before = this.#cases.get(row.caseId);
    if (before === undefined || row.facts > before.facts) this.#cases.set(row.caseId, row);
    return before?.file;
  }

  /** The figures as lines, with the number of cases behind each. */
  lines(withRehearsals: boolean): readonly string[] {
    const all = [...this.#cases.values()];
    const counted = all.filter(({ rehearsal }) => withRehearsals || !rehearsal);
    const rehearsals = all.filter(({ rehearsal }) => rehearsal).length;
    const told = withRehearsals ? `${rehearsals} of them rehearsals` : `rehearsals left out: ${rehearsals}`;
    const others = counted.filter(({ ownProtocol }) => ownProtocol !== "same").length;
    const measures = counted.map((row) => row.measures);
    return [
      `Cases: ${counted.length} (${told}). Recorded under another protocol, or one not known: ${others}.`,
      ...(counted.length === 0 ? [] : [...shares(measures), "", ...amounts(measures), ...waived(counted)]),
    ];
  }
}

const NAME_WIDTH = Math.max(...[...SHARES, ...AMOUNTS].map(({ name }) => name.length));

function shares(measures: readonly CaseMeasures[]): readonly string[] {
  return SHARES.map(({ name, of, more = () => "" }) => {
    const values = measures.flatMap((m) => valueIn(of(m)) ?? []);
    const yes = values.filter((value) => value).length;
    const share = values.length === 0 ? "" : `${((100 * yes) / values.length).toFixed(0)} %`;
    const unknown = measures.length - values.length;
    const notes = [unknown === 0 ? "" : `unknown in ${unknown}`, more(measures)].filter((note) => note !== "");
    const cells = [name.padEnd(NAME_WIDTH), `${yes} of ${values.length}`.padStart(14), share.padStart(5)];
    return [...cells, notes.join("; ")].join("  ").trimEnd();
  });
}

function amounts(measures: readonly CaseMeasures[]): readonly string[] {
  const row = (name: string, n: string, middle: string, from: string, to: string): string =>
    `${name.padEnd(NAME_WIDTH)}  ${n.padStart(6)}  ${middle.padStart(8)}  ${from.padStart(8)}  ${to.padStart(8)}`;
  return [
    row("", "cases", "median", "least", "most"),
    ...AMOUNTS.map(({ name, of }) => {
      const values = measures.flatMap((m) => of(m) ?? []);
      const middle = median(values);
      if (middle === undefined) return row(name, "0", "", "", "").trimEnd();
      const [least, most] = values.reduce(([a, b], v) => [Math.min(a, v), Math.max(b, v)], [Infinity, -Infinity]);
      return row(name, String(values.length), ...([middle, least, most].map(oneDecimal) as [string, string, string]));
    }),
  ];
}

/** The steps waived most often. */
function waived(rows: readonly ReviewedCase[]): readonly string[] {
  const counts = new Map<string, number>();
  for (const stepId of rows.flatMap(waivedOf)) counts.set(stepId, (counts.get(stepId) ?? 0) + 1);
  if (counts.size === 0) return [];
  const most = [...counts].toSorted(([a, m], [b, n]) => n - m || (a < b ? -1 : 1)).slice(0, WAIVED_NAMED);
  return ["", `Waived most often: ${most.map(([id, n]) => `${id} ${n}`).join(", ")}.`];
}
