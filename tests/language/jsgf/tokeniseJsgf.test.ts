import { expect, it } from "vitest";
import { tokeniseJsgf } from "../../../src/language/jsgf/tokeniseJsgf.ts";

it("cuts a line into tokens with their places", () => {
  const result = tokeniseJsgf("public <a> =\n  it's{ x }|<b.c>*; // end", "g.jsgf");
  if (!result.ok) throw new Error(result.error.message);
  expect(result.value.map((t) => [t.kind, t.text, t.place.line, t.place.column])).toEqual([
    ["text", "public", 1, 1],
    ["rule", "a", 1, 8],
    ["symbol", "=", 1, 12],
    ["text", "it's", 2, 3],
    ["tag", "x", 2, 7],
    ["symbol", "|", 2, 12],
    ["rule", "b.c", 2, 13],
    ["symbol", "*", 2, 18],
    ["symbol", ";", 2, 19],
  ]);
});

it.each([
  ["one /* a\nb */ two", 2, 6],
  ["one // a\r\n two", 2, 2],
  ["one { a\n } two", 2, 4],
])("counts lines inside %j", (source, line, column) => {
  const result = tokeniseJsgf(source, "g.jsgf");
  expect(result.ok && result.value.at(-1)).toMatchObject({ text: "two", place: { line, column } });
});
