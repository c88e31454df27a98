import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { NumberRows } from "../../../src/cli/review/numberRows.ts";

describe("rows of numbers", () => {
  it("hold what was put in, also beyond a chunk of memory", () => {
    const number = fc.oneof(fc.double(), fc.constantFrom(NaN, -0, Infinity));
    const changes = fc.array(fc.tuple(fc.nat(2999), fc.nat(2), number), { maxLength: 20 });
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 3000 }), changes, (count, changed) => {
        const rows = new NumberRows(3);
        const plain: number[][] = [];
        for (let i = 0; i < count; i++) {
          plain.push([i, -i, NaN]);
          expect(rows.add([i, -i, NaN])).toBe(i);
        }
        for (const [row, column, value] of changed) {
          if (row >= count) continue;
          rows.set(row, column, value);
          plain[row]![column] = value;
        }
        expect(rows.length).toBe(count);
        expect(plain.map((_, row) => [0, 1, 2].map((column) => rows.at(row, column)))).toEqual(plain);
        expect(rows.at(count, 0)).toBeNaN();
      }),
      { numRuns: 20 },
    );
  });
});
