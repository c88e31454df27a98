import { loadFiles } from "../../../src/language/jsgf/loadFiles.ts";
import type { Expansion } from "../../../src/language/jsgf/grammarTree.ts";
import { resolveRules, type ResolvedRules } from "../../../src/language/jsgf/resolveRules.ts";
import { PLAIN_DIGITS } from "../../../src/language/numbers/numberWords.ts";
import { wordsToNumber } from "../../../src/language/numbers/wordsToNumber.ts";
import type { Random } from "../random.ts";

/** How often an optional part is said, and how often a repeated part is said once more. */
const OPTIONAL_SHARE = 0.3;
const AGAIN_SHARE = 0.3;

export type GrammarWalk = {
  /** Words of a random path through a rule, public or not. Throws where the file has no such rule: a mistake of the caller. */
  words(file: string, rule: string, random: Random): string;
};

/**
 * Random paths through grammar files. At a choice an option is taken in proportion to the root of the number of paths
 * through it: neither do the few long ways of one option drown the others, nor does "a hundred" come as often as all
 * numbers under it.
 *
 * @param sources grammar texts by file name without ".jsgf"; `entry` is the one that reaches all others.
 * Throws with the grammar's own message where the files are wrong. Not for: counting what the language holds.
 */
export function createGrammarWalk(sources: Readonly<Record<string, string>>, entry: string): GrammarWalk {
  const files = loadFiles(sources, entry);
  if (!files.ok) throw new Error(files.error.message);
  const resolved = resolveRules(files.value);
  if (!resolved.ok) throw new Error(resolved.error.message);

  const paths = createPathCount(resolved.value);
  const choose = (options: readonly Expansion[], random: Random): Expansion => {
    const weights = options.map((option) => Math.sqrt(paths(option)));
    let left = random.next() * weights.reduce((a, b) => a + b, 0);
    return options.find((_, i) => (left -= weights[i]!) < 0) ?? options.at(-1)!;
  };
  const walk = (e: Expansion, random: Random): readonly string[] => {
    switch (e.kind) {
      case "word":
        return [e.word];
      case "rule":
        return walk(resolved.value.get(e)!.body, random);
      case "sequence":
        return isTwoWays(e) ? sayTwoWays(walk(e.parts[0]!, random), random) : e.parts.flatMap((p) => walk(p, random));
      case "choice":
        return walk(choose(e.options, random), random);
      case "optional":
        return random.next() < OPTIONAL_SHARE ? walk(e.body, random) : [];
      case "repeat": {
        const words = e.atLeast === 1 ? [...walk(e.body, random)] : [];
        while (random.next() < AGAIN_SHARE) words.push(...walk(e.body, random));
        return words;
      }
      case "tagged":
        return walk(e.body, random);
    }
  };
  return {
    words(file, rule, random) {
      const start = files.value.get(file)?.rules.find(({ name }) => name === rule);
      if (start === undefined) throw new Error(`${file}.jsgf has no rule <${rule}>`);
      return walk(start.body, random).join(" ");
    },
  };
}

const isTagged = (e: Expansion | undefined, tag: string): boolean => e?.kind === "tagged" && e.tags.includes(tag);
/** Nobody means two numbers by the two halves of one: the first decides the second. */
const isTwoWays = ({ parts }: Extract<Expansion, { kind: "sequence" }>): boolean =>
  parts.length === 2 && isTagged(parts[0], "twoWaysWhole") && isTagged(parts[1], "twoWaysDigits");

function sayTwoWays(whole: readonly string[], random: Random): readonly string[] {
  const value = wordsToNumber(whole);
  if (!value.ok) throw new Error(`"${whole.join(" ")}" is no number`);
  const digits = [...String(value.value)].map((digit) =>
    digit === "0" ? random.pick(["zero", "oh"]) : PLAIN_DIGITS[Number(digit)]!,
  );
  return [...whole, ...digits];
}

/** How many ways there are through an expansion; a repeated part counts once. */
function createPathCount(resolved: ResolvedRules): (e: Expansion) => number {
  const known = new Map<Expansion, number>();
  const count = (e: Expansion): number => {
    switch (e.kind) {
      case "word":
        return 1;
      case "rule":
        return counted(resolved.get(e)!.body);
      case "sequence":
        if (isTwoWays(e)) return counted(e.parts[0]!);
        return e.parts.reduce((product, part) => product * counted(part), 1);
      case "choice":
        return e.options.reduce((sum, option) => sum + counted(option), 0);
      case "optional":
        return 1 + counted(e.body);
      case "repeat":
      case "tagged":
        return counted(e.body);
    }
  };
  const counted = (e: Expansion): number => {
    const before = known.get(e);
    if (before !== undefined) return before;
    const n = count(e);
    known.set(e, n);
    return n;
  };
  return counted;
}
