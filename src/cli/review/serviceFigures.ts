import { median } from "../../app/median.ts";
import { AMOUNTS, LOW_AFTER_TUBE, SHARES, WATCHED_AFTER_TUBE, type Figure } from "./figuresOfCase.ts";
import { KeptCases } from "./keptCases.ts";
import type { ReviewedCase } from "./reviewedCase.ts";
import { oneDecimal } from "./table.ts";

/** How many waived steps are named. */
const WAIVED_NAMED = 5;

const NAME_WIDTH = Math.max(...[...SHARES, ...AMOUNTS].map(({ name }) => name.length));

/** The numbers that cases gave to a figure, those left out of which it is not known. */
type Known = (figure: Figure) => readonly number[];

const sum = (numbers: readonly number[]): number => numbers.reduce((all, number) => all + number, 0);

/** The figures of a service, gathered case by case. */
export class ServiceFigures {
  readonly #kept = new KeptCases([...SHARES, WATCHED_AFTER_TUBE, ...AMOUNTS]);

  /** As `KeptCases.add`. */
  add(reviewed: ReviewedCase, file: number): number | undefined {
    return this.#kept.add(reviewed, file);
  }

  /** The figures as lines, with the number of cases behind each. */
  lines(withRehearsals: boolean): readonly string[] {
    const kept = this.#kept;
    const others = kept.otherProtocols(withRehearsals);
    const rehearsals = sum(kept.rehearsals());
    const told = withRehearsals ? `${rehearsals} of them rehearsals` : `rehearsals left out: ${rehearsals}`;
    const head = `Cases: ${others.length} (${told}). Recorded under another protocol, or one not known: ${sum(others)}.`;
    if (others.length === 0) return [head];
    const known: Known = (figure) => kept.figure(figure, withRehearsals).filter((number) => !Number.isNaN(number));
    const watched = (): string => {
      const low = kept.figure(LOW_AFTER_TUBE, withRehearsals);
      const whole = kept.figure(WATCHED_AFTER_TUBE, withRehearsals).filter((_, i) => low[i] === 0);
      return whole.length === 0 ? "" : `of ${whole.length} without, ${sum(whole)} ${WATCHED_AFTER_TUBE.name}`;
    };
    return [
      head,
      ...SHARES.map((figure) =>
        share(figure.name, known(figure), others.length, figure === LOW_AFTER_TUBE ? watched() : ""),
      ),
      "",
      amountRow("", "cases", "median", "least", "most"),
      ...AMOUNTS.map((figure) => amount(figure.name, known(figure))),
      ...waived(kept.waived(withRehearsals)),
    ];
  }
}

function share(name: string, values: readonly number[], cases: number, more: string): string {
  const yes = sum(values);
  const percent = values.length === 0 ? "" : `${((100 * yes) / values.length).toFixed(0)} %`;
  const unknown = cases - values.length;
  const notes = [unknown === 0 ? "" : `unknown in ${unknown}`, more].filter((note) => note !== "");
  const cells = [name.padEnd(NAME_WIDTH), `${yes} of ${values.length}`.padStart(14), percent.padStart(5)];
  return [...cells, notes.join("; ")].join("  ").trimEnd();
}

const amountRow = (name: string, n: string, middle: string, least: string, most: string): string =>
  `${name.padEnd(NAME_WIDTH)}  ${n.padStart(6)}  ${middle.padStart(8)}  ${least.padStart(8)}  ${most.padStart(8)}`;

function amount(name: string, values: readonly number[]): string {
  const middle = median(values);
  if (middle === undefined) return amountRow(name, "0", "", "", "").trimEnd();
  const [least, most] = values.reduce(([a, b], v) => [Math.min(a, v), Math.max(b, v)], [Infinity, -Infinity]);
  return amountRow(name, String(values.length), oneDecimal(middle), oneDecimal(least), oneDecimal(most));
}

/** The steps waived most often. */
function waived(counts: ReadonlyMap<string, number>): readonly string[] {
  if (counts.size === 0) return [];
  const most = [...counts].toSorted(([a, m], [b, n]) => n - m || (a < b ? -1 : 1)).slice(0, WAIVED_NAMED);
  return ["", `Waived most often: ${most.map(([id, n]) => `${id} ${n}`).join(", ")}.`];
}
