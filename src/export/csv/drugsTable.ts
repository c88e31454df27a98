import type { DoseUnit, RateUnit } from "../../core/doseUnits.ts";
import type { Strength } from "../../core/concentration.ts";
import type { Fact } from "../../log/facts.ts";
import { findMedicine } from "../../protocol/findMedicine.ts";
import { infusionSegments } from "../infusionSegments.ts";
import { isoTime } from "../isoTime.ts";
import type { RecordedCase } from "../recordedCase.ts";
import { toSixDigits, ucumOf } from "../ucum.ts";
import { verbatim } from "../verbatim.ts";
import { CASE_HEADER, caseCells, statusCell } from "./columns.ts";
import type { Cell, Table } from "./writeCsv.ts";

type Given = Extract<Fact, { readonly type: "drug.given" | "infusion.set" | "fluid.given" }>;

/** Amounts and rates keep the unit in which they were ordered, in a column of its own: a converted dose is one more risk. */
const HEADER = [
  ...CASE_HEADER,
  "end",
  "status",
  "kind",
  "drug",
  "class",
  "amount or rate",
  "unit of amount or rate (UCUM)",
  "volume (mL)",
  "pump rate (mL/h)",
  "weight used (kg)",
  "concentration",
  "heard by",
  "heard",
];

const rounded = (value: number | undefined): Cell => value && toSixDigits(value);
const quantity = (of: { readonly value: number; readonly unit: DoseUnit | RateUnit }): readonly Cell[] => [
  toSixDigits(of.value),
  ucumOf(of.unit),
];
const inWords = ({ amount, unit, volumeMl }: Strength): string => `${amount} ${ucumOf(unit)} in ${volumeMl} mL`;

/** What and how much: the columns from the kind to the concentration. */
function whatCells({ protocol }: RecordedCase, fact: Given): readonly Cell[] {
  if (fact.type === "fluid.given") {
    const name = protocol.fluids.find(({ id }) => id === fact.fluidId)?.label ?? fact.fluidId;
    const volume = toSixDigits(fact.volumeMl);
    return ["fluid", name, "fluid", volume, "mL", volume, undefined, undefined, undefined];
  }
  const name = findMedicine(protocol, fact.drugId)?.name ?? fact.drugId;
  if (fact.type === "drug.given") {
    const volume = rounded(fact.volumeMl);
    return ["bolus", name, fact.drugClass, ...quantity(fact.amount), volume, undefined, undefined, undefined];
  }
  const { drugClass, rate, mlPerH, weightKg, strength } = fact;
  const more = [undefined, rounded(mlPerH), rounded(weightKg), strength && inWords(strength)];
  return ["infusion", name, drugClass, ...quantity(rate), ...more];
}

/**
 * One row for each dose, each fluid and each rate at which an infusion ran, in the order in which they began.
 *
 * @param zone IANA name: times are written with the offset of this zone.
 */
export function drugsTable(recorded: RecordedCase, zone: string): Table {
  const { facts, struckIds } = recorded;
  const time = isoTime(zone);
  const heard = verbatim(facts);
  const segments = new Map(infusionSegments(recorded).map((segment) => [segment.fact.id, segment]));
  const rows = facts.flatMap((fact): readonly (readonly Cell[])[] => {
    if (fact.type !== "drug.given" && fact.type !== "fluid.given" && fact.type !== "infusion.set") return [];
    const segment = segments.get(fact.id);
    // A stop that was not struck: it is the end of the row before.
    if (fact.type === "infusion.set" && segment === undefined) return [];
    const end = segment?.untilMs === undefined ? undefined : time(segment.untilMs);
    const status = statusCell(struckIds.has(fact.id));
    const what = whatCells(recorded, fact);
    return [[...caseCells(recorded, time(fact.atMs)), end, status, ...what, fact.by, heard(fact)]];
  });
  return { header: HEADER, rows };
}
