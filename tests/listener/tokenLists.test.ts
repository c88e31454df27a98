import fc from "fast-check";
import { expect, it } from "vitest";
import { createTokenLists, offer, topOf } from "../../src/listener/tokenLists.ts";

it("keeps the best token of each history and label, the best few of those, best first", () => {
  const token = fc.record({
    score: fc.integer({ min: -50, max: 0 }),
    history: fc.integer({ min: 0, max: 5 }),
    label: fc.integer({ min: 0, max: 1 }),
  });
  fc.assert(
    fc.property(fc.array(token, { maxLength: 40 }), (tokens) => {
      const lists = createTokenLists(3, 4);
      for (const { score, history, label } of tokens) offer(lists, 1, score, history, label);
      const best = new Map<string, number>();
      for (const { score, history, label } of tokens) {
        const key = `${history} ${label}`;
        best.set(key, Math.max(best.get(key) ?? -Infinity, score));
      }
      const kept = Array.from({ length: lists.count[1] ?? 0 }, (_, i) => ({
        key: `${lists.history[4 + i]} ${lists.label[4 + i]}`,
        score: lists.score[4 + i],
      }));
      expect(kept.map((k) => k.score)).toEqual([...best.values()].sort((a, b) => b - a).slice(0, 4));
      for (const { key, score } of kept) expect(best.get(key)).toBe(score);
      expect(topOf(lists, 1)).toBe(kept[0]?.score ?? -Infinity);
      expect([topOf(lists, 0), topOf(lists, 2)]).toEqual([-Infinity, -Infinity]);
    }),
  );
});
