/** A word as the screen writes it, and letters that make the engine say it as clinicians do. */
type Respelling = readonly [written: string, spoken: string];

/**
 * Words that the engine gets wrong, found by printing its phones. Matched as whole words, in either case.
 * A word that it says right (MAP, CPP, ICP, adrenaline, ketamine …) is not here; the tests hold both kinds.
 */
const WORDS: readonly Respelling[] = [
  ["SpO2", "S P O two"],
  ["EtCO2", "E T C O two"],
  ["PaCO2", "P A C O two"],
  ["FiO2", "F I O two"],
  ["CO2", "C O two"],
  ["ETT", "E T T"],
  ["phenylephrine", "fennil effrin"],
  ["etomidate", "a tommidate"],
  ["fentanyl", "fentanil"],
  ["mannitol", "mannitall"],
  ["metaraminol", "metta rammin all"],
  ["propofol", "pro puh fall"],
  ["noradrenaline", "nor adrenaline"],
  ["epinephrine", "eppin effrin"],
  ["ephedrine", "effedrin"],
  ["norepinephrine", "nor eppin effrin"],
  ["crystalloid", "crystal oid"],
  ["suxamethonium", "sucksa methonium"],
  ["levetiracetam", "levva tie rassa tam"],
  ["rocuronium", "rock you rownium"],
  ["succinylcholine", "sucksinnil co leen"],
  ["lidocaine", "lie doe cane"],
  ["sugammadex", "sue gamma dex"],
  ["atropine", "at ruh pean"],
  ["midazolam", "mid ay zo lam"],
  ["vasopressin", "vay zo pressin"],
  ["tranexamic", "tranex amic"],
  ["phytomenadione", "fyto menna dye own"],
  ["phytonadione", "fight oh na dye own"],
  ["idarucizumab", "eye darroo sizzoo mab"],
  ["andexanet", "an dexa net"],
  ["gluconate", "glue co nate"],
  ["oesophageal", "ee soffa jeel"],
  ["capnography", "cap noggraphy"],
  ["cricothyroid", "cry co thigh roid"],
  ["analgesia", "annal jeezia"],
  ["supraglottic", "supra glottic"],
  ["systolic", "sistollic"],
  ["saline", "say lean"],
  ["millilitres", "millileeters"],
  ["millilitre", "millileeter"],
  ["litres", "leeters"],
  ["litre", "leeter"],
  ["millimetres", "millimeeters"],
  ["millimetre", "millimeeter"],
];

/** Units, longest first: in full, since short forms kill. A unit may touch its number or another unit. */
const UNITS: readonly Respelling[] = [
  ["mm[Hg]", "millimeeters of mercury"],
  ["mmHg", "millimeeters of mercury"],
  ["cm[H2O]", "centimeters of water"],
  ["cmH2O", "centimeters of water"],
  ["mmol", "millimoles"],
  ["kPa", "kilopascals"],
  ["min", "minutes"],
  ["mcg", "micrograms"],
  ["\u03bcg", "micrograms"],
  ["mg", "milligrams"],
  ["kg", "kilograms"],
  ["mL", "millileeters"],
  ["cm", "centimeters"],
  ["mm", "millimeeters"],
  ["L", "leeters"],
  ["g", "grams"],
  ["h", "hours"],
  ["°C", "degrees"],
  ["%", "percent"],
];

/** Units that something is counted in: after "per" there is one of them. */
const PER: readonly Respelling[] = [
  ["min", "minute"],
  ["kg", "kilogram"],
  ["mL", "millileeter"],
  ["dL", "deciliter"],
  ["L", "leeter"],
  ["h", "hour"],
];

/** Signs that must not be dropped with the other letters the engine does not know: a number would change its meaning. */
const SIGNS: readonly Respelling[] = [
  ["≥", "at least"],
  ["≤", "at most"],
  ["<", "under"],
  [">", "over"],
  ["½", "and a half"],
];

const SUBSCRIPT_ZERO = "₀".charCodeAt(0);

const escape = (text: string) => text.replace(/[[\]\\^$.|?*+(){}]/g, "\\$&");
const compile = (table: readonly Respelling[], flags: string, before: string, after: string) =>
  table.map(([written, spoken]) => [new RegExp(before + escape(written) + after, flags), spoken] as const);

const WORD_PATTERNS = compile(WORDS, "gi", "(?<![A-Za-z0-9])", "(?![A-Za-z0-9])");
const PER_PATTERNS = compile(PER, "g", "\\/\\s*", "(?![A-Za-z])");
const UNIT_PATTERNS = compile(UNITS, "g", "(?<![A-Za-z])", "(?![A-Za-z])");

/**
 * Spells text for the built-in engine: units in full, "120/80" as over, "mL/kg" as per, and the words above.
 *
 * @returns ASCII only, which is all that the engine can be handed; other letters lose their accents or are left out.
 * Errors: none. Not for the screen, and not for device voices, which have their own dictionaries.
 */
export function respell(text: string): string {
  let spelt = text
    .replace(/[₀-₉]/g, (digit) => String(digit.charCodeAt(0) - SUBSCRIPT_ZERO))
    .replace(/\u00b5/g, "\u03bc") // the micro sign is written as a Greek letter by some keyboards
    .replace(/(?<=\d)\s*–\s*(?=\d)/g, " to ")
    .replace(/(?<![\w)])[−–-](?=\d)/g, "minus ")
    .replace(/(?<=\d)\s*\/\s*(?=\d)/g, " over ");
  for (const [sign, spoken] of SIGNS) spelt = spelt.replaceAll(sign, ` ${spoken} `);
  for (const [pattern, spoken] of PER_PATTERNS) spelt = spelt.replace(pattern, ` per ${spoken}`);
  for (const [pattern, spoken] of UNIT_PATTERNS) spelt = spelt.replace(pattern, ` ${spoken}`);
  for (const [pattern, spoken] of WORD_PATTERNS) spelt = spelt.replace(pattern, spoken);
  return toAscii(spelt)
    .replace(/\s+/g, " ")
    .replace(/ (?=[.,;:!?])/g, "")
    .trim();
}

const toAscii = (text: string) =>
  text
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .replace(/[‘’]/g, "'")
    .replace(/[^\x20-\x7e]/g, " ");
