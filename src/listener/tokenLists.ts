/**
 * Many short lists of search tokens in flat arrays: list i holds at most `size` tokens, best score first, one for
 * each history and side label. Nothing is allocated after creation.
 */
export type TokenLists = {
  readonly size: number;
  readonly count: Uint8Array;
  readonly score: Float32Array;
  readonly history: Int32Array;
  /** Tells tokens of the same history apart; 0 where that is not needed. */
  readonly label: Uint8Array;
};

export function createTokenLists(lists: number, size: number): TokenLists {
  return {
    size,
    count: new Uint8Array(lists),
    score: new Float32Array(lists * size),
    history: new Int32Array(lists * size),
    label: new Uint8Array(lists * size),
  };
}

/**
 * Offers a token to a list. It enters if its history and label are new and it beats the worst of a full list, or if
 * it beats the token that has them already.
 */
export function offer(lists: TokenLists, list: number, score: number, history: number, label: number): void {
  const base = list * lists.size;
  const count = lists.count[list]!;
  if (count === lists.size && score <= lists.score[base + count - 1]!) return;
  let at = base;
  const end = base + count;
  while (at < end && (lists.history[at] !== history || lists.label[at] !== label)) at++;
  if (at < end) {
    if (score <= lists.score[at]!) return;
  } else if (count < lists.size) {
    lists.count[list] = count + 1;
  } else {
    at = end - 1;
  }
  for (; at > base && lists.score[at - 1]! < score; at--) {
    lists.score[at] = lists.score[at - 1]!;
    lists.history[at] = lists.history[at - 1]!;
    lists.label[at] = lists.label[at - 1]!;
  }
  lists.score[at] = score;
  lists.history[at] = history;
  lists.label[at] = label;
}

/** Replaces a list by a list of another set of the same size. */
export function copyList(from: TokenLists, source: number, to: TokenLists, target: number): void {
  const count = from.count[source]!;
  const [a, b] = [source * from.size, target * to.size];
  for (let i = 0; i < count; i++) {
    to.score[b + i] = from.score[a + i]!;
    to.history[b + i] = from.history[a + i]!;
    to.label[b + i] = from.label[a + i]!;
  }
  to.count[target] = count;
}

/** The best score in a list; −Infinity when it is empty. */
export function topOf(lists: TokenLists, list: number): number {
  return lists.count[list] === 0 ? -Infinity : lists.score[list * lists.size]!;
}
