import { PLAIN_DIGITS } from "../numbers/numberWords.ts";
import type { Piece } from "./piece.ts";
import { unitWords, wordSynonym } from "./synonyms.ts";

const NUMBER = String.raw`\d+(?:\.\d+)?|\.\d+`;
/** "120/80", "120/palp"; "3/4" is a fraction, not a pressure. */
const PRESSURE = String.raw`\d{2,3}\/(?:\d{1,3}|palp|p)`;

const WITH_UNIT = new RegExp(`^(${PRESSURE}|${NUMBER})([a-z°%/][a-z0-9°/]*)?$`, "u");
const LABELLED = new RegExp(`^([a-z]+)[:=]?(${PRESSURE}|${NUMBER})([a-z°%/][a-z0-9°/]*)?$`, "u");
const LABELLED_APART = /^([a-z]+2?)[:=](.+)$/u;
/** Coma scale parts as written in notes: "E3", "E3V4M5", "E1VTM4". */
const COMA_PARTS = /^(?:e([1-4]))?(?:v([1-5]|t))?(?:m([1-6]))?$/u;

/** Labels that are written right up against their number. "e", "v", "m" are coma parts; others could be anything. */
const LABELS: ReadonlySet<string> = new Set("bp nibp abp sbp dbp map hr rr icp gcs wt ht temp sats".split(" "));

const words = (list: readonly string[]): readonly Piece[] =>
  list.map((word) => ({ word, digits: undefined, afterBreak: false }));

/** "36.5" → "three six point five", each word knowing the digits it came from. */
function digitPieces(written: string): readonly Piece[] {
  const digits = { written, single: written.length === 1 };
  return [...written].map((c) => ({
    word: c === "." ? "point" : (PLAIN_DIGITS[Number(c)] ?? c),
    digits,
    afterBreak: false,
  }));
}

function valuePieces(value: string): readonly Piece[] {
  const [left = "", right] = value.split("/");
  if (right === undefined) return digitPieces(left);
  return [...digitPieces(left), ...words(["over"]), ...(/^\d/u.test(right) ? digitPieces(right) : words(["palp"]))];
}

function withUnit(text: string): readonly Piece[] | undefined {
  const [, value, unit] = WITH_UNIT.exec(text) ?? [];
  if (value === undefined) return undefined;
  if (unit === undefined) return valuePieces(value);
  const said = unitWords(unit, true);
  return said && [...valuePieces(value), ...words(said)];
}

function labelled(text: string): readonly Piece[] | undefined {
  const [, label, value = "", unit = ""] = LABELLED.exec(text) ?? [];
  if (label !== undefined && LABELS.has(label)) {
    const rest = withUnit(value + unit);
    return rest && [...words(wordSynonym(label) ?? [label]), ...rest];
  }
  const [, apart, after = ""] = LABELLED_APART.exec(text) ?? [];
  const rest = apart === undefined ? undefined : withUnit(after);
  return apart === undefined || rest === undefined ? undefined : [...words(wordSynonym(apart) ?? [apart]), ...rest];
}

function comaParts(text: string): readonly Piece[] | undefined {
  const [whole, eye, verbal, motor] = COMA_PARTS.exec(text) ?? [];
  if (whole === undefined || whole === "") return undefined;
  const part = (name: string, score: string | undefined): readonly Piece[] =>
    score === undefined ? [] : [...words([name]), ...(score === "t" ? words(["not", "testable"]) : digitPieces(score))];
  return [...part("eyes", eye), ...part("verbal", verbal), ...part("motor", motor)];
}

/**
 * Text with digits or signs in it and no spaces, as words: "120/80", "97%", "4.5kpa", "hr:90", "e3v4m5".
 * `undefined` for anything else ("1e3", "0x10", "12o", "½", "-5", "1,200", "3/4", "1:05"): it is not for us to say
 * what such text is worth.
 */
export const readWritten = (text: string): readonly Piece[] | undefined =>
  withUnit(text) ?? labelled(text) ?? comaParts(text);
