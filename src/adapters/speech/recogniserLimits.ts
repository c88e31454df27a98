import type { LinkLimits } from "./listenerLink.ts";

export type RecogniserLimits = LinkLimits & {
  /** From `start` to listening, the user's answer to the browser's question included. */
  readonly startTimeoutMs: number;
  readonly soundMissingMs: number;
  /** Waits before each new try at a dead worker; after the last one it stays dead. */
  readonly restartAfterMs: readonly number[];
  readonly microphoneRetryMs: number;
};

/** This project's choice, none from a source: long enough for a slow tablet, short enough that silence is noticed. */
export const RECOGNISER_LIMITS: RecogniserLimits = {
  loadTimeoutMs: 120_000,
  answerTimeoutMs: 6_000,
  pingEveryMs: 1_000,
  startTimeoutMs: 120_000,
  soundMissingMs: 3_000,
  restartAfterMs: [0, 1_000, 3_000, 8_000],
  microphoneRetryMs: 2_000,
};
