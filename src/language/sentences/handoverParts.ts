import type { Line, PartId } from "./handover.ts";
import { sentences } from "./sentence.ts";

/** One part as it is said in one go: where the handover is cut off, it goes on at the beginning of one. */
export type HandoverPart = { readonly title: string; readonly text: string };

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
    ["Treatment", "airway", "given", "infusions"],
    ["Next", "due"],
  ],
  "IMIST-AMBO": [
    ["Identity", "patient", "time"],
    ["Mechanism", "cause"],
    ["Injuries", "findings"],
    ["Signs", "now"],
    ["Treatment", "airway", "given", "infusions"],
    ["Background", "notHeld"],
    ["Other", "due"],
  ],
  ISBAR: [
    ["Identity", "patient"],
    ["Situation", "cause", "time"],
    ["Background", "airway", "given"],
    ["Assessment", "findings", "now"],
    ["Recommendation", "infusions", "due"],
  ],
} as const satisfies Readonly<Record<string, readonly Section[]>>;
export type HandoverStructure = keyof typeof ORDERS;

type Lines = Readonly<Record<PartId, readonly Line[]>>;

/**
 * The lines in the order of the mnemonic, each part under its letter; parts without a line are left out.
 *
 * @param isPrinted the letter stands beside the text, so the text does not begin with it.
 */
export function orderedParts(
  structure: HandoverStructure,
  lines: Lines,
  isSaid: (line: Line) => boolean = () => true,
  isPrinted = false,
): readonly HandoverPart[] {
  const sections: readonly Section[] = [["", "lows"], ...ORDERS[structure]];
  return sections.flatMap(([title, ...ids]) =>
    ids
      .map((id) => lines[id].filter(isSaid).map(({ text }) => text))
      .filter((texts) => texts.length > 0)
      .map((texts, i) => {
        const isNamed = isPrinted || i > 0 || title === "" || (texts[0] ?? "").startsWith(title.toLowerCase());
        const [first = "", ...more] = texts;
        return {
          title: title === "" ? "Lowest pressures" : title,
          text: sentences(isNamed ? first : `${title}: ${first}`, ...more),
        };
      }),
  );
}

/**
 * How long the built-in voice takes at its usual pace, s; rather too long than too short. Fitted to its sound: see
 * `tests/app/spokenHandover.test.ts`, which measures what is really said.
 */
const PER_LETTER_S = 0.057;
const PER_MARK_S = 0.18;
const estimateS = (text: string): number =>
  PER_LETTER_S * text.length + PER_MARK_S * (text.match(/[,:;.]/gu)?.length ?? 0);

/** Between two parts. */
const PER_PART_S = 0.4;
const MORE = "More: say go on.";

const totalS = (parts: readonly HandoverPart[]): number =>
  parts.reduce((sum, { text }) => sum + estimateS(text) + PER_PART_S, 0);

export type FittedHandover = {
  readonly parts: readonly HandoverPart[];
  /** What did not fit: "go on" says it. */
  readonly rest: readonly HandoverPart[];
};

/**
 * As much as can be said in a time, the dearest first; the lowest pressures are always said. What is left out is told to be
 * there, and is in `rest`.
 *
 * @param withinS seconds; Infinity for all of it.
 */
export function fitHandover(structure: HandoverStructure, lines: Lines, withinS: number): FittedHandover {
  const whole = orderedParts(structure, lines);
  if (totalS(whole) <= withinS) return { parts: whole, rest: [] };
  const kept = new Set<Line>();
  const isKept = (line: Line): boolean => kept.has(line);
  const leftS = withinS - estimateS(MORE) - PER_PART_S;
  for (const line of Object.values(lines)
    .flat()
    .toSorted((a, b) => a.rank - b.rank)) {
    kept.add(line);
    if (line.rank > 0 && totalS(orderedParts(structure, lines, isKept)) > leftS) kept.delete(line);
  }
  return {
    parts: [...orderedParts(structure, lines, isKept), { title: "", text: MORE }],
    rest: orderedParts(structure, lines, (line) => !isKept(line)),
  };
}
