import { OLDEST_EXACT_A } from "../../core/age.ts";
import { VITALS, type VitalCode } from "../../core/vitals.ts";
import { howTaken } from "../../log/statements.ts";
import { computedCpps, computedMeans, examinedGcs, type Computed } from "../computedReadings.ts";
import { isoTime } from "../isoTime.ts";
import { readingsOf, type Reading, type TakenFact, takenMs } from "../readings.ts";
import type { RecordedCase } from "../recordedCase.ts";
import { toSixDigits } from "../ucum.ts";
import { verbatim } from "../verbatim.ts";
import { CASE_HEADER, caseCells, statusCell } from "./columns.ts";
import type { Cell, Table } from "./writeCsv.ts";

const CODES = Object.keys(VITALS) as readonly VitalCode[];
const PUPILS = ["pupilLeft", "pupilRight"] as const;

const HEADER = [
  ...CASE_HEADER,
  "status",
  ...CODES.map((code) => `${VITALS[code].label} (${VITALS[code].unit})`),
  ...PUPILS.map((code) => `${VITALS[code].label} reaction`),
  "MAP computed (mm[Hg])",
  "CPP computed (mm[Hg])",
  "GCS total computed ({score})",
  "method",
  "site",
  "level",
  "heard by",
  "heard",
];

function valueCell(fact: TakenFact | undefined): Cell {
  if (fact?.type === "finding.recorded") return fact.finding === "not-testable" ? "not testable" : undefined;
  if (fact?.code === "age" && fact.value > OLDEST_EXACT_A) return `over ${OLDEST_EXACT_A}`;
  return fact && toSixDigits(fact.value);
}

function reactionCell(fact: TakenFact | undefined): Cell {
  return fact?.type === "vital.recorded" ? fact.reaction : fact?.finding;
}

const byFact = (all: readonly Computed[]): ReadonlyMap<string, number> =>
  new Map(all.map(({ factId, value }) => [factId, toSixDigits(value)]));

/**
 * One row for everything said in one breath and taken in one way, struck or not; what was worked out stands in the row of
 * its newest input.
 *
 * @param zone IANA name: times are written with the offset of this zone.
 */
export function vitalsTable(recorded: RecordedCase, zone: string): Table {
  const time = isoTime(zone);
  const heard = verbatim(recorded.facts);
  const means = byFact(computedMeans(recorded));
  const cpps = byFact(computedCpps(recorded));
  const rowOf = (reading: Reading): readonly Cell[] => {
    const { facts, struck } = reading;
    const [first] = facts;
    const of = (code: VitalCode) => facts.find((fact) => fact.code === code);
    const computed = (values: ReadonlyMap<string, number>) =>
      facts.map(({ id }) => values.get(id)).find((value) => value !== undefined);
    const total = examinedGcs(recorded, reading)?.total;
    const { method, site, level } = first.type === "vital.recorded" ? howTaken(first) : {};
    return [
      ...caseCells(recorded, time(takenMs(first))),
      statusCell(struck),
      ...CODES.map((code) => valueCell(of(code))),
      ...PUPILS.map((code) => reactionCell(of(code))),
      computed(means),
      computed(cpps),
      total === "not-testable" ? "not testable" : total,
      ...[method, site, level, first.by, heard(first)],
    ];
  };
  return { header: HEADER, rows: readingsOf(recorded).map(rowOf) };
}
