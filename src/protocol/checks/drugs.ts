import { lowToHigh, unique, when, type Faults, type Place } from "../fault.ts";
import type { Drug, Osmotic, Protocol } from "../protocol.ts";
import { checkDose, checkInfusion } from "./doses.ts";
import { familyOf, rateFamily } from "./unitFamily.ts";

/** The ways to give one agent are told apart by their ids. */
function checkIds(lists: readonly (readonly [string, readonly { readonly id: string }[]])[], at: Place): Faults {
  const all = lists.flatMap(([key, list]) => list.map(({ id }, i) => ({ name: id, at: [...at, key, i, "id"] })));
  return unique(all, "the id");
}

/** What is on the label must be what is ordered: nobody can draw up milligrams from a label in units. */
function checkConcentrations({ doses, infusions, concentrations }: Drug, at: Place): Faults {
  const ordered = [...doses.map(({ unit }) => familyOf(unit)), ...infusions.map(({ unit }) => rateFamily(unit))];
  const units = [...new Set([...doses, ...infusions].map(({ unit }) => unit))].join(", ");
  return concentrations.flatMap(({ unit }, i): Faults => {
    const here = [...at, "concentrations", i, "unit"];
    if (unit === "mL") return [{ at: here, message: "a strength is an amount in a volume: must not be mL" }];
    const fits = ordered.length === 0 || ordered.includes(familyOf(unit));
    return when(!fits, here, `a strength in ${unit} cannot give what is ordered in ${units}`);
  });
}

function checkDrug(drug: Drug, at: Place): Faults {
  const { doses, infusions, recipes, onsetS, durationS } = drug;
  return [
    ...checkIds(
      [
        ["doses", doses],
        ["infusions", infusions],
        ["recipes", recipes],
      ],
      at,
    ),
    ...doses.flatMap((dose, i) => checkDose(dose, [...at, "doses", i])),
    ...infusions.flatMap((infusion, i) => checkInfusion(infusion, [...at, "infusions", i])),
    ...checkConcentrations(drug, at),
    ...(onsetS === undefined ? [] : lowToHigh(onsetS.value, [...at, "onsetS", "value"])),
    ...(durationS === undefined ? [] : lowToHigh(durationS.value, [...at, "durationS", "value"])),
  ];
}

function checkOsmotic({ doses, infusions }: Osmotic, at: Place): Faults {
  const lists = [
    ["doses", doses],
    ["infusions", infusions],
  ] as const;
  return [
    ...checkIds(lists, at),
    ...doses.flatMap((dose, i) => checkDose(dose, [...at, "doses", i])),
    ...infusions.flatMap((infusion, i) => checkInfusion(infusion, [...at, "infusions", i])),
    ...lists.flatMap(([key, list]) =>
      list.flatMap(({ unit }, i) =>
        when(unit.startsWith("units"), [...at, key, i, "unit"], "a solution is not ordered in units of activity"),
      ),
    ),
  ];
}

/** Drugs, fluids and osmotic agents: amounts in order, limits with room, units that go together. */
export function checkDrugs({ drugs, fluids, osmotics }: Protocol): Faults {
  return [
    ...drugs.flatMap((drug, i) => checkDrug(drug, ["drugs", i])),
    ...fluids.flatMap((fluid, i) => [
      ...lowToHigh(fluid.adultMl.value, ["fluids", i, "adultMl", "value"]),
      ...lowToHigh(fluid.childMlPerKg.value, ["fluids", i, "childMlPerKg", "value"]),
    ]),
    ...osmotics.flatMap((osmotic, i) => checkOsmotic(osmotic, ["osmotics", i])),
  ];
}
