import { describe, expect, it } from "vitest";
import { normalise } from "../../../src/language/normalise/normalise.ts";

const words = (text: string): string => normalise(text).join(" ");

describe("labels, units and signs as people write them", () => {
  it.each([
    ["BP 120/80", "b p one two zero over eight zero"],
    ["bp: 120 / 80", "b p one two zero over eight zero"],
    ["BP=120/80mmHg", "b p one two zero over eight zero millimetres of mercury"],
    ["110/palp", "one one zero over palp"],
    ["NIBP 110 over 60", "cuff one one zero over six zero"],
    ["SBP 95", "systolic nine five"],
    ["MAP 77 mm Hg", "map seven seven millimetres of mercury"],
    ["SpO2 97%", "s p o two nine seven percent"],
    ["SpO₂: 97 %", "s p o two nine seven percent"],
    ["Sats 94.", "sats nine four"],
    ["EtCO2 4.5 kPa", "e t c o two four point five kilopascals"],
    ["HR90", "heart rate nine zero"],
    ["RR 14/min", "respiratory rate one four per minute"],
    ["pulse 90 bpm", "pulse nine zero beats per minute"],
    ["ICP 20 cmH2O", "i c p two zero centimetres of water"],
    ["ICP 20 cm H2O", "i c p two zero centimetres of water"],
    ["temp 36.5", "temp three six point five"],
    ["temp 36.5 °C", "temp three six point five degrees celsius"],
    ["temp 36.5℃", "temp three six point five degrees celsius"],
    ["temp 98.6F", "temp nine eight point six fahrenheit"],
    ["glucose 100 mg/dL", "glucose one zero zero milligrams per decilitre"],
    ["glucose 5.5mmol/L", "glucose five point five millimoles per litre"],
    ["GCS E3 V4 M5", "g c s eyes three verbal four motor five"],
    ["E1VTM4", "eyes one verbal not testable motor four"],
    ["R pupil 3mm fixed", "right pupil three millimetres fixed"],
    ["pupils L 3 R 4", "pupils left three right four"],
    ["L arm 120/80", "left arm one two zero over eight zero"],
    ["80kg", "eight zero kilograms"],
    ["54 y/o", "five four years old"],
    [".5", "point five"],
    ["nought point five", "zero point five"],
    ["tree fower fife ait niner", "three four five eight niner"],
  ])("%j → %j", (text, expected) => expect(words(text)).toBe(expected));
});

describe("plain words", () => {
  it.each([
    ["What's the status?", "what is the status"],
    ["what’s that", "what is that"],
    ["isn't", "is not"],
    ["b.p. one ten over sixty", "b p one ten over sixty"],
    ["Stand-by", "stand by"],
    ["standby", "stand by"],
    ["one-ten over sixty-five", "one ten over sixty five"],
    ["  STATUS \t report\r\n", "status report"],
    ["(say again)", "say again"],
    ['"done"', "done"],
    ["fifteen, one five", "fifteen one five"],
    ["thirty, three zero", "thirty three zero"],
    ["one ten over sixty, rate ninety; sats ninety four.", "one ten over sixty rate ninety sats ninety four"],
    ["rate ninety – sats ninety four", "rate ninety sats ninety four"],
    ["ｒａｔｅ ９０", "rate nine zero"],
    ["r is a letter", "r is a letter"],
    ["", ""],
    [" \n ", ""],
    ["...", ""],
    ["constructor toString hasOwnProperty", "constructor tostring hasownproperty"],
  ])("%j → %j", (text, expected) => expect(words(text)).toBe(expected));
});

describe("text that could be another value is left as it was written", () => {
  it.each([
    ["-5", "-5"],
    ["ICP - 5", "i c p - five"],
    ["ICP – five", "i c p – five"],
    ["\u22125", "\u22125"],
    ["+5", "+5"],
    ["<90", "<90"],
    ["~90", "~90"],
    ["1e3", "1e3"],
    ["0x10", "0x10"],
    ["12O", "12o"],
    ["½", "½"],
    ["1½", "1½"],
    ["10³", "10³"],
    ["①", "①"],
    ["٣", "٣"],
    ["𝟏𝟐", "𝟏𝟐"],
    ["1,200", "1,200"],
    ["36,5", "36,5"],
    ["3/4", "3/4"],
    ["1/12/2024", "1/12/2024"],
    ["120/80/60", "120/80/60"],
    ["1:05", "1:05"],
    ["1.2.3", "1.2.3"],
    ["120-80", "120-80"],
    ['70"', '70"'],
    ["5'10", "5'10"],
    ["90s", "90s"],
    ["1.5m", "1.5m"],
    ["5 mg/kg", "five mg/kg"],
    ["20 5", "20 5"],
    ["100 20", "100 20"],
    ["twenty 5", "twenty 5"],
    ["20 five", "20 five"],
    ["a hundred 20", "a hundred 20"],
    ["36. 5", "36 5"],
    ["36 .5", "36 .5"],
    ["9, 120/80", "9 120 over eight zero"],
    ["rate ninety, five", "rate ninety , five"],
    ["rate ninety\nfive", "rate ninety , five"],
    ["1\u200b2", "1\u200b2"],
    ["9\u00000", "9\u00000"],
  ])("%j → %j", (text, expected) => expect(words(text)).toBe(expected));
});

describe("digits beside each other", () => {
  it.each([
    ["1 2 0", "one two zero"],
    ["one 2 zero", "one two zero"],
    ["36 point 5", "three six point five"],
    ["5 hundred", "five hundred"],
    ["120 over 80", "one two zero over eight zero"],
    ["s p o 2 97", "s p o two nine seven"],
  ])("%j → %j", (text, expected) => expect(words(text)).toBe(expected));
});
