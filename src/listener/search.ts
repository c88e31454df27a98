import { createFrameStep } from "./frameStep.ts";
import { NO_WORDS } from "./histories.ts";
import { OUTPUT_COUNT } from "./phones.ts";
import type { PhoneGraph } from "./phoneGraph.ts";
import { freePath } from "./phoneScores.ts";
import { wordsAfter } from "./wordsAfter.ts";

/** A way through the grammar: its words with single spaces, and its natural-log score. */
export type Candidate = { readonly words: string; readonly score: number };

/** What the grammar holds in store behind the words of an utterance. */
export type Ahead = {
  /** Words that may follow the best candidate. */
  readonly followers: ReadonlySet<string>;
  /** The best path that is not a whole sentence yet, if any. */
  readonly unfinished: Candidate | undefined;
};

export const MAX_CANDIDATES = 12;

export type Search = {
  /**
   * @param logProbs `[outputs][40]` log probabilities of one utterance (logSoftmax).
   * @returns best first, at most MAX_CANDIDATES, distinct word sequences; empty when no whole path survived. Certain to be
   *          found if it is not 40 nats below another on the way; one whose m1 is under −2 may be missing.
   */
  decode(logProbs: Float32Array, outputs: number): readonly Candidate[];
  /** What the grammar holds in store behind what the last decode found. */
  ahead(): Ahead;
};

/**
 * The best word sequences of a grammar for a stretch of phone probabilities: CTC Viterbi with several word histories
 * kept at every point, and a beam. One decode at a time; its memory is made once and used again.
 * Not for: saying whether the sound was in the grammar at all (margins).
 */
export function createSearch(graph: PhoneGraph): Search {
  const frames = createFrameStep(graph);
  const isFinal = new Uint8Array(graph.states);
  for (const state of graph.finals) isFinal[state] = 1;
  let bestWords: string | undefined;

  const bestOf = (state: number, best: Map<number, number>): void => {
    for (const lists of frames.ends()) {
      for (let i = state * lists.size; i < state * lists.size + lists.count[state]!; i++) {
        const history = lists.history[i]!;
        if (history !== NO_WORDS) best.set(history, Math.max(best.get(history) ?? -Infinity, lists.score[i]!));
      }
    }
  };
  return {
    decode(logProbs, outputs) {
      frames.begin(freePath(logProbs, outputs).phones);
      for (let t = 0; t < outputs; t++) frames.step(logProbs, t * OUTPUT_COUNT);
      const best = new Map<number, number>();
      for (const state of graph.finals) bestOf(state, best);
      const candidates = [...best]
        .sort(([, a], [, b]) => b - a)
        .slice(0, MAX_CANDIDATES)
        .map(([history, score]) => ({ words: frames.wordsOf(history), score }));
      bestWords = candidates[0]?.words;
      return candidates;
    },
    ahead() {
      const partial = new Map<number, number>();
      for (let state = 0; state < graph.states; state++) if (isFinal[state] === 0) bestOf(state, partial);
      let unfinished: Candidate | undefined;
      for (const [history, score] of partial)
        if (score > (unfinished?.score ?? -Infinity)) unfinished = { words: frames.wordsOf(history), score };
      return { followers: wordsAfter(graph, bestWords), unfinished };
    },
  };
}
