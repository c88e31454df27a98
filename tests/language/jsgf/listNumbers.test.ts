import fc from "fast-check";
import { expect, it } from "vitest";
import { createListNumbers } from "../../../src/language/jsgf/listNumbers.ts";

it("numbers lists in the order in which each is first met, equal lists alike", () => {
  const small = fc.array(fc.integer({ min: 0, max: 3 }), { maxLength: 4 });
  fc.assert(
    fc.property(fc.array(small, { maxLength: 60 }), (lists) => {
      const numbers = createListNumbers();
      const first = new Map<string, number>();
      for (const list of lists) {
        const expected = first.get(list.join()) ?? first.size;
        first.set(list.join(), expected);
        expect(numbers.numberOf(list)).toBe(expected);
      }
      expect(numbers.size).toBe(first.size);
    }),
  );
});

it("tells lists apart whose hashes are equal", () => {
  // Of so many lists some share their 32-bit hash: about five pairs are to be expected.
  const numbers = createListNumbers();
  const lists = Array.from({ length: 200_000 }, (_, i) => [i >> 9, i & 511, i]);
  const given = new Set(lists.map((list) => numbers.numberOf(list)));
  expect(given.size).toBe(lists.length);
});
