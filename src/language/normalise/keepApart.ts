import { numberToken } from "../numbers/numberWords.ts";
import { wordsToNumber } from "../numbers/wordsToNumber.ts";
import type { Piece } from "./piece.ts";

/** Stands where two numbers would run into one: no grammar knows it, so the line is refused. */
const APART = ",";

type Kinds = readonly (string | undefined)[];

/** What each piece does in a number. The "two" of "s p o two" is part of a label, not of the number after it. */
const kindsOf = (pieces: readonly Piece[]): Kinds =>
  pieces.map(({ word }, i) => (word === "two" && pieces[i - 1]?.word === "o" ? undefined : numberToken(word)?.kind));

/** Would written digits become part of the number beside them? "20 5" is not 205, and "twenty 5" is anyone's guess. */
function collide(pieces: readonly Piece[], kinds: Kinds, at: number): boolean {
  const [left, right] = [pieces[at - 1], pieces[at]];
  const [before, after] = [kinds[at - 1], kinds[at]];
  if (left === undefined || right === undefined || left.digits === right.digits) return false;
  if (before === undefined || after === undefined) return false;
  if (right.digits === undefined && !["digit", "teen", "ten"].includes(after)) return false;
  if (left.digits === undefined && ["point", "and", "a"].includes(before)) return false;
  const single = (piece: Piece, kind: string): boolean => piece.digits?.single ?? kind === "digit";
  return !(single(left, before) && single(right, after));
}

/**
 * A comma between two numbers is lost on the grammar: "ninety, five" must not become ninety five. A pair that makes no
 * number together ("fifteen, one five") needs no comma.
 */
function breakLost(pieces: readonly Piece[], kinds: Kinds, at: number): boolean {
  if (!pieces[at]?.afterBreak || kinds[at] === undefined || kinds[at - 1] === undefined) return false;
  let [start, end] = [at - 1, at + 1];
  while (kinds[start - 1] !== undefined && !pieces[start]?.afterBreak) start--;
  while (kinds[end] !== undefined && !pieces[end]?.afterBreak) end++;
  return wordsToNumber(pieces.slice(start, end).map((p) => p.word)).ok;
}

/**
 * The words of the pieces, with neighbouring numbers kept from becoming one. Digits that collide with a number beside
 * them are given back as they were written; a lost comma is put back. Both are unknown to every grammar.
 */
export function keepApart(pieces: readonly Piece[]): readonly string[] {
  const kinds = kindsOf(pieces);
  const refused = new Set<Piece["digits"]>();
  for (let at = 1; at < pieces.length; at++) {
    if (collide(pieces, kinds, at)) refused.add(pieces[at - 1]?.digits).add(pieces[at]?.digits);
  }
  const words: string[] = [];
  for (const [i, piece] of pieces.entries()) {
    if (piece.digits !== undefined && refused.has(piece.digits)) {
      if (piece.digits !== pieces[i - 1]?.digits) words.push(piece.digits.written);
      continue;
    }
    if (breakLost(pieces, kinds, i)) words.push(APART);
    words.push(piece.word);
  }
  return words;
}
