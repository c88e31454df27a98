import type { AppContext, AppState } from "../../../src/app/context.ts";
import type { GrammarState } from "../../../src/app/ports.ts";
import { takeUtterance } from "../../../src/app/takeTurn.ts";
import type { Intent, SaidVital } from "../../../src/language/intent.ts";
import { couldBeInsideLimits } from "../../../src/language/understand/couldBeInsideLimits.ts";
import { understand } from "../../../src/language/understand/understand.ts";
import type { Random } from "../random.ts";
import { caseAfter } from "../scoring.ts";
import { FAMILIES, familyOf, type Family, type Start } from "./families.ts";
import type { GrammarWalk } from "./walkGrammar.ts";

/** One thing to be said to the app, with the case it is said to. */
export type Statement = {
  readonly family: string;
  readonly kind: Family["kind"];
  readonly words: string;
  readonly state: GrammarState;
  readonly before: readonly string[];
};

/** A step waits for its answer, and there are readings to correct and to explain. */
export const OPEN_CASE = [
  "next",
  "one twenty over seventy rate seventy five sats ninety eight left pupil four brisk",
  "weight sixty six kilos",
  "rate eighty two",
];
const LONGEST_WORDS = 16;
/** So many paths in a row without a new statement: the family has no more of them. */
const PATIENCE = 400;
export const START_MS = 1_800_000_000_000;
/** So old are the readings of an open case that no new value counts as a jump. A question is not that old. */
export const LATER_MS: Readonly<Record<GrammarState, number>> = {
  open: 3_600_000,
  asked: 5_000,
  openAfter: 3_600_000,
  askedAfter: 5_000,
};

/**
 * Where most values of a ward lie; the listener's grammar reaches further, and some of the statements do too. Units aside:
 * a number in another unit lies in them or does not, as it happens.
 */
const USUAL: Readonly<Record<string, readonly [low: number, high: number]>> = {
  sbp: [60, 220],
  dbp: [30, 130],
  map: [40, 140],
  hr: [30, 190],
  rr: [6, 45],
  spo2: [70, 100],
  etco2: [2, 80],
  icp: [2, 50],
  temp: [30, 105],
  glucose: [2, 300],
  weight: [4, 160],
  height: [45, 200],
  age: [1, 95],
};
const UNUSUAL_SHARE = 0.1;
/** Grammars say the whole hundreds in many ways; patients have them as seldom as any other number. */
const isWholeHundred = ({ code, value }: SaidVital): boolean => code !== "spo2" && value >= 100 && value % 100 === 0;

const isUsual = (intent: Intent): boolean =>
  intent.kind !== "vitals" ||
  intent.items.every((item) => {
    if (item.kind !== "vital") return true;
    const [low, high] = USUAL[item.code] ?? [-Infinity, Infinity];
    return item.value >= low && item.value <= high && !isWholeHundred(item);
  });

type StateAfter = (lines: readonly string[]) => AppState;

/** The statement, where its words have exactly one meaning, of this family, and the app makes something of it. */
function statementOf(
  context: AppContext,
  stateAfter: StateAfter,
  { family, start, words, usualOnly }: { family: Family; start: Start; words: string; usualOnly: boolean },
): Statement | undefined {
  const before = start.before ?? OPEN_CASE;
  const spoken = words.split(" ");
  if (spoken.length > LONGEST_WORDS) return undefined;
  const meaning = understand(context.grammars.of(family.state), spoken);
  if (meaning.kind !== "one" || familyOf(meaning.intent) !== family.name) return undefined;
  if (!couldBeInsideLimits(meaning.intent) || (usualOnly && !isUsual(meaning.intent))) return undefined;
  const nowMs = START_MS + LATER_MS[family.state];
  const typed = { by: "typed", candidates: [{ words, score: 0 }], endedAtMs: nowMs } as const;
  const outcome = takeUtterance(context, stateAfter(before), typed, nowMs).answer?.outcome;
  if (outcome === undefined || outcome === "ignored" || outcome === "refused") return undefined;
  return { family: family.name, kind: family.kind, words, state: family.state, before };
}

function wordsOf(walk: GrammarWalk, { starts, joined }: Family, start: Start, random: Random): string {
  const first = walk.words(start.file, start.rule, random);
  if (joined === undefined) return first;
  const more = Array.from({ length: 1 + random.below(2) }, () => {
    const { file, rule } = random.pick(starts);
    return `${random.pick(["", "and "])}${walk.words(file, rule, random)}`;
  });
  return [first, ...more].join(" ");
}

/** A case after these typed lines; each list of lines is played once. */
export function createStateAfter(context: AppContext): StateAfter {
  const known = new Map<string, AppState>();
  return (lines) => {
    const key = lines.join("\n");
    const state = known.get(key) ?? caseAfter(context, lines, START_MS);
    known.set(key, state);
    return state;
  };
}

/**
 * About `count` different statements, spread over the families by weight. A family with fewer paths than its share gives
 * what it has, again and again. The same chance gives the same statements.
 */
export function makeStatements(
  context: AppContext,
  walk: GrammarWalk,
  count: number,
  random: Random,
): readonly Statement[] {
  const total = FAMILIES.reduce((sum, { weight }) => sum + weight, 0);
  const stateAfter = createStateAfter(context);
  return FAMILIES.flatMap((family) => {
    const wanted = Math.max(1, Math.round((count * family.weight) / total));
    const found = new Map<string, Statement>();
    const tried = new Set<string>();
    for (let misses = 0; found.size < wanted && misses < PATIENCE; misses++) {
      const start = random.pick(family.starts);
      const words = wordsOf(walk, family, start, random);
      if (tried.has(words)) continue;
      tried.add(words);
      const statement = statementOf(context, stateAfter, {
        family,
        start,
        words,
        usualOnly: random.next() >= UNUSUAL_SHARE,
      });
      if (statement === undefined) continue;
      found.set(words, statement);
      misses = 0;
    }
    const all = [...found.values()];
    if (all.length === 0) throw new Error(`no statement was found for "${family.name}"`);
    return Array.from({ length: wanted }, (_, i) => all[i % all.length]!);
  });
}
