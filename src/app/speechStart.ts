import type { Utterance } from "./ports.ts";

/** Background on both sides of an utterance, as the listener cuts it. */
const BACKGROUND_MS = 600;

/** Unix ms at which the speech of an utterance began; its end, where nothing is known of its length. */
export const speechStartedAtMs = ({ endedAtMs, shape }: Utterance): number =>
  endedAtMs - Math.max(0, (shape?.lengthMs ?? 0) - BACKGROUND_MS);
