import { createHistories, NO_WORDS } from "./histories.ts";
import type { PhoneGraph } from "./phoneGraph.ts";
import { BLANK, OUTPUT_COUNT } from "./phones.ts";
import { LOWEST_M1 } from "./phoneScores.ts";
import { copyList, createTokenLists, offer, topOf, type TokenLists } from "./tokenLists.ts";

/** Distinct word histories kept at every point. Source: the listener's card. */
const HISTORIES_KEPT = 4;
/** Tokens this far (nats) below the best are dropped. Source: the listener's card. */
const BEAM = 40;
/** No token carries this label: to pass over it is to pass over nothing. */
const NO_LABEL = 255;

export type FrameStep = {
  /** @param freePhones phones of the free path of the whole utterance: they say how far a path may fall under it. */
  begin(freePhones: number): void;
  /** Takes in one frame: the log probabilities from `row` on. */
  step(logProbs: Float32Array, row: number): void;
  /** The tokens that stand between words now, one list for each state: after a blank, and straight after a phone. */
  ends(): readonly TokenLists[];
  wordsOf(history: number): string;
};

/**
 * Moves all tokens by one frame. A token stands in a phone, in the blank after it, or in a state between words; there
 * it remembers by its label the phone it came from, since two equal phones in a row need a blank between them. Only
 * arcs that hold tokens, or can be entered, are visited.
 */
export function createFrameStep(graph: PhoneGraph): FrameStep {
  const { states, firstArc, arcTo, arcWord, firstPhone, phones } = graph;
  const arcs = arcTo.length;
  const arcFrom = new Int32Array(arcs);
  for (let state = 0; state < states; state++) arcFrom.fill(state, firstArc[state], firstArc[state + 1]);
  const histories = createHistories();
  const inPhone = createTokenLists(phones.length, HISTORIES_KEPT);
  const afterPhone = createTokenLists(phones.length, HISTORIES_KEPT);
  const fresh = createTokenLists(2, HISTORIES_KEPT);
  let paused = createTokenLists(states, HISTORIES_KEPT);
  let nextPaused = createTokenLists(states, HISTORIES_KEPT);
  let direct = createTokenLists(states, 2 * HISTORIES_KEPT);
  let nextDirect = createTokenLists(states, 2 * HISTORIES_KEPT);

  let active = new Int32Array(arcs);
  let nextActive = new Int32Array(arcs);
  let activeCount = 0;
  const isActive = new Uint8Array(arcs);
  /** Tokens at or below this were beaten in the last frame. */
  let lowest = -Infinity;
  /** Best score so far in this frame; it only rises, so what is BEAM below it now will not live either. */
  let best = 0;
  /** The free path so far, and how far under it a token may be. */
  let free = 0;
  let allowance = 0;
  /** Tokens under this are dropped: BEAM below the best, or too far below the free path. It only rises within a frame. */
  let floor = 0;

  /** Offers a list's tokens, with this frame's log probability added; those labelled `not` are passed over. */
  const pass = (from: TokenLists, source: number, gain: number, to: TokenLists, target: number, not: number): void => {
    const base = source * from.size;
    const end = base + from.count[source]!;
    for (let i = base; i < end; i++) {
      const old = from.score[i]!;
      const score = old + gain;
      if (old <= lowest || score < floor) break;
      if (from.label[i] === not) continue;
      if (score > best) {
        best = score;
        floor = Math.max(floor, best - BEAM);
      }
      offer(to, target, score, from.history[i]!, 0);
    }
  };

  /** Moves the tokens inside an arc, last phone first: each phone still sees the old tokens of the one before it. */
  const stepArc = (arc: number, logProbs: Float32Array, row: number): boolean => {
    const from = arcFrom[arc]!;
    const blank = logProbs[row + BLANK]!;
    const first = firstPhone[arc]!;
    const last = firstPhone[arc + 1]! - 1;
    let holdsTokens = false;
    for (let i = last; i >= first; i--) {
      const own = inPhone.count[i]! + afterPhone.count[i]!;
      const before = i > first ? inPhone.count[i - 1]! + afterPhone.count[i - 1]! : 1;
      if (own + before === 0) continue;
      const phone = phones[i]!;
      const gain = logProbs[row + phone]!;
      fresh.count[0] = 0;
      fresh.count[1] = 0;
      pass(inPhone, i, gain, fresh, 0, NO_LABEL);
      if (i < last) {
        pass(inPhone, i, blank, fresh, 1, NO_LABEL);
        pass(afterPhone, i, blank, fresh, 1, NO_LABEL);
      }
      if (i > first) {
        pass(afterPhone, i - 1, gain, fresh, 0, NO_LABEL);
        if (phones[i - 1] !== phone) pass(inPhone, i - 1, gain, fresh, 0, NO_LABEL);
      } else {
        pass(paused, from, gain, fresh, 0, NO_LABEL);
        pass(direct, from, gain, fresh, 0, phone);
      }
      copyList(fresh, 0, inPhone, i);
      copyList(fresh, 1, afterPhone, i);
      if (fresh.count[0] + fresh.count[1] > 0) holdsTokens = true;
    }
    return holdsTokens;
  };

  /** Lets a state's tokens rest on a blank, and begin the arcs in which none stood before. */
  const stepState = (state: number, logProbs: Float32Array, row: number): void => {
    nextPaused.count[state] = 0;
    nextDirect.count[state] = 0;
    const top = Math.max(topOf(paused, state), topOf(direct, state));
    if (top <= lowest) return;
    const blank = logProbs[row + BLANK]!;
    pass(paused, state, blank, nextPaused, state, NO_LABEL);
    pass(direct, state, blank, nextPaused, state, NO_LABEL);
    for (let arc = firstArc[state]!; arc < firstArc[state + 1]!; arc++) {
      const first = firstPhone[arc]!;
      const phone = phones[first]!;
      const gain = logProbs[row + phone]!;
      if (top + gain < floor || isActive[arc] === 1) continue;
      pass(paused, state, gain, inPhone, first, NO_LABEL);
      pass(direct, state, gain, inPhone, first, phone);
      if (inPhone.count[first] === 0) continue;
      isActive[arc] = 1;
      nextActive[activeCount++] = arc;
    }
  };

  /** Tokens in the last phone of a word also stand in the state after it, their history one word longer. */
  const leaveArc = (arc: number): void => {
    const last = firstPhone[arc + 1]! - 1;
    const base = last * HISTORIES_KEPT;
    for (let i = base; i < base + inPhone.count[last]!; i++) {
      const score = inPhone.score[i]!;
      if (score < floor) break;
      offer(nextDirect, arcTo[arc]!, score, histories.extend(inPhone.history[i]!, arcWord[arc]!), phones[last]!);
    }
  };

  return {
    begin(freePhones) {
      histories.clear();
      for (const lists of [inPhone, afterPhone, paused, direct]) lists.count.fill(0);
      isActive.fill(0);
      activeCount = 0;
      free = 0;
      floor = -Infinity;
      allowance = Math.max(BEAM, -LOWEST_M1 * freePhones);
      offer(paused, graph.start, 0, NO_WORDS, 0);
    },
    step(logProbs, row) {
      lowest = floor;
      best = -Infinity;
      free += topOfRow(logProbs, row);
      floor = free - allowance;
      const before = activeCount;
      activeCount = 0;
      for (let n = 0; n < before; n++) {
        const arc = active[n]!;
        if (stepArc(arc, logProbs, row)) nextActive[activeCount++] = arc;
        else isActive[arc] = 0;
      }
      for (let state = 0; state < states; state++) stepState(state, logProbs, row);
      for (let n = 0; n < activeCount; n++) leaveArc(nextActive[n]!);
      [active, nextActive] = [nextActive, active];
      [paused, nextPaused] = [nextPaused, paused];
      [direct, nextDirect] = [nextDirect, direct];
    },
    ends: () => [paused, direct],
    wordsOf: (history) =>
      histories
        .wordsOf(history)
        .map((word) => graph.words[word] ?? "")
        .join(" "),
  };
}

function topOfRow(logProbs: Float32Array, row: number): number {
  let top = -Infinity;
  for (let i = row; i < row + OUTPUT_COUNT; i++) top = Math.max(top, logProbs[i]!);
  return top;
}
