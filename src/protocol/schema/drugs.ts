import * as v from "valibot";
import { choice, doseUnit, positive, rateUnit, region, source, sourced, text, weightScalar } from "./parts.ts";

const seconds = v.strictObject({ low: positive, high: positive });
const amounts = { low: positive, usual: positive, high: positive };
const audience = v.picklist(["adult", "child", "all"]);

/** One way to give a drug at once. Amounts are in `unit`, for each kilogram where `per` is "kg". */
export const dose = v.strictObject({
  id: text,
  purpose: text,
  /** For after intubation: once the tube is confirmed it goes before the others, which were for before it. */
  afterTube: v.exactOptional(v.literal(true)),
  population: audience,
  route: v.picklist(["IV", "IM"]),
  per: v.picklist(["kg", "dose"]),
  unit: doseUnit,
  ...amounts,
  /** Which weight; only and always where `per` is "kg". */
  weight: v.exactOptional(weightScalar),
  /** Counts from this weight on, and below that one. */
  fromKg: v.exactOptional(positive),
  belowKg: v.exactOptional(positive),
  /** Instead of the amounts above, while the shock index is at or over the protocol's limit. */
  shock: v.exactOptional(v.strictObject(amounts)),
  /** Not given at all while the shock index is there. */
  omitInShock: v.exactOptional(v.literal(true)),
  /** Never less and never more than this at once, in `unit`. */
  minimum: v.exactOptional(positive),
  cap: v.exactOptional(positive),
  /** To be given over this long. */
  overS: v.exactOptional(seconds),
  /** May be given again after this long … */
  repeatAfterS: v.exactOptional(seconds),
  /** … up to this many times in all. */
  mostDoses: v.exactOptional(positive),
  source,
  choice: v.exactOptional(choice),
});

const infusion = v.strictObject({
  id: text,
  purpose: text,
  population: audience,
  unit: rateUnit,
  low: positive,
  start: positive,
  high: positive,
  /** Only and always where `unit` is for each kilogram. */
  weight: v.exactOptional(weightScalar),
  source,
  choice: v.exactOptional(choice),
});

/** So much drug in so much fluid, as the label or the syringe says it: 4 mg in 250 mL. */
const strength = { amount: positive, unit: doseUnit, volumeMl: positive };
const concentration = v.strictObject({ ...strength, label: text, source });

/** How a strength is made: take some of the stock, add the rest. */
export const recipe = v.strictObject({
  id: text,
  /** `syringe`: drawn up to give from at once. `infusion`: a bag, or the syringe of a pump. */
  for: v.picklist(["syringe", "infusion"]),
  stock: v.strictObject(strength),
  takeMl: positive,
  diluent: text,
  addMl: positive,
  makes: v.strictObject(strength),
  source,
});

const caution = v.strictObject({ text, source });

/** Classes of ISO 26825, and those it gives no colour. */
export const drugClass = v.picklist([
  "induction",
  "benzodiazepine",
  "muscleRelaxant",
  "opioid",
  "vasopressor",
  "localAnaesthetic",
  "anticholinergic",
  "relaxantReversal",
  "other",
]);
export type DrugClass = v.InferOutput<typeof drugClass>;

export const drug = v.strictObject({
  /** The international name in lower case; the key in the record. */
  id: text,
  names: v.strictObject({ international: text, us: text }),
  /** Every way it is said, in the words of the grammar. */
  spoken: v.pipe(v.array(text), v.nonEmpty("names no spoken form")),
  class: drugClass,
  /** Where it is on sale; absent: everywhere. */
  regions: v.exactOptional(sourced(v.pipe(v.array(region), v.nonEmpty("names no region")))),
  doses: v.array(dose),
  infusions: v.array(infusion),
  concentrations: v.array(concentration),
  recipes: v.array(recipe),
  onsetS: v.exactOptional(sourced(seconds)),
  durationS: v.exactOptional(sourced(seconds)),
  cautions: v.array(caution),
});

/** Fluid or blood given for pressure. */
export const fluid = v.strictObject({
  id: text,
  label: text,
  adultMl: sourced(v.strictObject({ low: positive, high: positive })),
  childMlPerKg: sourced(v.strictObject({ low: positive, high: positive })),
  cautions: v.array(caution),
});

/** An osmotic agent: what is dissolved, how strong, how much, and where it may run. */
export const osmotic = v.strictObject({
  id: text,
  label: text,
  spoken: v.pipe(v.array(text), v.nonEmpty("names no spoken form")),
  solute: v.picklist(["sodiumChloride", "mannitol", "sodiumBicarbonate"]),
  /** Grams in 100 mL. */
  percent: positive,
  doses: v.array(dose),
  infusions: v.array(infusion),
  centralLineOnly: sourced(v.boolean()),
  cautions: v.array(caution),
});
