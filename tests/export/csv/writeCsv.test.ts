import { describe, expect, it } from "vitest";
import { csvLine, type Cell } from "../../../src/export/csv/writeCsv.ts";

// RFC 4180, section 2: records end with CRLF (1), fields are separated by commas (4), those with a line break, a quote or a
// comma are quoted (6), a quote within is doubled (7).
describe("one record of a CSV file", () => {
  const ROWS: readonly (readonly [readonly Cell[], string])[] = [
    [["aaa", "bbb", "ccc"], "aaa,bbb,ccc\r\n"],
    [["b\r\nbb"], '"b\r\nbb"\r\n'],
    [['b"bb'], '"b""bb"\r\n'],
    [["a,b"], '"a,b"\r\n'],
    [[" a "], '" a "\r\n'],
    [["", undefined, 0, -4.5, 1 / 3], ",,0,-4.5,0.3333333333333333\r\n"],
    [["é µ ≥"], "é µ ≥\r\n"],
  ];
  it.each(ROWS)("%j", (cells, expected) => expect(csvLine(cells)).toBe(expected));
});

// The characters that OWASP names under CSV injection (from memory): = + - @, tab, carriage return.
describe("what a spreadsheet would run", () => {
  it.each([
    ["=1+1", "'=1+1"],
    ["+1", "'+1"],
    ["-1", "'-1"],
    ["@SUM(A1)", "'@SUM(A1)"],
    ["\tx", "'\tx"],
    [" =1", "' =1"],
    ["\uff1d1", "'\uff1d1"],
    ["a=b", "a=b"],
  ])("%j is written as %j", (text, expected) => expect(csvLine([text])).toBe(`${expected}\r\n`));

  it("is disarmed inside quotes too", () => {
    expect(csvLine(['=HYPERLINK("a","b")'])).toBe(`"'=HYPERLINK(""a"",""b"")"\r\n`);
    expect(csvLine(["\rx"])).toBe(`"'\rx"\r\n`);
  });

  it("is no number of ours", () => expect(csvLine([-5])).toBe("-5\r\n"));
});
