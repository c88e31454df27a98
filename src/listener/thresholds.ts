/**
 * At and above `…Take` words are taken; from `…Ask` up they are asked back; below, refused.
 * Source of `m1Take`, `m2Take`: the listener's card, chosen there on six speakers who took no part in training.
 * Source of `m1Ask`, `m2Ask`: none; the project's own choice, judged by its benchmark.
 */
export const THRESHOLDS = { m1Take: -0.206, m1Ask: -0.45, m2Take: 2.59, m2Ask: 0.4 } as const;
