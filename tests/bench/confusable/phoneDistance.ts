import { OUTPUT_NAMES } from "../../../src/listener/phones.ts";

/**
 * How unlike two phones sound, from the way they are made: 0 the same, 1 nothing in common. The features are those of any
 * textbook of phonetics (place, manner and voice of consonants; height, backness and rounding of vowels, where a diphthong
 * ends); the weights are ours, from memory of published tables of confusions in noise: voice and place are lost first,
 * manner later. Not for: judging the network, which has confusions of its own; the measured ones stand beside these.
 */
type Consonant = { readonly place: number; readonly manner: number; readonly voiced: boolean };
type Vowel = { readonly height: number; readonly back: number; readonly round: boolean; readonly glide: string };

const PLACES = ["lips", "teeth", "ridge", "palate", "soft palate", "throat"];
const MANNERS = ["stop", "affricate", "fricative", "nasal", "liquid", "glide"];

const consonant = (place: string, manner: string, voiced: boolean): Consonant => ({
  place: PLACES.indexOf(place),
  manner: MANNERS.indexOf(manner),
  voiced,
});
const CONSONANTS: Readonly<Record<string, Consonant>> = {
  P: consonant("lips", "stop", false),
  B: consonant("lips", "stop", true),
  T: consonant("ridge", "stop", false),
  D: consonant("ridge", "stop", true),
  K: consonant("soft palate", "stop", false),
  G: consonant("soft palate", "stop", true),
  CH: consonant("palate", "affricate", false),
  JH: consonant("palate", "affricate", true),
  F: consonant("lips", "fricative", false),
  V: consonant("lips", "fricative", true),
  TH: consonant("teeth", "fricative", false),
  DH: consonant("teeth", "fricative", true),
  S: consonant("ridge", "fricative", false),
  Z: consonant("ridge", "fricative", true),
  SH: consonant("palate", "fricative", false),
  ZH: consonant("palate", "fricative", true),
  HH: consonant("throat", "fricative", false),
  M: consonant("lips", "nasal", true),
  N: consonant("ridge", "nasal", true),
  NG: consonant("soft palate", "nasal", true),
  L: consonant("ridge", "liquid", true),
  R: consonant("palate", "glide", true),
  W: consonant("lips", "glide", true),
  Y: consonant("palate", "glide", true),
};

/** Height 0 close to 1 open, backness 0 front to 1 back. */
const vowel = (height: number, back: number, round = false, glide = ""): Vowel => ({ height, back, round, glide });
const VOWELS: Readonly<Record<string, Vowel>> = {
  IY: vowel(0, 0),
  IH: vowel(0.2, 0.2),
  EH: vowel(0.6, 0.1),
  AE: vowel(0.85, 0.1),
  AH: vowel(0.6, 0.5),
  ER: vowel(0.5, 0.5, true),
  AA: vowel(1, 0.8),
  AO: vowel(0.7, 1, true),
  UH: vowel(0.2, 0.8, true),
  UW: vowel(0, 1, true),
  EY: vowel(0.45, 0, false, "i"),
  AY: vowel(1, 0.4, false, "i"),
  OY: vowel(0.7, 0.9, true, "i"),
  AW: vowel(1, 0.5, false, "u"),
  OW: vowel(0.5, 0.9, true, "u"),
};

/** How easily a sound is missed, or heard where none was: 1 hardly ever. */
const WEAK: Readonly<Record<string, number>> = { AH: 0.4, IH: 0.45, HH: 0.4, T: 0.5, D: 0.5, N: 0.6, Y: 0.5, ER: 0.6 };
const MISSED = 0.75;

const MANNER_STEP = 0.25;
const SONORANT = new Set(["nasal", "liquid", "glide"].map((name) => MANNERS.indexOf(name)));

function consonantsApart(a: Consonant, b: Consonant): number {
  const place = Math.min(0.4, 0.15 * Math.abs(a.place - b.place));
  const sameKind = SONORANT.has(a.manner) === SONORANT.has(b.manner);
  const manner = a.manner === b.manner ? 0 : MANNER_STEP + (sameKind ? 0 : 0.25);
  return Math.min(1, place + manner + (a.voiced === b.voiced ? 0 : 0.2));
}

function vowelsApart(a: Vowel, b: Vowel): number {
  const where = Math.hypot(a.height - b.height, a.back - b.back);
  return Math.min(1, 0.6 * where + (a.round === b.round ? 0 : 0.1) + (a.glide === b.glide ? 0 : 0.2));
}

const nameOf = (phone: number): string => OUTPUT_NAMES[phone] ?? "";

function namesApart(a: string, b: string): number {
  if (a === b) return 0;
  const [c, d, v, w] = [CONSONANTS[a], CONSONANTS[b], VOWELS[a], VOWELS[b]];
  if (c !== undefined && d !== undefined) return consonantsApart(c, d);
  return v !== undefined && w !== undefined ? vowelsApart(v, w) : 1;
}

/** By phone numbers. */
export const APART: readonly (readonly number[])[] = OUTPUT_NAMES.map((a) => OUTPUT_NAMES.map((b) => namesApart(a, b)));
export const missing = (phone: number): number => WEAK[nameOf(phone)] ?? MISSED;

/** The least cost of turning one list of phones into the other. */
export function phonesApart(a: readonly number[], b: readonly number[]): number {
  let row = [0];
  for (const phone of b) row.push(row.at(-1)! + missing(phone));
  for (const phone of a) {
    const next = [row[0]! + missing(phone)];
    b.forEach((other, i) => {
      const changed = row[i]! + APART[phone]![other]!;
      next.push(Math.min(changed, row[i + 1]! + missing(phone), next[i]! + missing(other)));
    });
    row = next;
  }
  return row.at(-1)!;
}
