import type { Solute } from "../../src/core/osmolar.ts";
import type { PublishedRow, RowSource } from "./row.ts";

type Agent = { readonly solute: Solute; readonly percent: number };

const salt = (percent: number): Agent => ({ solute: "sodiumChloride", percent });
const mannitol: Agent = { solute: "mannitol", percent: 20 };
const bicarbonate: Agent = { solute: "sodiumBicarbonate", percent: 8.4 };

const molarMasses: RowSource = {
  reference: "molar masses 58.44, 182.17, 84.007 g/mol, every particle free",
  locator: "none: from memory",
  read: "memory",
};
const byHand = (locator: string): RowSource => ({ reference: "arithmetic", locator, read: "by hand" });
const bicarbonateSeries: RowSource = {
  reference: "Bourdeaux C, Brown J. Neurocrit Care 2010;13:24-28. doi:10.1007/s12028-010-9368-8",
  locator: "abstract: 85 mL of 8.4 % sodium bicarbonate, equi-osmolar with 100 mL of 5 % sodium chloride",
  read: "abstract",
};

/** mOsm/L. */
export const OSMOLARITY_ROWS: readonly PublishedRow<Agent>[] = [
  { given: salt(0.9), expected: 308.0, decimals: 1, source: molarMasses },
  { given: salt(3), expected: 1026.7, decimals: 1, source: molarMasses },
  { given: salt(5), expected: 1711.2, decimals: 1, source: molarMasses },
  { given: salt(7.5), expected: 2566.7, decimals: 1, source: molarMasses },
  { given: salt(23.4), expected: 8008.2, decimals: 1, source: molarMasses },
  { given: mannitol, expected: 1097.9, decimals: 1, source: molarMasses },
  { given: bicarbonate, expected: 1999.8, decimals: 1, source: molarMasses },
];

/** mOsm. */
export const LOAD_ROWS: readonly PublishedRow<{ agent: Agent; volumeMl: number }>[] = [
  { given: { agent: salt(23.4), volumeMl: 30 }, expected: 240.2, decimals: 1, source: byHand("0.03 × 8008.2") },
  { given: { agent: salt(5), volumeMl: 100 }, expected: 171.1, decimals: 1, source: byHand("0.1 × 1711.2") },
  { given: { agent: bicarbonate, volumeMl: 85 }, expected: 170.0, decimals: 1, source: byHand("0.085 × 1999.8") },
  { given: { agent: salt(3), volumeMl: 250 }, expected: 256.7, decimals: 1, source: byHand("0.25 × 1026.7") },
  { given: { agent: mannitol, volumeMl: 200 }, expected: 219.6, decimals: 1, source: byHand("0.2 × 1097.9") },
];

/** mL of `to` with the load of `volumeMl` of `from`. */
export const EQUAL_LOAD_ROWS: readonly PublishedRow<{ from: Agent; volumeMl: number; to: Agent }>[] = [
  ...(
    [
      [salt(3), 234.0],
      [salt(5), 140.4],
      [salt(7.5), 93.6],
      [mannitol, 218.8],
      [bicarbonate, 120.1],
    ] as const
  ).map(([to, expected]) => ({
    given: { from: salt(23.4), volumeMl: 30, to },
    expected,
    decimals: 1,
    source: byHand(`30 mL of 23.4 % as ${to.percent} % ${to.solute}`),
  })),
  // The published series gives 85 mL; see EQUAL_AS_PUBLISHED.
  {
    given: { from: salt(5), volumeMl: 100, to: bicarbonate },
    expected: 85.6,
    decimals: 1,
    source: byHand("100 × 1711.2 / 1999.8"),
  },
];

/** Two volumes that a published series gives as equal in load. */
export const EQUAL_AS_PUBLISHED = {
  one: { agent: bicarbonate, volumeMl: 85 },
  other: { agent: salt(5), volumeMl: 100 },
  source: bicarbonateSeries,
} as const;

/** Grams in a volume of a solution in per cent. */
export const GRAM_ROWS: readonly PublishedRow<{ percent: number; volumeMl: number }>[] = [
  { given: { percent: 20, volumeMl: 218.8 }, expected: 43.8, decimals: 1, source: byHand("218.8 × 20 / 100") },
  { given: { percent: 20, volumeMl: 200 }, expected: 40, decimals: 0, source: byHand("200 × 20 / 100") },
  { given: { percent: 3, volumeMl: 250 }, expected: 7.5, decimals: 1, source: byHand("250 × 3 / 100") },
];
