import type { Source, SourceKind } from "../../core/derivation.ts";
import { sayNumber } from "./number.ts";

const KINDS: Readonly<Record<SourceKind, string>> = {
  guideline: "guideline",
  label: "drug label",
  trial: "trial",
  textbook: "textbook",
  "common-practice": "common practice",
  memory: "from memory, not verified",
};
const KINDS_SAID = { ...KINDS, memory: "from memory" };

/** The kind of a source as printed: "guideline", "common practice". */
export const showSourceKind = (kind: SourceKind): string => KINDS[kind];

/** 2017 "twenty seventeen", 2007 "two thousand and seven". */
function sayYear(year: number): string {
  const [century, rest] = [Math.floor(year / 100), year % 100];
  return rest < 10 ? sayNumber(year, 0) : `${sayNumber(century, 0)} ${sayNumber(rest, 0)}`;
}

/** First author and year of a reference: "Carney twenty seventeen"; none where it is not written that way. */
function authorYear(reference: string): string | undefined {
  const author = /^\p{Lu}[\p{L}-]+/u.exec(reference)?.[0];
  const year = /\b(?:19|20)\d\d\b/u.exec(reference)?.[0];
  return author === undefined || year === undefined ? undefined : `${author} ${sayYear(Number(year))}`;
}

/** A source in as few words as name it aloud: "guideline, Carney twenty seventeen", "common practice". */
export function saySource({ kind, reference }: Source): string {
  const short = kind === "common-practice" ? undefined : authorYear(reference);
  return short === undefined ? KINDS_SAID[kind] : `${KINDS_SAID[kind]}, ${short}`;
}

/** A source whole, with whether the number was read in it: "Carney N et al., … (guideline; not read at the source)". */
export const showSource = ({ kind, reference, primaryRead }: Source): string =>
  `${reference} (${KINDS[kind]}; ${primaryRead ? "read" : "not read"} at the source)`;
