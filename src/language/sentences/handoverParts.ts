import type { PartId } from "./handover.ts";
import type { Line } from "./handoverLine.ts";
import { sentences } from "./sentence.ts";

/** One row as it is shown. */
export type HandoverRow = { readonly title: string; readonly text: string };

/** What is said in one go: where the handover is cut off, it goes on at the beginning of one. */
export type HandoverPart = {
  readonly text: string;
  /** That of its line. */
  readonly key: string;
  /** Which wording: 0 is the whole. */
  readonly level: number;
};

type Section = readonly [title: string, ...parts: PartId[]];

/**
 * The letters of each mnemonic with what this record has for them. The lowest pressures stand before all of them; what is
 * due stands at the end, where the mnemonic has no place of its own for it.
 */
const ORDERS = {
  ATMIST: [
    ["Age", "patient"],
    ["Time", "time"],
    ["Mechanism", "cause"],
    ["Injuries", "findings"],
    ["Signs", "now"],
    ["Treatment", "airway", "given", "infusions", "running", "unconfirmed"],
    ["Next", "due"],
  ],
  "IMIST-AMBO": [
    ["Identity", "patient", "time"],
    ["Mechanism", "cause"],
    ["Injuries", "findings"],
    ["Signs", "now"],
    ["Treatment", "airway", "given", "infusions", "running", "unconfirmed"],
    ["Background", "notHeld"],
    ["Other", "due"],
  ],
  ISBAR: [
    ["Identity", "patient"],
    ["Situation", "cause", "time"],
    ["Background", "airway", "given", "unconfirmed"],
    ["Assessment", "findings", "now"],
    ["Recommendation", "infusions", "running", "due"],
  ],
} as const satisfies Readonly<Record<string, readonly Section[]>>;
export type HandoverStructure = keyof typeof ORDERS;

export type HandoverLines = Readonly<Record<PartId, readonly Line[]>>;

const sectionsOf = (structure: HandoverStructure): readonly Section[] => [["", "lows"], ...ORDERS[structure]];
const withTitle = (title: string, text: string): string =>
  title === "" || text.startsWith(title.toLowerCase()) ? sentences(text) : sentences(`${title}: ${text}`);

/**
 * The lines in the order of the mnemonic, each letter named once.
 *
 * @param levelOf which wording; none: the line is left out.
 * @param isNamed whether the letters are named.
 */
export function spokenParts(
  structure: HandoverStructure,
  lines: HandoverLines,
  levelOf: (line: Line) => number | undefined,
  isNamed = true,
): readonly HandoverPart[] {
  return sectionsOf(structure).flatMap(([title, ...ids]) =>
    ids
      .flatMap((id) => lines[id])
      .flatMap((line) => {
        const level = levelOf(line);
        return level === undefined ? [] : [{ key: line.key, level, text: wordingOf(line, level) }];
      })
      .map((part, i) => ({ ...part, text: withTitle(isNamed && i === 0 ? title : "", part.text) })),
  );
}

/** Every line in full, for the screen: a row for each part, with its letter beside it. */
export const shownRows = (structure: HandoverStructure, lines: HandoverLines): readonly HandoverRow[] =>
  sectionsOf(structure).flatMap(([title, ...ids]) =>
    ids
      .filter((id) => lines[id].length > 0)
      .map((id) => ({
        title: title === "" ? "Lowest pressures" : title,
        text: sentences(...lines[id].map(({ wordings: [whole] }) => whole)),
      })),
  );

function wordingOf({ wordings: [whole, ...briefer] }: Line, level: number): string {
  return level === 0 ? whole : (briefer[Math.min(level, briefer.length) - 1] ?? whole);
}

/**
 * How long the built-in voice takes at its usual pace, s; rather too long than too short. Fitted to its sound: see
 * `tests/app/spokenHandover.test.ts`, which measures what is really said.
 */
const PER_LETTER_S = 0.0545;
const PER_MARK_S = 0.18;
/** Between two parts. */
const PER_PART_S = 0.3;
const estimateS = (text: string): number =>
  PER_LETTER_S * text.length + PER_MARK_S * (text.match(/[,:;.](?=\s)/gu)?.length ?? 0) + PER_PART_S;

/** How long it takes to say these, s. */
export const totalS = (parts: readonly Pick<HandoverPart, "text">[]): number =>
  parts.reduce((sum, { text }) => sum + estimateS(text), 0);

const MORE_KEY = "more";
export const MORE: HandoverPart = { key: MORE_KEY, level: 0, text: "More on the screen: say go on." };
const MORE_BRIEFLY: HandoverPart = { key: MORE_KEY, level: 0, text: "More: say go on." };

/** How much is said at once. */
export type HandoverLength = {
  /** Seconds; Infinity for all of it. */
  readonly withinS: number;
  /** The letters are not named. */
  readonly isBrief: boolean;
};

/** Of the time; the lowest pressures and what runs take no more while they can be said in fewer words. This project's choice. */
const ALWAYS_SHARE = 0.5;

/** In how few words what is always said is said: in as many as leave room for the rest. */
function levelOfAlways(always: readonly Line[], secondsAt: (level: number) => number, withinS: number): number {
  const most = Math.max(0, ...always.map(({ wordings }) => wordings.length - 1));
  for (let level = 0; level < most; level++) if (secondsAt(level) <= withinS) return level;
  return most;
}

/**
 * As much as can be said in a time, the dearest first, and in full only where that leaves nothing out. The lowest pressures
 * and what runs are always said. What is left out is told to be there.
 */
export function fitHandover(
  structure: HandoverStructure,
  { running, ...others }: HandoverLines,
  { withinS, isBrief }: HandoverLength,
): readonly HandoverPart[] {
  const each = { ...others, running: [] };
  const partsOf = (lines: HandoverLines, levelOf: (line: Line) => number | undefined) =>
    spokenParts(structure, lines, levelOf, !isBrief);
  const whole = partsOf(each, () => 0);
  if (totalS(whole) <= withinS) return whole;
  const more = isBrief ? MORE_BRIEFLY : MORE;
  const leftS = withinS - totalS([more]);
  const secondsOf = (lines: HandoverLines, level: number): number =>
    totalS(partsOf(lines, ({ rank }) => (rank === 0 ? level : undefined)));
  const lines = running.length > 0 && secondsOf(each, Infinity) > leftS ? { ...others, infusions: [], running } : each;
  const byRank = Object.values(lines)
    .flat()
    .toSorted((a, b) => a.rank - b.rank);
  const always = byRank.filter(({ rank }) => rank === 0);
  const first = levelOfAlways(always, (level) => secondsOf(lines, level), ALWAYS_SHARE * withinS);
  const levels = new Map(always.map((line) => [line, Math.min(first, line.wordings.length - 1)]));
  const partsNow = () => partsOf(lines, (line) => levels.get(line));
  const setIfFits = (line: Line, level: number): void => {
    const before = levels.get(line);
    levels.set(line, level);
    if (totalS(partsNow()) <= leftS) return;
    if (before === undefined) levels.delete(line);
    else levels.set(line, before);
  };
  for (const line of byRank) if (!levels.has(line)) setIfFits(line, line.wordings.length - 1);
  for (const line of byRank) for (let level = (levels.get(line) ?? 0) - 1; level >= 0; level--) setIfFits(line, level);
  return [...partsNow(), more];
}
