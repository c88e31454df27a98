import type { Dose, Drug, Infusion, Osmotic, Protocol } from "../../protocol/protocol.ts";
import { showExact, showQuantity, showSpan } from "./protocolPageAmount.ts";
import type { DraftRow, DraftTable } from "./protocolPageTypes.ts";
import { walkRows } from "./protocolPageWalk.ts";
import { capital, valueWords } from "./protocolPageWords.ts";

type Span = { readonly low: number; readonly usual: number; readonly high: number };
type Strength = { readonly amount: number; readonly unit: string; readonly volumeMl: number };
type Recipe = Drug["recipes"][number];

/** "1 to 2 mg/kg, usual 1.5"; one number where all three are the same. */
function showDoseSpan({ low, usual, high }: Span, unit: string): string {
  const span = showSpan(low, high, unit);
  return low === usual && usual === high ? span : `${span}, usual ${showExact(usual)}`;
}

const list = (parts: readonly (string | false | undefined)[]): string =>
  parts.filter((part): part is string => typeof part === "string").join("; ");

const forWhom = (purpose: string, population: string): string => `${capital(purpose)}: ${valueWords(population)}`;

function showDose(dose: Dose): string {
  const { unit, weight, shock, fromKg, belowKg, minimum, cap, overS, repeatAfterS, mostDoses } = dose;
  const rate = dose.per === "dose" ? unit : `${unit}/${dose.per}`;
  return list([
    `${showDoseSpan(dose, rate)}, ${dose.route}`,
    weight !== undefined && `by ${weight} weight`,
    fromKg !== undefined && `from ${showQuantity(fromKg, "kg")}`,
    belowKg !== undefined && `under ${showQuantity(belowKg, "kg")}`,
    shock && `in shock ${showDoseSpan(shock, rate)}`,
    dose.afterTube && "for after the tube",
    dose.omitInShock && "not given in shock",
    minimum !== undefined && `at least ${showQuantity(minimum, unit)}`,
    cap !== undefined && `cap ${showQuantity(cap, unit)}`,
    overS && `over ${showSpan(overS.low, overS.high, "s")}`,
    repeatAfterS && `again after ${showSpan(repeatAfterS.low, repeatAfterS.high, "s")}`,
    mostDoses !== undefined && `at most ${showExact(mostDoses)} ${mostDoses === 1 ? "dose" : "doses"} in all`,
  ]);
}

function showInfusion({ low, start, high, unit, weight }: Infusion): string {
  const span = showSpan(low, high, unit);
  return list([
    low === start && start === high ? span : `${span}, start ${showExact(start)}`,
    weight !== undefined && `by ${weight} weight`,
  ]);
}

const showStrength = ({ amount, unit, volumeMl }: Strength): string =>
  `${showQuantity(amount, unit)} in ${showQuantity(volumeMl, "mL")}`;

/** The label of a strength is most often the strength itself. */
function showConcentration(concentration: Drug["concentrations"][number]): string {
  const shown = showStrength(concentration);
  const { label } = concentration;
  return label === shown.replaceAll("\u00a0", " ") ? shown : `${label}: ${shown}`;
}

const MADE_FOR: Readonly<Record<Recipe["for"], string>> = {
  syringe: "drawn up to give from at once",
  infusion: "for an infusion",
};

const showRecipe = ({ stock, takeMl, diluent, addMl, makes, ...recipe }: Recipe): string =>
  `${showQuantity(takeMl, "mL")} of ${showStrength(stock)}, with ${showQuantity(addMl, "mL")} of ${diluent}, makes ${showStrength(makes)}; ${MADE_FOR[recipe.for]}`;

type Medicine = Pick<Osmotic, "doses" | "infusions" | "cautions">;

/** A row keyed by its place, where nothing inside names it. */
const cautionRows = (cautions: Medicine["cautions"]): readonly DraftRow[] =>
  cautions.map(({ text, source }, i) => ({ key: `cautions.${i}`, label: "Caution", value: text, source }));

/** What the record calls it, and what is in it, in the order of the file: the first that fits the patient counts. */
function namedRow(name: string, lists: Readonly<Record<string, readonly { readonly id: string }[]>>): DraftRow {
  const named = Object.entries(lists).map(
    ([name, entries]) => entries.length > 0 && `${name} ${entries.map((entry) => entry.id).join(", ")}`,
  );
  return { key: "id", label: "Named in the file", value: list([name, ...named]) };
}

const givenRows = ({ doses, infusions }: Medicine): readonly DraftRow[] => [
  ...doses.map((dose) => ({
    key: `doses.${dose.id}`,
    label: forWhom(dose.purpose, dose.population),
    value: showDose(dose),
    source: dose.source,
    choice: dose.choice,
  })),
  ...infusions.map((infusion) => ({
    key: `infusions.${infusion.id}`,
    label: `Infusion, ${infusion.purpose}: ${valueWords(infusion.population)}`,
    value: showInfusion(infusion),
    source: infusion.source,
    choice: infusion.choice,
  })),
];

const namesOf = ({ international, us }: Drug["names"]): string =>
  international === us ? international : `${international}, in the United States ${us}`;

function drugTable(drug: Drug, region: "international" | "us"): DraftTable {
  const { onsetS, durationS, regions, concentrations, recipes } = drug;
  return {
    key: drug.id,
    title: capital(drug.names[region]),
    rows: [
      ...givenRows(drug),
      ...concentrations.map((each, i) => ({
        key: `concentrations.${i}`,
        label: "Strength",
        value: showConcentration(each),
        source: each.source,
      })),
      ...recipes.map((recipe) => ({
        key: `recipes.${recipe.id}`,
        label: "Dilution",
        value: showRecipe(recipe),
        source: recipe.source,
      })),
      ...Object.entries({ onsetS, durationS, regions }).flatMap(([key, node]) =>
        node === undefined ? [] : walkRows(node, [key]),
      ),
      ...cautionRows(drug.cautions),
      { key: "names", label: "Name and class", value: `${namesOf(drug.names)}; ${valueWords(drug.class)}` },
      { key: "spoken", label: "Said as", value: drug.spoken.join(", ") },
      namedRow(drug.id, { doses: drug.doses, infusions: drug.infusions, recipes }),
    ],
  };
}

export const drugTables = ({ drugs, region }: Protocol): readonly DraftTable[] =>
  drugs.map((drug) => drugTable(drug, region.drugNames));

export const fluidTables = ({ fluids }: Protocol): readonly DraftTable[] =>
  fluids.map(({ id, label, adultMl, childMlPerKg, cautions }) => ({
    key: id,
    title: capital(label),
    rows: [
      ...walkRows({ adultMl, childMlPerKg }, []),
      ...cautionRows(cautions),
      namedRow(`${id}, shown as ${label}`, {}),
    ],
  }));

export const osmoticTables = ({ osmotics }: Protocol): readonly DraftTable[] =>
  osmotics.map((osmotic) => ({
    key: osmotic.id,
    title: capital(osmotic.label),
    rows: [
      ...givenRows(osmotic),
      ...walkRows({ centralLineOnly: osmotic.centralLineOnly }, []),
      ...cautionRows(osmotic.cautions),
      {
        key: "solute",
        label: "Solute",
        value: `${valueWords(osmotic.solute)}, ${showQuantity(osmotic.percent, "g")} in 100 mL`,
      },
      { key: "spoken", label: "Said as", value: osmotic.spoken.join(", ") },
      namedRow(`${osmotic.id}, shown as ${osmotic.label}`, { doses: osmotic.doses, infusions: osmotic.infusions }),
    ],
  }));
