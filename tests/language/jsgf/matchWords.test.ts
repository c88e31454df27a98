import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compileGrammar, type CompiledGrammar } from "../../../src/language/jsgf/compileGrammar.ts";
import { matchWords, MAX_PARSES } from "../../../src/language/jsgf/matchWords.ts";
import { grammarOf, madeExpansion, marksText, waysThrough } from "./randomGrammar.ts";

function compiled(sources: Record<string, string>, grammar: string): CompiledGrammar {
  const result = compileGrammar(sources, { grammar, rule: "top" });
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

const grammar = (rules: string): CompiledGrammar => compiled({ g: `#JSGF V1.0; grammar g; ${rules}` }, "g");
const said = (words: string): readonly string[] => (words === "" ? [] : words.split(" "));
const arcsOf = (g: CompiledGrammar): number => g.silent.to.length + g.word.to.length;

// Each row: rules, words, the readings expected, as `tag from-to` in closing order.
const ROWS: readonly (readonly [rules: string, words: string, readings: readonly string[]])[] = [
  ["public <top> = one two;", "one two", [""]],
  ["public <top> = one two;", "one", []],
  ["public <top> = one two;", "one two two", []],
  ["public <top> = one [two];", "one", [""]],
  ["public <top> = one {a} two {b};", "one two", ["a0-1 b1-2"]],
  ["public <top> = (one {a} two {b}) {c};", "one two", ["a0-1 b1-2 c0-2"]],
  ["public <top> = one {a} {b};", "one", ["a0-1 b0-1"]],
  ["public <top> = one two {a};", "one two", ["a1-2"]],
  ["public <top> = <n> {sbp} over <n> {dbp}; <n> = one (ten | two)+;", "one ten over one two two", ["sbp0-2 dbp3-6"]],
  ["public <top> = one* {a};", "", ["a0-0"]],
  ["public <top> = one* {a};", "one one", ["a0-2"]],
  ["public <top> = (one {a})*;", "one one", ["a0-1 a1-2"]],
  ["public <top> = one {a} | one {b};", "one", ["a0-1", "b0-1"]],
  ["public <top> = one {a} | one {a};", "one", ["a0-1"]],
  ["public <top> = one | two;", "three", []],
  ["public <top> = one;", "", []],
  ["public <top> = (one {a} | (one one) {b})+;", "one one", ["b0-2", "a0-1 a1-2"]],
  ["public <top> = (one {a} | one one {b})+;", "one one", ["b1-2", "a0-1 a1-2"]],
];

describe("matchWords", () => {
  it.each(ROWS)("%s reads '%s' as %j", (rules, words, readings) => {
    const { parses, truncated } = matchWords(grammar(rules), said(words));
    expect(parses.map(marksText).sort()).toEqual([...readings].sort());
    expect(truncated).toBe(false);
  });

  it("gives each mark its words", () => {
    const { parses } = matchWords(
      grammar("public <top> = sats <n> {spo2}; <n> = ninety four;"),
      said("sats ninety four"),
    );
    expect(parses).toEqual([[{ tag: "spo2", words: ["ninety", "four"], from: 1, to: 3 }]]);
  });

  it("stops at the limit and says so, in the same order every time", () => {
    const g = grammar("public <top> = (one {a} | one {b})+;");
    const words = said("one one one one one one");
    const first = matchWords(g, words);
    expect(first.parses).toHaveLength(MAX_PARSES);
    expect(first.truncated).toBe(true);
    expect(matchWords(g, words)).toEqual(first);
    expect(new Set(first.parses.map(marksText)).size).toBe(MAX_PARSES);
    // 2^5 readings are exactly as many as fit.
    const exact = matchWords(g, said("one one one one one"));
    expect([exact.parses.length, exact.truncated]).toEqual([MAX_PARSES, false]);
  });

  it("finds exactly the readings that a plain search through the grammar finds", () => {
    const words = fc.array(fc.constantFrom("one", "two", "ten"), { maxLength: 4 });
    fc.assert(
      fc.property(madeExpansion, words, (made, utterance) => {
        const ways = waysThrough(made, utterance, 0).filter((way) => way.to === utterance.length);
        const expected = new Set(ways.map((way) => marksText(way.marks)));
        const { parses, truncated } = matchWords(compiled(grammarOf(made), "made"), utterance);
        const found = parses.map(marksText);
        expect(new Set(found).size).toBe(found.length);
        if (truncated) {
          expect(found.every((text) => expected.has(text))).toBe(true);
          expect(found.length).toBeGreaterThan(0);
        } else {
          expect(new Set(found)).toEqual(expected);
        }
      }),
      { numRuns: 400 },
    );
  });

  it("never makes more moves than words × arcs × readings kept, whatever the grammar", () => {
    const words = fc.array(fc.constantFrom("one", "two", "ten"), { minLength: 20, maxLength: 60 });
    fc.assert(
      fc.property(madeExpansion, words, (made, utterance) => {
        const g = compiled(grammarOf(made), "made");
        const { steps } = matchWords(g, utterance);
        expect(steps).toBeLessThanOrEqual((utterance.length + 1) * arcsOf(g) * (MAX_PARSES + 3));
      }),
      { numRuns: 100 },
    );
  });

  it.each([
    ["two readings at every word", "public <top> = (one {a} | one {b})+;"],
    ["loops in loops", "public <top> = ((one {a} | one one {b})+ {c} | one {d})+;"],
    ["optional words before each", "public <top> = ([one] {a} [one] {b} one {c})+;"],
  ])("grows no faster than the utterance: %s", (_name, rules) => {
    const g = grammar(rules);
    const stepsOf = (n: number) => matchWords(g, new Array<string>(n).fill("one")).steps;
    const [short, long] = [stepsOf(30), stepsOf(60)];
    expect(long / short).toBeLessThan(2.2);
  });
});
