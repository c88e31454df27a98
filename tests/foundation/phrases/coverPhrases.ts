import type { Expansion, GrammarFile, RuleReference } from "../../../src/language/jsgf/grammarTree.ts";

type Words = readonly string[];

/** What a number slot is shown as. A slot without an example is written out like any other rule. */
const SLOT_EXAMPLES: Readonly<Record<string, string>> = {
  nSbp: "one ten",
  nDbp: "sixty",
  nMap: "eighty",
  nIcp: "eighteen",
  nHr: "ninety",
  nHrUp: "ninety",
  nHrLow: "thirty five",
  nRr: "fourteen",
  nSpo2: "ninety four",
  nEtco2: "thirty five",
  nEtco2KPa: "four point five",
  nTemp: "thirty six point five",
  nTempF: "ninety eight point six",
  nGlucose: "five point five",
  nGlucoseMgdl: "one hundred",
  nWeight: "eighty",
  nWeightLb: "one seventy",
  nHeight: "one seventy eight",
  nHeightIn: "seventy",
  nAge: "forty five",
  nAgeWhole: "forty five",
  nAgeDigits: "four five",
  nAgeMonths: "six",
  nPupil: "four",
  nGcsEye: "three",
  nGcsVerbal: "four",
  nGcsMotor: "five",
  nTwoWays: "fifteen, one five",
  nTwoWaysAlike: "fifteen, one five",
  nDose: "twenty",
  nMl: "two fifty",
  nTube: "eight point zero",
  nDevice: "four",
  nDepth: "twenty three",
  nPeep: "five",
  nMinutes: "ten",
  nAttempts: "two",
  nFlow: "fifteen",
  nBar: "one fifty",
};

/** Rules with a table of their own: inside another phrase one way of them is enough. */
const SAID_ELSEWHERE: readonly string[] = [
  "drug",
  "fullName",
  "shortName",
  "statement",
  "strength",
  "any",
  "notNeeded",
  "role",
  "unit",
  "doseUnit",
  "rateUnit",
  "limb",
  "after",
];

const sameWords = (a: Words, b: Words): boolean => a.join(" ") === b.join(" ");
const distinct = (all: readonly Words[]): readonly Words[] =>
  all.filter((words, i) => all.findIndex((other) => sameWords(words, other)) === i);

/** Finds the rule behind a reference, in the file it is written in or in one that is imported there. */
function findRule(files: ReadonlyMap<string, GrammarFile>, key: string, { qualifier, name }: RuleReference) {
  const file = files.get(key);
  const own = qualifier === undefined ? file?.rules.find((r) => r.name === name) : undefined;
  if (own !== undefined) return { key, rule: own };
  const holds = (from: string): boolean => files.get(from)?.rules.some((r) => r.name === name) ?? false;
  const imported = file?.imports.find((i) => i.rule === name || (i.rule === "*" && holds(i.from)));
  const from = qualifier ?? imported?.from ?? "";
  const rule = files.get(from)?.rules.find((r) => r.name === name);
  if (rule === undefined) throw new Error(`no rule <${name}> seen from ${key}.jsgf`);
  return { key: from, rule };
}

/**
 * Few phrases that together take every way of a rule that makes a difference: of words that mean the same only the first,
 * what may be left out is left out once and said once. Not for: every phrase of a rule; there are millions.
 */
export function coverPhrases(files: ReadonlyMap<string, GrammarFile>, key: string, rule: string): readonly string[] {
  const hasTag = (of: Expansion, at: string): boolean => {
    switch (of.kind) {
      case "word":
        return false;
      case "rule": {
        if (SLOT_EXAMPLES[of.name] !== undefined) return false;
        const found = findRule(files, at, of);
        return hasTag(found.rule.body, found.key);
      }
      case "sequence":
        return of.parts.some((part) => hasTag(part, at));
      case "choice":
        return of.options.some((option) => hasTag(option, at));
      case "optional":
      case "repeat":
        return hasTag(of.body, at);
      case "tagged":
        return true;
    }
  };
  /** Ways to say it, the plainest first. */
  const waysOf = (of: Expansion, at: string): readonly Words[] => {
    switch (of.kind) {
      case "word":
        return [[of.word]];
      case "rule": {
        const slot = SLOT_EXAMPLES[of.name];
        if (slot !== undefined) return [slot.split(" ")];
        const found = findRule(files, at, of);
        const ways = waysOf(found.rule.body, found.key);
        return SAID_ELSEWHERE.includes(of.name) ? ways.slice(0, 1) : ways;
      }
      case "sequence": {
        const parts = of.parts.map((part) => waysOf(part, at));
        const plain = parts.map(([first]) => first ?? []);
        const others = parts.flatMap((ways, i) =>
          ways.slice(1).map((way) => plain.map((words, j) => (i === j ? way : words)).flat()),
        );
        return distinct([plain.flat(), ...others]);
      }
      case "choice": {
        const [first, ...rest] = of.options;
        const kept = first === undefined ? [] : [first, ...rest.filter((option) => hasTag(option, at))];
        return distinct(kept.flatMap((option) => waysOf(option, at)));
      }
      case "optional":
      case "repeat":
        return hasTag(of.body, at) ? [[], ...waysOf(of.body, at)] : [[]];
      case "tagged":
        return waysOf(of.body, at);
    }
  };
  const found = findRule(files, key, { kind: "rule", name: rule, place: { file: key, line: 1, column: 1 } });
  return waysOf(found.rule.body, found.key).map((words) => words.join(" "));
}
