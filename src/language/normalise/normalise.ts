import { foldCharacters } from "./foldCharacters.ts";
import { keepApart } from "./keepApart.ts";
import type { Piece } from "./piece.ts";
import { plainWords } from "./plainWords.ts";
import { readWritten } from "./readWritten.ts";
import { signWords, unitWords, wordSynonym } from "./synonyms.ts";
import { numberToken } from "../numbers/numberWords.ts";

const OPENING = new Set('(["');
const CLOSING = new Set('.,;:!?)]"');
const BREAKS = new Set(".,;:!?");
const DASHES = new Set(["-", "\u2013", "\u2014"]);
/** Letters with what may stand inside a word: apostrophes, dots of an abbreviation, hyphens. */
const WORD = /^[a-z](?:['.-]?[a-z])*$/u;

/** Text between spaces without the punctuation around it. Quotes are kept where only one is there: 70" is inches. */
function trimmed(chunk: string): { readonly core: string; readonly breaks: boolean } {
  let [start, end, breaks] = [0, chunk.length, false];
  const quoted = chunk.startsWith('"') === chunk.includes('"', 1);
  const strip = (set: ReadonlySet<string>, c: string): boolean => set.has(c) && (quoted || c !== '"');
  while (start < end && strip(OPENING, chunk[start] ?? "")) start++;
  while (end > start && strip(CLOSING, chunk[end - 1] ?? "")) {
    end--;
    breaks ||= BREAKS.has(chunk[end] ?? "");
  }
  return { core: chunk.slice(start, end), breaks };
}

const isPlainNumber = (piece: Piece | undefined): boolean =>
  piece !== undefined && numberToken(piece.word) !== undefined;

const toPieces = (words: readonly string[]): readonly Piece[] =>
  words.map((word) => ({ word, digits: undefined, afterBreak: false }));

function wordPieces(core: string): readonly Piece[] {
  const parts = core.split("-").flatMap(plainWords);
  return toPieces(parts.flatMap((part) => wordSynonym(part) ?? unitWords(part, false) ?? [part]));
}

/** One chunk as pieces; what is not understood stays as written, for the grammar to refuse. */
function readChunk(core: string, before: Piece | undefined): readonly Piece[] {
  const unit = unitWords(core, isPlainNumber(before));
  if (unit !== undefined) return toPieces(unit);
  const known = wordSynonym(core) ?? signWords(core);
  if (known !== undefined) return toPieces(known);
  if (WORD.test(core)) return wordPieces(core);
  return readWritten(core) ?? toPieces([core]);
}

/** "R" and "L" are sides only where a side is meant. */
function sides(words: readonly string[]): readonly string[] {
  const pupils = words.includes("pupil") || words.includes("pupils");
  return words.map((word, i) => {
    const next = words[i + 1];
    if ((word !== "l" && word !== "r") || !(pupils || next === "arm" || next === "leg")) return word;
    return word === "l" ? "left" : "right";
  });
}

/**
 * Free text as words for the matcher: typed lines, or what a browser's recogniser wrote.
 *
 * @param text any text, however long or strange; the work grows with its length and no faster.
 * @returns    lower-case words. Digits become digit words one by one ("15" → one five: what was typed has no
 *             sound-alike), labels are spelt ("BP" → b p), units said in full. Text that could be read in more than
 *             one way is returned as it was written: no grammar knows it, so the line is refused, not guessed.
 *
 * Not for: values. It returns words only; `wordsToNumber` alone makes a number of them.
 */
export function normalise(text: string): readonly string[] {
  const pieces: Piece[] = [];
  let afterBreak = false;
  let dash: string | undefined;
  for (const line of foldCharacters(text).split(/[\n\r]/u)) {
    for (const chunk of line.split(/\s+/u)) {
      const { core, breaks } = trimmed(chunk);
      if (DASHES.has(core)) dash = core;
      else if (core !== "") {
        const [first, ...rest] = readChunk(core, pieces.at(-1));
        // "ICP - 5": a dash between words, or a minus? Kept, so that nobody has to guess.
        if (dash !== undefined && isPlainNumber(first)) pieces.push(...toPieces([dash]));
        afterBreak ||= dash !== undefined;
        if (first !== undefined) pieces.push({ ...first, afterBreak }, ...rest);
        [afterBreak, dash] = [false, undefined];
      }
      afterBreak ||= breaks;
    }
    afterBreak = true;
  }
  return sides(keepApart(pieces));
}
