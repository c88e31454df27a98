import { describe, expect, it } from "vitest";
import { compileGrammar } from "../../../src/language/jsgf/compileGrammar.ts";
import type { GrammarError } from "../../../src/language/jsgf/grammarTypes.ts";
import { matchWords } from "../../../src/language/jsgf/matchWords.ts";
import { vocabulary } from "../../../src/language/jsgf/vocabulary.ts";

const file = (rules: string): string => `#JSGF V1.0;\ngrammar any;\n${rules}`;
const NUMBERS = file("public <digit> = one | two;\npublic <pair> = <digit> <digit>;\n<secret> = ten;");

const main = (rules: string) => ({ main: file(rules), numbers: NUMBERS, other: file("public <digit> = ten;") });

// Each row: rules of main.jsgf, the error's code, where it must point in main.jsgf.
const REFUSED: readonly (readonly [rules: string, code: GrammarError["code"], line: number, column: number])[] = [
  ["public <top> = <missing>;", "unknown-rule", 3, 16],
  ["import <numbers.missing>; public <top> = one;", "unknown-rule", 3, 8],
  ["import <numbers.*>; public <top> = <numbers.missing>;", "unknown-rule", 3, 36],
  ["import <numbers.digit>; public <top> = <pair>;", "unknown-rule", 3, 40],
  ["import <numbers.digit>; public <top> = <numbers.pair>;", "unknown-rule", 3, 40],
  ["import <nowhere.*>; public <top> = one;", "unknown-import", 3, 8],
  ["public <top> = <numbers.digit>;", "unknown-import", 3, 16],
  ["import <numbers.secret>; public <top> = one;", "private-rule", 3, 8],
  ["import <numbers.*>; public <top> = <numbers.secret>;", "private-rule", 3, 36],
  ["import <numbers.*>; public <top> = <secret>;", "unknown-rule", 3, 36],
  ["import <numbers.*>; import <other.*>; public <top> = <digit>;", "duplicate-rule", 3, 54],
  ["import <numbers.*>; public <top> = <digit>; <digit> = ten;", "duplicate-rule", 3, 36],
  ["public <top> = one <top>;", "recursion", 3, 20],
  ["public <top> = one [<a>];\n<a> = two <b>;\n<b> = ten | <a>;", "recursion", 5, 13],
  ["public <top> = [one]*;", "nullable-loop", 3, 21],
  ["public <top> = one (<a>)+;\n<a> = [one] two*;", "nullable-loop", 3, 25],
  ["public <top> = ([one] {x} | two)+;", "nullable-loop", 3, 33],
  ["<top> = one;", "private-rule", 3, 1],
  ["public <other> = one;", "unknown-rule", 1, 1],
];

describe("compileGrammar", () => {
  it.each(REFUSED)("refuses %j: %s at %i:%i", (rules, code, line, column) => {
    const result = compileGrammar(main(rules), { grammar: "main", rule: "top" });
    expect(result).toMatchObject({ ok: false, error: { code, place: { file: "main.jsgf", line, column } } });
  });

  it("says which file is missing when the entry is", () => {
    const result = compileGrammar({}, { grammar: "toString", rule: "top" });
    expect(result).toMatchObject({ ok: false, error: { code: "unknown-import", place: { file: "toString.jsgf" } } });
  });

  it.each([
    ["import <numbers.pair>; public <top> = <pair>;", "one two", true],
    ["import <numbers.*>; public <top> = <numbers.pair>;", "one two", true],
    ["import <numbers.*>; import <other.*>; public <top> = <numbers.digit> <other.digit>;", "two ten", true],
    ["import <numbers.*>; public <top> = <main.digit> | <numbers.digit>; <digit> = ten;", "ten", true],
    ["import <numbers.pair>; public <top> = <pair>;", "one ten", false],
  ])("%s accepts '%s': %s", (rules, words, isAccepted) => {
    const result = compileGrammar(main(rules), { grammar: "main", rule: "top" });
    if (!result.ok) throw new Error(JSON.stringify(result.error));
    expect(matchWords(result.value, words.split(" ")).parses.length > 0).toBe(isAccepted);
  });

  it("does not read files that the entry does not reach", () => {
    const sources = { main: file("public <top> = one;"), broken: "not a grammar" };
    expect(compileGrammar(sources, { grammar: "main", rule: "top" }).ok).toBe(true);
  });

  it("lets two files import each other as long as no rule leads back to itself", () => {
    const sources = {
      main: file("import <b.*>; public <top> = <x>; public <word> = one;"),
      b: file("import <main.word>; public <x> = <word> two;"),
    };
    expect(compileGrammar(sources, { grammar: "main", rule: "top" }).ok).toBe(true);
  });

  it("refuses rules that would fill the memory, at the entry", () => {
    const doubling = Array.from({ length: 40 }, (_, i) => `<r${i}> = <r${i + 1}> <r${i + 1}>;`).join("\n");
    const source = file(`public <top> = <r0>;\n${doubling}\n<r40> = one;`);
    const result = compileGrammar({ main: source }, { grammar: "main", rule: "top" });
    expect(result).toMatchObject({ ok: false, error: { code: "unsupported", place: { line: 3, column: 8 } } });
  });
});

describe("vocabulary", () => {
  it("lists each word once, with the place where it was first written, across files", () => {
    const result = compileGrammar(main("import <numbers.*>;\npublic <top> = say <digit>\n  two say;"), {
      grammar: "main",
      rule: "top",
    });
    if (!result.ok) throw new Error(JSON.stringify(result.error));
    expect(vocabulary(result.value)).toEqual([
      { word: "say", place: { file: "main.jsgf", line: 4, column: 16 } },
      { word: "one", place: { file: "numbers.jsgf", line: 3, column: 18 } },
      { word: "two", place: { file: "numbers.jsgf", line: 3, column: 24 } },
    ]);
  });
});
