import fc from "fast-check";
import { expect, it } from "vitest";
import { numberAndUnit } from "../../src/ui/numberAndUnit.ts";

it.each([
  { text: "MAP 77 mmHg", main: "MAP 77", unit: "mmHg" },
  { text: "110/60 mmHg", main: "110/60", unit: "mmHg" },
  { text: "92 per minute", main: "92", unit: "per minute" },
  { text: "MAP not yet recorded", main: "MAP not yet recorded", unit: undefined },
  { text: "E1 V2 M4", main: "E1 V2 M4", unit: undefined },
  { text: "", main: "", unit: undefined },
])("'$text'", ({ text, main, unit }) => expect(numberAndUnit(text)).toEqual({ main, unit }));

it("changes no text", () => {
  fc.assert(
    fc.property(fc.string(), (text) => {
      const { main, unit } = numberAndUnit(text);
      expect(unit === undefined ? main : `${main} ${unit}`).toBe(text);
    }),
  );
});
