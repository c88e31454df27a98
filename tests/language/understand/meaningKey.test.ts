import { describe, expect, it } from "vitest";
import { meaningKey } from "../../../src/language/understand/meaningKey.ts";
import { understand } from "../../../src/language/understand/understand.ts";
import { compiled } from "../../phrases/caseGrammars.ts";

const asked = compiled("case", "asked");
const keyOf = (said: string): string => {
  const meaning = understand(asked, said.split(" "));
  if (meaning.kind !== "one") throw new Error(`"${said}" has ${meaning.kind} meanings`);
  return meaningKey(meaning.intent);
};

describe("one meaning", () => {
  it.each([
    ["heart rate one oh five", "pulse a hundred and five"],
    ["rate ninety sats ninety four", "sats nine four and rate nine zero"],
    ["sats ninety four", "sats ninety four percent"],
    ["one ten over sixty", "blood pressure one one zero over six zero millimetres of mercury"],
    ["fifteen", "one five"],
    ["fifteen one five", "fifteen"],
    ["left pupil four fixed", "left pupil four not reactive"],
    ["suction ready", "suction on"],
    ["age forty five", "age forty five years"],
    ["six months old", "age six months"],
    ["cause bleed", "cause is a brain haemorrhage"],
    ["herniation suspected", "suspected herniation"],
    ["yes", "affirm"],
    ["sats ninety nine zero", "sats ninety"],
    ["sats ninety no ninety two", "sats ninety two"],
    ["next", "next step"],
  ])("%s = %s", (one, other) => {
    expect(keyOf(one)).toBe(keyOf(other));
  });
});

describe("different meanings", () => {
  it.each([
    ["heart rate fifteen", "heart rate fifty"],
    ["heart rate ninety", "correction heart rate ninety"],
    ["correction one five", "negative one five"],
    ["heart rate ninety", "breaths nine"],
    ["end tidal five", "end tidal five kilopascals"],
    ["temp thirty seven", "temp thirty seven celsius"],
    ["one ten over sixty", "cuff one ten over sixty"],
    ["left arm one ten over sixty", "right arm one ten over sixty"],
    ["i c p twenty", "i c p twenty at the tragus"],
    ["left pupil four", "left pupil four fixed"],
    ["left pupil fixed", "right pupil fixed"],
    ["right pupil fixed", "right pupil sluggish"],
    ["sex male", "sex female"],
    ["age six", "age six months"],
    ["cause bleed", "cause head injury"],
    ["cause unknown", "cause bleed"],
    ["herniation suspected", "no herniation"],
    ["suction ready", "suction later"],
    ["suction ready", "ventilator ready"],
    ["suction ready", "done"],
    ["ninety", "ninety percent"],
    ["kilopascals", "millimetres"],
    ["affirm", "negative"],
  ])("%s ≠ %s", (one, other) => {
    expect(keyOf(one)).not.toBe(keyOf(other));
  });
});
