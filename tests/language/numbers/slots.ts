import { readFileSync } from "node:fs";
import { compileGrammar } from "../../../src/language/jsgf/compileGrammar.ts";
import type { WordGraph } from "../../../src/language/jsgf/grammarTypes.ts";
import { toWordGraph } from "../../../src/language/jsgf/wordGraph.ts";

const source = readFileSync(new URL("../../../grammars/numbers.jsgf", import.meta.url), "utf8");

export function compileRule(rule: string) {
  const compiled = compileGrammar({ numbers: source }, { grammar: "numbers", rule });
  if (!compiled.ok) throw new Error(JSON.stringify(compiled.error));
  return compiled.value;
}

/** Every word sequence of a rule, by walking its word graph. Only for rules without endless repetition. */
function everySentence(graph: WordGraph): readonly (readonly string[])[] {
  const finals = new Set(graph.finals);
  const found: string[][] = [];
  const walk = (state: number, words: readonly string[]): void => {
    if (finals.has(state)) found.push([...words]);
    for (const arc of graph.arcs) if (arc.from === state) walk(arc.to, [...words, arc.word]);
  };
  walk(graph.start, []);
  return found;
}

export const sentencesOf = (rule: string): readonly (readonly string[])[] =>
  everySentence(toWordGraph(compileRule(rule)));

/** Each slot with the values that it must hear: lowest and highest, with as many decimals. */
export const SLOTS: readonly { rule: string; from: number; to: number; decimals: 0 | 1 }[] = [
  { rule: "nSbp", from: 10, to: 300, decimals: 0 },
  { rule: "nDbp", from: 10, to: 200, decimals: 0 },
  { rule: "nMap", from: 10, to: 250, decimals: 0 },
  { rule: "nHr", from: 10, to: 260, decimals: 0 },
  { rule: "nRr", from: 1, to: 80, decimals: 0 },
  { rule: "nSpo2", from: 40, to: 100, decimals: 0 },
  { rule: "nEtco2", from: 1, to: 120, decimals: 0 },
  { rule: "nEtco2KPa", from: 0.1, to: 16.9, decimals: 1 },
  { rule: "nIcp", from: 0, to: 100, decimals: 0 },
  { rule: "nTemp", from: 20, to: 43.9, decimals: 1 },
  { rule: "nTempF", from: 70, to: 109.9, decimals: 1 },
  { rule: "nGlucose", from: 0.1, to: 50.9, decimals: 1 },
  { rule: "nGlucoseMgdl", from: 10, to: 900, decimals: 0 },
  { rule: "nWeight", from: 1, to: 300.9, decimals: 1 },
  { rule: "nWeightLb", from: 1, to: 699, decimals: 0 },
  { rule: "nHeight", from: 40, to: 230, decimals: 0 },
  { rule: "nHeightIn", from: 16, to: 90, decimals: 0 },
  { rule: "nAge", from: 0, to: 110, decimals: 0 },
  { rule: "nAgeMonths", from: 0, to: 23, decimals: 0 },
  { rule: "nPupil", from: 1, to: 9, decimals: 0 },
  { rule: "nGcsEye", from: 1, to: 4, decimals: 0 },
  { rule: "nGcsVerbal", from: 1, to: 5, decimals: 0 },
  { rule: "nGcsMotor", from: 1, to: 6, decimals: 0 },
];

/** Every value of a slot. */
export function valuesOf({ from, to, decimals }: (typeof SLOTS)[number]): readonly number[] {
  const scale = decimals === 0 ? 1 : 10;
  const [first, last] = [Math.round(from * scale), Math.round(to * scale)];
  return Array.from({ length: last - first + 1 }, (_, i) => (first + i) / scale);
}
