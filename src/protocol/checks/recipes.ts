import { when, type Faults, type Place } from "../fault.ts";
import type { Drug, Protocol } from "../protocol.ts";
import { familyOf, inSmallest } from "./unitFamily.ts";

type Recipe = Drug["recipes"][number];

/** A label rounds: 4 mg drawn up as 4.02 is 4. Volumes are added, not measured, and have no room. */
const AMOUNT_TOLERANCE = 0.01;
const ROUNDING = 1e-9;

const differs = (a: number, b: number, tolerance: number): boolean =>
  Math.abs(a - b) > (tolerance + ROUNDING) * Math.abs(b);

function checkArithmetic({ stock, takeMl, addMl, makes }: Recipe, at: Place): Faults {
  const family = familyOf(stock.unit);
  const volumeMl = takeMl + addMl;
  const volumeFaults = when(
    differs(makes.volumeMl, volumeMl, 0),
    [...at, "makes", "volumeMl"],
    `${makes.volumeMl} mL is not what ${takeMl} mL and ${addMl} mL make: ${volumeMl} mL`,
  );
  if (family === "volume")
    return [{ at: [...at, "stock", "unit"], message: "a strength is an amount in a volume: must not be mL" }];
  if (familyOf(makes.unit) !== family)
    return [
      ...volumeFaults,
      { at: [...at, "makes", "unit"], message: `${makes.unit} cannot be made from ${stock.unit}` },
    ];
  const taken = (stock.amount / stock.volumeMl) * takeMl;
  return [
    ...volumeFaults,
    ...when(
      differs(inSmallest(makes.amount, makes.unit), inSmallest(taken, stock.unit), AMOUNT_TOLERANCE),
      [...at, "makes", "amount"],
      `${makes.amount} ${makes.unit} is not what ${takeMl} mL of the stock hold: ${Number(taken.toPrecision(4))} ${stock.unit}`,
    ),
  ];
}

/** A syringe is drawn up to give a dose from. An infusion needs no rate here: a single dose may run in from a bag. */
const checkFor = (recipe: Recipe, { doses }: Drug, at: Place): Faults =>
  when(
    recipe.for === "syringe" && doses.length === 0,
    [...at, "for"],
    "nothing of this drug is given at once: a syringe needs a dose",
  );

/** Dilutions whose arithmetic holds, and that something is given from. */
export const checkRecipes = ({ drugs }: Protocol): Faults =>
  drugs.flatMap((drug, d) =>
    drug.recipes.flatMap((recipe, r) => {
      const at = ["drugs", d, "recipes", r];
      return [...checkArithmetic(recipe, at), ...checkFor(recipe, drug, at)];
    }),
  );
