import fc from "fast-check";
import { expect, it } from "vitest";
import { createHistories, NO_WORDS } from "../../src/listener/histories.ts";

it("gives equal numbers to equal word sequences and no others, while it grows", () => {
  const sequence = fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 1, maxLength: 6 });
  const histories = createHistories(4);
  fc.assert(
    fc.property(fc.array(sequence, { maxLength: 40 }), (sequences) => {
      histories.clear();
      const numbers = new Map<string, number>();
      for (const words of sequences) {
        const number = words.reduce((history, word) => histories.extend(history, word), NO_WORDS);
        const key = words.join(" ");
        expect(numbers.get(key) ?? number).toBe(number);
        numbers.set(key, number);
      }
      expect(new Set(numbers.values()).size).toBe(numbers.size);
      for (const [key, number] of numbers) expect(histories.wordsOf(number).join(" ")).toBe(key);
    }),
  );
});
