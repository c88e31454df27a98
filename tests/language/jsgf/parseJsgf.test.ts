import { describe, expect, it } from "vitest";
import type { GrammarError } from "../../../src/language/jsgf/grammarTypes.ts";
import { parseJsgf } from "../../../src/language/jsgf/parseJsgf.ts";

const HEAD = "#JSGF V1.0;\ngrammar g;\n";

// Each row: the text after the two head lines, the error's code, and where it must point (line, column).
const REFUSED: readonly (readonly [text: string, code: GrammarError["code"], line: number, column: number])[] = [
  ["<a> = one", "syntax", 3, 7],
  ["<a> = ;", "syntax", 3, 7],
  ["<a> = one | ;", "syntax", 3, 13],
  ["<a> = (one;", "syntax", 3, 11],
  ["<a> = one);", "syntax", 3, 10],
  ["<a> = [one);", "syntax", 3, 11],
  ["<a> = ();", "syntax", 3, 8],
  ["<a> = One;", "syntax", 3, 7],
  ["<a> = one 2;", "syntax", 3, 11],
  ["<a> = one\n  & two;", "syntax", 4, 3],
  ["<a> = {x} one;", "syntax", 3, 7],
  ["<a> = one {};", "syntax", 3, 11],
  ["<a> = one+*;", "syntax", 3, 11],
  ["<a> = one {x;", "syntax", 3, 11],
  ["<a> = <b;", "syntax", 3, 7],
  ["<a> = <b c>;", "syntax", 3, 7],
  ["<a.b> = one;", "syntax", 3, 1],
  ["<a> one;", "syntax", 3, 5],
  ["one;", "syntax", 3, 1],
  ["/* never ends", "syntax", 3, 1],
  ["import <numbers>;", "syntax", 3, 8],
  ["<a> = one;\nimport <numbers.*>;", "syntax", 4, 1],
  ['<a> = "one";', "unsupported", 3, 7],
  ["<a> = /0.5/ one | two;", "unsupported", 3, 7],
  ["<a> = <NULL>;", "unsupported", 3, 7],
  ["<a> = one | <VOID>;", "unsupported", 3, 13],
  ["<a> = one;\n<b> = two;\n <a> = three;", "duplicate-rule", 5, 2],
];

describe("parseJsgf", () => {
  it.each(REFUSED)("refuses %j: %s at %i:%i", (text, code, line, column) => {
    const result = parseJsgf(HEAD + text, "g.jsgf");
    expect(result).toMatchObject({ ok: false, error: { code, place: { file: "g.jsgf", line, column } } });
  });

  it.each([
    ["", "syntax", 1, 1],
    ["grammar g;", "syntax", 1, 1],
    ["#JSGF V2.0;\ngrammar g;", "syntax", 1, 1],
    ["#JSGF V1.0\ngrammar g;", "syntax", 2, 1],
    ["#JSGF V1.0;\n<a> = one;", "syntax", 2, 1],
    ["#JSGF V1.0;\ngrammar a.b;", "unsupported", 2, 9],
  ])("refuses the head of %j: %s at %i:%i", (text, code, line, column) => {
    expect(parseJsgf(text, "g.jsgf")).toMatchObject({ ok: false, error: { code, place: { line, column } } });
  });

  it.each(["#JSGF V1.0;", "#JSGF V1.0 UTF-8 en;", "\uFEFF#JSGF V1.0;", "// first\n#JSGF V1.0;"])(
    "takes the header %j",
    (header) => {
      expect(parseJsgf(`${header} grammar g; public <a> = one;`, "g.jsgf").ok).toBe(true);
    },
  );

  it("reads imports, rules, comments and places", () => {
    const result = parseJsgf(
      `${HEAD}import <numbers.nMap>; import <units.*>; // both\n/* two\nlines */ public <a> = it's <units.mmHg>;\n<b> = one;`,
      "g.jsgf",
    );
    expect(result).toMatchObject({
      ok: true,
      value: {
        name: "g",
        imports: [
          { from: "numbers", rule: "nMap", place: { line: 3, column: 8 } },
          { from: "units", rule: "*", place: { line: 3, column: 31 } },
        ],
        rules: [
          {
            name: "a",
            isPublic: true,
            body: {
              kind: "sequence",
              parts: [
                { kind: "word", word: "it's" },
                { kind: "rule", qualifier: "units", name: "mmHg", place: { line: 5, column: 28 } },
              ],
            },
          },
          { name: "b", isPublic: false, body: { kind: "word" } },
        ],
      },
    });
  });

  it("binds tags and repeat marks before sequences, and sequences before alternatives", () => {
    const result = parseJsgf(`${HEAD}<a> = one two {x} {y} | [ten]* {z};`, "g.jsgf");
    expect(result.ok && result.value.rules[0]?.body).toMatchObject({
      kind: "choice",
      options: [
        { kind: "sequence", parts: [{ word: "one" }, { kind: "tagged", tags: ["x", "y"], body: { word: "two" } }] },
        { kind: "tagged", tags: ["z"], body: { kind: "repeat", atLeast: 0, body: { kind: "optional" } } },
      ],
    });
  });
});
