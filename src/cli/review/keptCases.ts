import { createHash } from "node:crypto";
import { valueIn } from "../../export/measures/measured.ts";
import type { Figure } from "./figuresOfCase.ts";
import { NumberRows } from "./numberRows.ts";
import type { ReviewedCase } from "./reviewedCase.ts";
import { printable } from "./table.ts";

/** What is kept of a case beside its figures, a number each. */
const [COUNTS, REHEARSAL, OTHER_PROTOCOL, FACTS, FILE] = [0, 1, 2, 3, 4];
const FIRST_FIGURE = 5;

/** No step has an id as long; a record that comes from anybody may. */
const STEP_ID_MOST = 64;
const stepName = (id: string): string => (id.length > STEP_ID_MOST ? "(name too long)" : printable(id));

/** As short for every id, so that no record can make it long. */
const digestOf = (caseId: string): string => createHash("sha256").update(caseId).digest("base64url");

/**
 * The figures of very many cases, each case once. No object outlives a case: kept are a digest of its id, eight bytes for
 * each figure and a few more numbers, and a pair of numbers for each waived step. Figures are kept because a median is of
 * all of them. Names of steps are kept once.
 */
export class KeptCases {
  readonly #columnOf: ReadonlyMap<Figure, number>;
  readonly #rows: NumberRows;
  /** The row that counts of each case. */
  readonly #rowOf = new Map<string, number>();
  /** Pairs of a row and the place of a step in `#steps`. */
  readonly #waived = new NumberRows(2);
  readonly #steps: string[] = [];
  readonly #placeOfStep = new Map<string, number>();

  constructor(figures: readonly Figure[]) {
    this.#columnOf = new Map(figures.map((figure, i) => [figure, FIRST_FIGURE + i]));
    this.#rows = new NumberRows(FIRST_FIGURE + figures.length);
  }

  /**
   * Takes a case in. Where it was there already, from another file, the longer record counts.
   *
   * @param file the place of its file among all.
   * @returns the place of the file that holds the same case, if one did.
   */
  add(reviewed: ReviewedCase, file: number): number | undefined {
    const id = digestOf(reviewed.caseId);
    const before = this.#rowOf.get(id);
    const fileBefore = before === undefined ? undefined : this.#rows.at(before, FILE);
    if (before !== undefined) {
      if (reviewed.facts <= this.#rows.at(before, FACTS)) return fileBefore;
      this.#rows.set(before, COUNTS, 0);
    }
    this.#rowOf.set(id, this.#addRow(reviewed, file));
    return fileBefore;
  }

  #addRow({ rehearsal, ownProtocol, facts, measures }: ReviewedCase, file: number): number {
    const about = [1, Number(rehearsal), Number(ownProtocol !== "same"), facts, file];
    const row = this.#rows.add([...about, ...[...this.#columnOf.keys()].map(({ of }) => of(measures))]);
    for (const id of valueIn(measures.waived) ?? []) this.#waived.add([row, this.#placeOf(stepName(id))]);
    return row;
  }

  #placeOf(step: string): number {
    const place = this.#placeOfStep.get(step) ?? this.#steps.push(step) - 1;
    this.#placeOfStep.set(step, place);
    return place;
  }

  #isCounted(row: number, withRehearsals: boolean): boolean {
    return this.#rows.at(row, COUNTS) === 1 && (withRehearsals || this.#rows.at(row, REHEARSAL) === 0);
  }

  /** One column of all cases, or of all but the rehearsals, as they came. */
  #column(column: number, withRehearsals: boolean): readonly number[] {
    const numbers: number[] = [];
    for (let row = 0; row < this.#rows.length; row++)
      if (this.#isCounted(row, withRehearsals)) numbers.push(this.#rows.at(row, column));
    return numbers;
  }

  /** 1 for each rehearsal among all cases, else 0. */
  rehearsals(): readonly number[] {
    return this.#column(REHEARSAL, true);
  }

  /** 1 for each case that was recorded under another protocol or one not known, else 0. */
  otherProtocols(withRehearsals: boolean): readonly number[] {
    return this.#column(OTHER_PROTOCOL, withRehearsals);
  }

  /** What each case gives to a figure; NaN where that is not known. */
  figure(figure: Figure, withRehearsals: boolean): readonly number[] {
    return this.#column(this.#columnOf.get(figure) ?? NaN, withRehearsals);
  }

  /** In how many cases each step was waived. */
  waived(withRehearsals: boolean): ReadonlyMap<string, number> {
    const counts = new Map<string, number>();
    for (let pair = 0; pair < this.#waived.length; pair++) {
      if (!this.#isCounted(this.#waived.at(pair, 0), withRehearsals)) continue;
      const step = this.#steps[this.#waived.at(pair, 1)] ?? "";
      counts.set(step, (counts.get(step) ?? 0) + 1);
    }
    return counts;
  }
}
