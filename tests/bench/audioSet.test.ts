import { expect, it } from "vitest";
import { parseCsv } from "./audioSet.ts";

it("reads quoted fields by RFC 4180", () => {
  expect(parseCsv('a,b,c\n1,"two, and ""three""",\n,x,y\n')).toEqual([
    { a: "1", b: 'two, and "three"', c: "" },
    { a: "", b: "x", c: "y" },
  ]);
});
