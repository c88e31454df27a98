import { BLANK, OUTPUT_COUNT } from "./phones.ts";

/** Log probabilities `[outputs][40]` from the network's logits of the same shape. */
export function logSoftmax(logits: Float32Array, outputs: number): Float32Array {
  const logProbs = new Float32Array(outputs * OUTPUT_COUNT);
  for (let row = 0; row < logProbs.length; row += OUTPUT_COUNT) {
    let top = -Infinity;
    for (let i = row; i < row + OUTPUT_COUNT; i++) top = Math.max(top, logits[i]!);
    let sum = 0;
    for (let i = row; i < row + OUTPUT_COUNT; i++) sum += Math.exp(logits[i]! - top);
    const total = top + Math.log(sum);
    for (let i = row; i < row + OUTPUT_COUNT; i++) logProbs[i] = logits[i]! - total;
  }
  return logProbs;
}

export type FreePath = { readonly score: number; readonly phones: number };

/**
 * So far (nats a phone) under the free path nothing is told apart any more: certainty does not look below (`certaintyModel.ts`), and the search
 * gives up what lies lower.
 */
export const LOWEST_M1 = -2;

/**
 * The best path that no grammar holds: its log score, and how many phones it spells when repeats and blanks are
 * taken out. What a grammar path is measured against in m1.
 */
export function freePath(logProbs: Float32Array, outputs: number): FreePath {
  let score = 0;
  let phones = 0;
  let previous = BLANK;
  for (let row = 0; row < outputs * OUTPUT_COUNT; row += OUTPUT_COUNT) {
    let best = 0;
    for (let i = 1; i < OUTPUT_COUNT; i++) if (logProbs[row + i]! > logProbs[row + best]!) best = i;
    score += logProbs[row + best]!;
    if (best !== BLANK && best !== previous) phones++;
    previous = best;
  }
  return { score, phones };
}
