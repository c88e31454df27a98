/** The history of no words. */
export const NO_WORDS = 0;

export type Histories = {
  /** Forgets all but NO_WORDS. */
  clear(): void;
  /** The number of a history with one more word. Equal word sequences have equal numbers, always. */
  extend(history: number, word: number): number;
  /** The words of a history, first to last, as word numbers. */
  wordsOf(history: number): readonly number[];
};

/**
 * Word sequences as a tree of numbered nodes, with a table from (history, word) to the longer history. Numbers are
 * exact where hashes of whole sequences would only be very likely right. Memory doubles when it is full and is kept.
 */
export function createHistories(initialSize = 1 << 14): Histories {
  let parent = new Int32Array(initialSize);
  let last = new Int32Array(initialSize);
  /** Open addressing; a slot holds a history, 0 when free. Twice the histories, so it is never more than half full. */
  let slots = new Int32Array(initialSize * 2);
  let count = 1;

  const slotOf = (history: number, word: number): number => {
    const mask = slots.length - 1;
    let hash = Math.imul(history, 0x9e3779b1) ^ Math.imul(word + 1, 0x85ebca6b);
    hash = Math.imul(hash ^ (hash >>> 15), 0x2c1b3c6d);
    let slot = (hash ^ (hash >>> 13)) & mask;
    for (;;) {
      const found = slots[slot]!;
      if (found === 0 || (parent[found] === history && last[found] === word)) return slot;
      slot = (slot + 1) & mask;
    }
  };

  const grow = (): void => {
    const [oldParent, oldLast] = [parent, last];
    parent = new Int32Array(oldParent.length * 2);
    last = new Int32Array(oldLast.length * 2);
    parent.set(oldParent);
    last.set(oldLast);
    slots = new Int32Array(parent.length * 2);
    for (let h = 1; h < count; h++) slots[slotOf(parent[h]!, last[h]!)] = h;
  };

  return {
    clear() {
      slots.fill(0);
      count = 1;
    },
    extend(history, word) {
      if (count === parent.length) grow();
      const slot = slotOf(history, word);
      const known = slots[slot]!;
      if (known !== 0) return known;
      parent[count] = history;
      last[count] = word;
      slots[slot] = count;
      return count++;
    },
    wordsOf(history) {
      const words: number[] = [];
      for (let h = history; h !== NO_WORDS; h = parent[h]!) words.push(last[h]!);
      return words.reverse();
    },
  };
}
