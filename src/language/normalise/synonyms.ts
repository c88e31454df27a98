/**
 * Other ways to write what the grammars say in one way. Left: one lower-case word. Right: words of the grammars.
 * Labels are spelt as they are said. No entry makes, drops or changes a digit of a value.
 */
const WORDS: ReadonlyMap<string, string> = new Map([
  // labels
  ["bp", "b p"],
  ["nibp", "cuff"],
  ["abp", "arterial line"],
  ["sbp", "systolic"],
  ["dbp", "diastolic"],
  ["hr", "heart rate"],
  ["rr", "respiratory rate"],
  ["resps", "resp rate"],
  ["spo2", "s p o two"],
  ["co2", "c o two"],
  ["etco2", "e t c o two"],
  ["endtidal", "end tidal"],
  ["icp", "i c p"],
  ["cpp", "c p p"],
  ["gcs", "g c s"],
  ["bgl", "blood glucose"],
  ["wt", "weight"],
  ["ht", "height"],
  ["tbi", "brain injury"],
  ["ich", "brain haemorrhage"],
  // commands written as one word
  ["standby", "stand by"],
  ["readback", "read back"],
  // American spelling
  ["millimeters", "millimetres"],
  ["centimeters", "centimetres"],
  ["deciliter", "decilitre"],
  ["liter", "litre"],
  ["esophageal", "oesophageal"],
  ["hemorrhage", "haemorrhage"],
  // digits as radiotelephony says them (niner is a word of the grammars), and a British nought
  ["tree", "three"],
  ["fower", "four"],
  ["fife", "five"],
  ["ait", "eight"],
  ["nought", "zero"],
]);

/** Units, written after a number or alone. */
const UNITS: ReadonlyMap<string, string> = new Map([
  ["%", "percent"],
  ["mmhg", "millimetres of mercury"],
  ["hg", "of mercury"],
  ["kpa", "kilopascals"],
  ["cmh2o", "centimetres of water"],
  ["h2o", "of water"],
  ["/min", "per minute"],
  ["bpm", "beats per minute"],
  ["°", "degrees"],
  ["°c", "degrees celsius"],
  ["°f", "degrees fahrenheit"],
  ["mmol/l", "millimoles per litre"],
  ["mmol", "millimoles"],
  ["mg/dl", "milligrams per decilitre"],
  ["mg", "milligrams"],
  ["mcg", "micrograms"],
  ["ug", "micrograms"],
  ["µg", "micrograms"],
  ["ml", "millilitres"],
  ["mg/ml", "milligrams per millilitre"],
  ["mcg/ml", "micrograms per millilitre"],
  ["units/ml", "units per millilitre"],
  ["mcg/kg/min", "micrograms per kilo per minute"],
  ["mcg/min", "micrograms per minute"],
  ["mcg/kg/h", "micrograms per kilo per hour"],
  ["mg/kg/h", "milligrams per kilo per hour"],
  ["mg/h", "milligrams per hour"],
  ["units/min", "units per minute"],
  ["units/h", "units per hour"],
  ["ml/h", "millilitres per hour"],
  ["mm", "millimetres"],
  ["cm", "centimetres"],
  ["kg", "kilograms"],
  ["kgs", "kilograms"],
  ["lb", "pounds"],
  ["lbs", "pounds"],
  ["yrs", "years"],
  ["yo", "years old"],
  ["y/o", "years old"],
  ["mo", "months"],
  ["mths", "months"],
]);

/** One letter is a unit only straight after a number. */
const LETTER_UNITS: ReadonlyMap<string, string> = new Map([
  ["g", "grams"],
  ["l", "litres"],
  ["c", "celsius"],
  ["f", "fahrenheit"],
]);

/** Signs that stand alone between words. */
const SIGNS: ReadonlyMap<string, string> = new Map([
  ["=", "is"],
  ["&", "and"],
  ["@", "at"],
  ["/", "over"],
]);

const split = (words: string | undefined): readonly string[] | undefined => words?.split(" ");

/** What a written unit is called, or `undefined`. */
export const unitWords = (unit: string, afterNumber: boolean): readonly string[] | undefined =>
  split(UNITS.get(unit) ?? (afterNumber ? LETTER_UNITS.get(unit) : undefined));

/** The grammars' words for a word or label, or `undefined` when it is used as it stands. */
export const wordSynonym = (word: string): readonly string[] | undefined => split(WORDS.get(word));

export const signWords = (sign: string): readonly string[] | undefined => split(SIGNS.get(sign));
