import type { Perfusion } from "../../log/perfusion.ts";
import type { Statement, VitalValue } from "../../log/facts.ts";
import { saySatsUnder, type Saturation } from "./margin.ts";
import { sayRecorded, type UsualUnits } from "./recordedValue.ts";
import { sayReading } from "./reading.ts";
import { sentences } from "./sentence.ts";
import { sayOld, sayStatus } from "./status.ts";
import { sayEndTidalRange } from "./targets.ts";

type Aged = { readonly ageMs: number };
type Range = { readonly low: number; readonly high: number };

/** Values that are not where they should be, and by what they are judged. */
export type OffTarget =
  | ({ readonly kind: "spo2" } & Saturation & Aged)
  | ({ readonly kind: "etco2"; readonly value: VitalValue; readonly range: Range } & Aged);

/** All that is known, in the order in which it matters. */
export type Everything = {
  readonly perfusion: Perfusion;
  readonly offTarget: readonly OffTarget[];
  /** What the standing alerts are about, as they are named, where it is not said as off target. */
  readonly alerts: readonly string[];
  /** Each as it is said when it is set. */
  readonly infusions: readonly string[];
  /** Readings and findings that are not said yet, those of one age together. */
  readonly others: readonly (Statement & Aged)[];
  readonly clocks: string | undefined;
  readonly totals: readonly string[];
};

/** About nineteen seconds of the built-in voice, which says some seventeen letters and spaces a second. What is more than this is on the screen. */
const MOST_LETTERS = 310;
const REST = "More on the screen.";
/** Younger than this, an age is not worth the time. */
const OLD_MS = 60_000;

const withAge = (words: string, { ageMs }: Aged): string =>
  [words, ageMs < OLD_MS ? undefined : sayOld(ageMs)].filter((part) => part !== undefined).join(", ");

function sayOffTarget(off: OffTarget, usual: UsualUnits): string | undefined {
  if (off.kind === "spo2") {
    const under = saySatsUnder(off);
    return under && withAge(under, off);
  }
  return withAge(`${sayRecorded(off.value, usual)}, target ${sayEndTidalRange(off.range, usual)}`, off);
}

/** Whole parts as long as they fit: a part cut in two could leave a number without its name. */
function fitting(parts: readonly string[]): string {
  const said: string[] = [];
  let letters = 0;
  for (const part of parts) {
    letters += part.length;
    if (letters > MOST_LETTERS) return sentences(...said, REST);
    said.push(part);
  }
  return sentences(...said);
}

/** The whole state in short sentences, what is off target first: about twenty seconds at most. */
export function sayEverything(all: Everything, usual: UsualUnits): string {
  const { perfusion, offTarget, alerts, infusions, others, clocks, totals } = all;
  const parts = [
    sayStatus(perfusion),
    ...offTarget.map((off) => sayOffTarget(off, usual)),
    alerts.length === 0 ? undefined : `${alerts.length === 1 ? "alert" : "alerts"}: ${alerts.join(", ")}`,
    ...infusions,
    ...others.map((group) => withAge(sayReading(group, usual), group)),
    clocks,
    ...totals,
  ];
  return fitting(parts.flatMap((part) => (part === undefined ? [] : [part])));
}
