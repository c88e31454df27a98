import { VITALS } from "../../core/vitals.ts";
import { unique, when, within, type Faults } from "../fault.ts";
import type { Protocol } from "../protocol.ts";
import { endsOf, valueAt } from "./ages.ts";

type CauseRow = Protocol["targets"]["causes"][number];

const PLACE = ["targets", "causes"] as const;

/** The highest systolic target of an adult: a ceiling at or under it leaves no pressure to aim for. */
function highestAdultTarget({ populations }: Protocol["targets"]): number {
  const adults = populations.filter((p) => p.kind === "adult");
  return Math.max(0, ...adults.flatMap((p) => endsOf(p).map((ageA) => valueAt(p.sbpMmHg.target.value, ageA))));
}

function checkRange(cause: CauseRow, i: number, floor: number): Faults {
  if (cause.sbpRangeMmHg === undefined) return [];
  const { low, aim, high } = cause.sbpRangeMmHg.value;
  const at = [...PLACE, i, "sbpRangeMmHg", "value"];
  const { limits } = VITALS.sbp;
  return [
    ...within(limits, low, [...at, "low"]),
    ...within(limits, aim, [...at, "aim"]),
    ...within(limits, high, [...at, "high"]),
    ...when(aim < low, [...at, "aim"], `${aim} is below the low end of ${low}`),
    ...when(high < aim, [...at, "high"], `${high} is below the aim of ${aim}`),
    ...when(
      high <= floor,
      [...at, "high"],
      `${high} is not above the target of ${floor} for an adult: no pressure would meet both`,
    ),
  ];
}

/** The causes of raised pressure, and the ranges that bound the systolic from above. */
export function checkCauses({ targets }: Protocol): Faults {
  const { causes } = targets;
  const floor = highestAdultTarget(targets);
  return [
    ...unique(
      causes.map(({ id }, i) => ({ name: id, at: [...PLACE, i, "id"] })),
      "the cause",
    ),
    ...causes.flatMap((cause, i) => checkRange(cause, i, floor)),
    ...when(
      !causes.some(({ id }) => id === "unknown"),
      PLACE,
      'has no cause "unknown", which counts until one is said',
    ),
  ];
}
