import type { Population, Protocol } from "../../protocol/protocol.ts";
import { showExact } from "./protocolPageAmount.ts";
import type { DraftRow, DraftTable } from "./protocolPageTypes.ts";
import { showValue, walkRows } from "./protocolPageWalk.ts";

/** "from 15, under 50 years". */
const showAges = ({ fromAgeA, belowAgeA }: { readonly fromAgeA: number; readonly belowAgeA: number }): string =>
  `from ${showExact(fromAgeA)}, under ${showExact(belowAgeA)} years`;

function populationTable(population: Population): DraftTable {
  const { id, label, kind, source, choice, sbpMmHg, mapMmHg, cppMmHg, icpTreatAboveMmHg, hrPerMin } = population;
  return {
    key: id,
    title: label,
    rows: [
      ...walkRows({ sbpMmHg, mapMmHg, cppMmHg, icpTreatAboveMmHg, hrPerMin }, []),
      { key: "ages", label: "Ages", value: `${showAges(population)}; ${kind}`, source, choice },
      { key: "id", label: "Named in the file", value: `${id}, shown as ${label}` },
    ],
  };
}

export const populationTables = ({ targets }: Protocol): readonly DraftTable[] =>
  targets.populations.map(populationTable);

/** The range of each cause, and what decides which targets count. */
export function causeRows({ targets }: Protocol): readonly DraftRow[] {
  const { causes, unknownAge, herniationSparesPressure, herniation } = targets;
  return [
    ...causes.map(({ id, label, sbpRangeMmHg: range }) => ({
      key: `cause.${id}`,
      label,
      value: `${range === undefined ? "no range of SBP of its own" : `SBP ${showValue(range.value, "mmHg")}`} (${id})`,
      source: range?.source,
      choice: range?.choice,
    })),
    ...walkRows({ unknownAge, herniationSparesPressure, herniation }, []),
  ];
}

export function shockRows({ shock }: Protocol): readonly DraftRow[] {
  const { warnAt, strongAt, childUpper } = shock;
  return [
    ...walkRows({ warnAt, strongAt }, []),
    ...childUpper.map((band, i) => ({
      key: `childUpper.${i}`,
      label: "Shock index of a child, upper limit",
      value: `${showExact(band.upper)}, ${showAges(band)}`,
      source: band.source,
    })),
  ];
}
