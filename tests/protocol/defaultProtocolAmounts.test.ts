import { describe, expect, it } from "vitest";
import { defaultProtocol as protocol } from "../../src/protocol/defaultProtocol.ts";
import type { Dose, Drug, Osmotic } from "../../src/protocol/protocol.ts";

function one<T extends { readonly id: string }>(list: readonly T[], id: string): T {
  const found = list.find((entry) => entry.id === id);
  if (found === undefined) throw new Error(`nothing is called ${id}`);
  return found;
}

const drug = (id: string): Drug => one(protocol.drugs, id);
const osmotic = (id: string): Osmotic => one(protocol.osmotics, id);

const MICROGRAMS: Readonly<Record<string, number>> = { mcg: 1, mg: 1000, g: 1_000_000 };
const inUnit = (amount: number, from: string, to: string): number =>
  from === to ? amount : (amount * (MICROGRAMS[from] ?? Number.NaN)) / (MICROGRAMS[to] ?? Number.NaN);

type Agent = { readonly concentrations: Drug["concentrations"] };

/** What one millilitre of the strength so labelled holds. */
function perMl({ concentrations }: Agent, label: string, unit: string): number {
  const strength = concentrations.find((c) => c.label === label);
  if (strength === undefined) throw new Error(`no strength ${label}`);
  return inUnit(strength.amount, strength.unit, unit) / strength.volumeMl;
}

type Amount = "low" | "usual" | "high" | "shock";

function amountOf(dose: Dose, which: Amount, kg: number): number {
  const each = which === "shock" ? (dose.shock?.usual ?? Number.NaN) : dose[which];
  return Math.min(dose.cap ?? Infinity, dose.per === "kg" ? each * kg : each);
}

/** A man of 178 cm and 80 kg, whose ideal weight is 73.2 kg; a child of 25 kg. Worked by hand. */
type Drawn = readonly [string, string, Amount, kg: number, amount: number, label: string, mL: number];
const DRAWN: readonly Drawn[] = [
  ["ketamine", "adultInduction", "usual", 80, 120, "50 mg in 1 mL", 2.4],
  ["ketamine", "adultInduction", "usual", 80, 120, "10 mg in 1 mL", 12],
  ["ketamine", "adultInduction", "shock", 80, 60, "50 mg in 1 mL", 1.2],
  ["ketamine", "adultInduction", "high", 120, 200, "50 mg in 1 mL", 4],
  ["ketamine", "childInduction", "usual", 25, 37.5, "10 mg in 1 mL", 3.75],
  ["etomidate", "adultInduction", "usual", 80, 24, "2 mg in 1 mL", 12],
  ["etomidate", "adultInduction", "shock", 80, 12, "2 mg in 1 mL", 6],
  ["etomidate", "adultInduction", "usual", 140, 40, "2 mg in 1 mL", 20],
  ["propofol", "adultInduction", "usual", 60, 60, "10 mg in 1 mL", 6],
  ["propofol", "adultInduction", "shock", 60, 30, "10 mg in 1 mL", 3],
  ["rocuronium", "adultParalysis", "usual", 73.3, 87.96, "10 mg in 1 mL", 8.796],
  ["rocuronium", "adultParalysis", "usual", 80, 96, "10 mg in 1 mL", 9.6],
  ["rocuronium", "childParalysis", "usual", 25, 30, "10 mg in 1 mL", 3],
  ["suxamethonium", "adultParalysis", "usual", 80, 120, "20 mg in 1 mL", 6],
  ["suxamethonium", "adultParalysis", "shock", 80, 160, "20 mg in 1 mL", 8],
  ["suxamethonium", "adultParalysis", "usual", 150, 200, "20 mg in 1 mL", 10],
  ["suxamethonium", "smallChildParalysis", "usual", 8, 16, "20 mg in 1 mL", 0.8],
  ["suxamethonium", "muscle", "high", 25, 100, "100 mg in 1 mL", 1],
  ["fentanyl", "blunting", "usual", 80, 160, "50 micrograms in 1 mL", 3.2],
  ["fentanyl", "blunting", "high", 100, 250, "50 micrograms in 1 mL", 5],
  ["lidocaine", "blunting", "usual", 60, 90, "20 mg in 1 mL", 4.5],
  ["lidocaine", "blunting", "usual", 80, 100, "10 mg in 1 mL", 10],
  ["sugammadex", "rescue", "usual", 80, 1280, "100 mg in 1 mL", 12.8],
  ["phenylephrine", "pushDose", "usual", 80, 100, "10 mg in 100 mL", 1],
  ["phenylephrine", "pushDose", "high", 80, 200, "100 micrograms in 1 mL", 2],
  ["adrenaline", "pushDose", "usual", 80, 10, "100 micrograms in 10 mL", 1],
  ["ephedrine", "pushDose", "usual", 80, 5, "5 mg in 1 mL", 1],
  ["levetiracetam", "seizure", "usual", 80, 4500, "100 mg in 1 mL", 45],
  ["levetiracetam", "preventionLoad", "usual", 80, 1600, "100 mg in 1 mL", 16],
  ["midazolam", "sedation", "usual", 80, 1.6, "1 mg in 1 mL", 1.6],
  ["calcium chloride", "adult", "usual", 80, 1, "1 g in 10 mL", 10],
  ["calcium chloride", "child", "usual", 25, 500, "1 g in 10 mL", 5],
  ["calcium gluconate", "adult", "usual", 80, 3, "1 g in 10 mL", 30],
  ["calcium gluconate", "child", "usual", 25, 1500, "1 g in 10 mL", 15],
  ["tranexamic acid", "child", "usual", 25, 375, "100 mg in 1 mL", 3.75],
  ["tranexamic acid", "child", "usual", 80, 1000, "100 mg in 1 mL", 10],
];

describe("drawn up", () => {
  it.each(DRAWN)("%s, %s, %s, at %d kg: %d is %s, %d mL", (id, doseId, which, kg, amount, label, mL) => {
    const dose = one(drug(id).doses, doseId);
    expect(amountOf(dose, which, kg)).toBeCloseTo(amount, 9);
    expect(amount / perMl(drug(id), label, dose.unit)).toBeCloseTo(mL, 9);
  });

  it("gives fifteen micrograms of adrenaline in one and a half millilitres, within the push dose", () => {
    const { low, high } = one(drug("adrenaline").doses, "pushDose");
    expect([low, high]).toEqual([5, 20]);
    expect(15 / perMl(drug("adrenaline"), "100 micrograms in 10 mL", "mcg")).toBeCloseTo(1.5, 9);
  });
});

type Fixed = readonly [string, string, kg: number, unit: string, amount: number];
const WITHOUT_STRENGTH: readonly Fixed[] = [
  ["prothrombin complex", "inrLow", 80, "units", 2000],
  ["prothrombin complex", "inrLow", 120, "units", 2500],
  ["prothrombin complex", "inrMiddle", 120, "units", 3500],
  ["prothrombin complex", "inrHigh", 100, "units", 5000],
  ["prothrombin complex", "factorTen", 80, "units", 4000],
  ["idarucizumab", "dabigatran", 80, "g", 5],
  ["andexanet alfa", "lowBolus", 80, "mg", 400],
  ["andexanet alfa", "lowFollowing", 80, "mg", 480],
  ["andexanet alfa", "highBolus", 80, "mg", 800],
  ["andexanet alfa", "highFollowing", 80, "mg", 960],
  ["phytomenadione", "warfarin", 80, "mg", 10],
  ["atropine", "childBradycardia", 10, "mg", 0.2],
  ["atropine", "childBradycardia", 40, "mg", 0.5],
  ["midazolam", "seizure", 80, "mg", 10],
  ["midazolam", "seizureSmall", 25, "mg", 5],
];

it.each(WITHOUT_STRENGTH)("%s, %s, at %d kg: the usual dose in %s is %d", (id, doseId, kg, unit, amount) => {
  const dose = one(drug(id).doses, doseId);
  expect([amountOf(dose, "usual", kg), dose.unit]).toEqual([amount, unit]);
});

/** A rate as ordered, and what the pump is set to. */
type Pumped = readonly [string, string, rate: number, kg: number, label: string, mLPerH: number];
const PUMPED: readonly Pumped[] = [
  ["noradrenaline", "perKg", 0.1, 80, "4 mg in 250 mL", 30],
  ["noradrenaline", "perKg", 0.1, 80, "4 mg in 50 mL", 6],
  ["noradrenaline", "perKg", 0.05, 70, "4 mg in 250 mL", 13.125],
  ["noradrenaline", "perKg", 0.08, 75, "4 mg in 250 mL", 22.5],
  ["noradrenaline", "perMinute", 10, 80, "4 mg in 250 mL", 37.5],
  ["phenylephrine", "perMinute", 50, 80, "10 mg in 100 mL", 30],
  ["phenylephrine", "perMinute", 50, 80, "10 mg in 500 mL", 150],
  ["adrenaline", "perKg", 0.05, 80, "1 mg in 250 mL", 60],
  ["vasopressin", "fixed", 0.03, 80, "20 units in 100 mL", 9],
  ["propofol", "sedationInfusion", 20, 80, "10 mg in 1 mL", 9.6],
  ["midazolam", "sedationInfusion", 0.05, 80, "1 mg in 1 mL", 4],
  ["ketamine", "sedationInfusion", 1, 80, "10 mg in 1 mL", 8],
  ["fentanyl", "painReliefInfusion", 1, 80, "10 micrograms in 1 mL", 8],
  ["tranexamic acid", "childInfusion", 2, 25, "100 mg in 1 mL", 0.5],
];

it.each(PUMPED)("%s, %s: %d at %d kg, %s, is %d mL/h", (id, infusionId, rate, kg, label, mLPerH) => {
  const { unit, low, high } = one(drug(id).infusions, infusionId);
  const parts = unit.split("/");
  const hourly = rate * (parts.includes("kg") ? kg : 1) * (parts.at(-1) === "min" ? 60 : 1);
  expect(rate).toBeGreaterThanOrEqual(low);
  expect(rate).toBeLessThanOrEqual(high);
  expect(hourly / perMl(drug(id), label, parts[0] ?? "")).toBeCloseTo(mLPerH, 9);
});

it("runs tranexamic acid over ten minutes, then over eight hours", () => {
  const runs = (["first", "second"] as const).map((id) => one(drug("tranexamic acid").doses, id));
  const labels = ["1 g in 100 mL", "1 g in 500 mL"];
  const rates = runs.map(({ usual, unit, overS }, i) => {
    const mL = usual / perMl(drug("tranexamic acid"), labels[i] ?? "", unit);
    return (mL / (overS?.low ?? Number.NaN)) * 3600;
  });
  expect(rates).toEqual([600, 62.5]);
});

describe("osmotic agents", () => {
  const ROWS: readonly (readonly [string, string, Amount, kg: number, amount: number])[] = [
    ["sodiumChloride3", "child", "low", 20, 40],
    ["sodiumChloride3", "child", "high", 20, 100],
    ["sodiumChloride3", "child", "high", 80, 250],
    ["sodiumChloride3", "adult", "usual", 80, 250],
    ["sodiumChloride5", "adult", "usual", 80, 250],
    ["sodiumChloride7point5", "adult", "low", 80, 160],
    ["sodiumChloride7point5", "adult", "high", 80, 250],
    ["sodiumChloride23point4", "adult", "usual", 80, 30],
    ["sodiumChloride23point4", "child", "usual", 20, 10],
    ["mannitol20", "adult", "usual", 80, 40],
    ["mannitol20", "child", "usual", 20, 10],
    ["sodiumBicarbonate8point4", "adult", "usual", 80, 85],
  ];
  it.each(ROWS)("%s, %s, %s, at %d kg: %d", (id, doseId, which, kg, amount) => {
    expect(amountOf(one(osmotic(id).doses, doseId), which, kg)).toBeCloseTo(amount, 9);
  });

  it("is mannitol in grams: 40 g are 200 mL of 20 %", () => {
    const { percent, doses } = osmotic("mannitol20");
    expect(doses.map(({ unit }) => unit)).toEqual(["g", "g"]);
    expect((amountOf(one(doses, "adult"), "usual", 80) / percent) * 100).toBe(200);
  });

  it("may be given twice at 23.4 %, 20 minutes apart", () => {
    const { mostDoses, repeatAfterS } = one(osmotic("sodiumChloride23point4").doses, "adult");
    expect([mostDoses, repeatAfterS]).toEqual([2, { low: 1200, high: 1200 }]);
  });

  it.each(protocol.osmotics)("$label is what its name says", ({ label, percent }) => {
    expect(label).toContain(`${percent} %`);
  });
});

/** What each recipe makes, in micrograms or milligrams for each millilitre. */
const RECIPES: readonly (readonly [string, string, string, number])[] = [
  ["adrenaline", "pushDoseSyringe", "mcg", 10],
  ["adrenaline", "pushDoseFromAmpoule", "mcg", 10],
  ["adrenaline", "bag250", "mcg", 4],
  ["phenylephrine", "pushDoseSyringe", "mcg", 100],
  ["phenylephrine", "bag500", "mcg", 20],
  ["noradrenaline", "bag250", "mcg", 16],
  ["ketamine", "halfStrength", "mg", 50],
];

describe("recipes", () => {
  it.each(RECIPES)("%s, %s: in %s for each mL, %d", (id, recipeId, unit, strength) => {
    const { stock, takeMl, addMl, makes } = one(drug(id).recipes, recipeId);
    const taken = (inUnit(stock.amount, stock.unit, unit) / stock.volumeMl) * takeMl;
    expect(taken / (takeMl + addMl)).toBeCloseTo(strength, 9);
    expect(inUnit(makes.amount, makes.unit, unit) / makes.volumeMl).toBeCloseTo(strength, 9);
    expect(makes.volumeMl).toBe(takeMl + addMl);
  });

  it("are for a syringe to give from at once, or for an infusion", () => {
    const made = protocol.drugs.flatMap(({ id, recipes }) => recipes.map((r) => [`${id} ${r.id}`, r.for]));
    expect(Object.fromEntries(made)).toEqual({
      "ketamine halfStrength": "syringe",
      "noradrenaline bag250": "infusion",
      "adrenaline pushDoseSyringe": "syringe",
      "adrenaline pushDoseFromAmpoule": "syringe",
      "adrenaline bag250": "infusion",
      "phenylephrine pushDoseSyringe": "syringe",
      "phenylephrine bag500": "infusion",
    });
  });

  it("are all looked at here", () => {
    const all = protocol.drugs.flatMap(({ id, recipes }) => recipes.map((recipe) => `${id} ${recipe.id}`));
    expect(all.sort()).toEqual(RECIPES.map(([id, recipeId]) => `${id} ${recipeId}`).sort());
  });

  it.each(RECIPES)("%s, %s: makes a strength that may be read back", (id, recipeId, unit, strength) => {
    const { makes } = one(drug(id).recipes, recipeId);
    expect(makes.volumeMl).toBeGreaterThan(0);
    const known = drug(id).concentrations.map((c) => inUnit(c.amount, c.unit, unit) / c.volumeMl);
    expect(known).toContainEqual(expect.closeTo(strength, 9));
  });

  it("never leave an arrest strength of adrenaline among those that may be read back for a push dose", () => {
    const strongest = drug("adrenaline").concentrations.map((c) => inUnit(c.amount, c.unit, "mcg") / c.volumeMl);
    expect(Math.max(...strongest)).toBeLessThan(100);
  });
});
