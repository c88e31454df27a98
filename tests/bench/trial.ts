import type { Outcome } from "./judge.ts";
import type { Replay } from "./replay.ts";

/** One saying, made or recorded, and what came of it. */
export type Trial = {
  readonly group: string;
  readonly condition: string;
  readonly voice: string;
  /** What was said; empty for noise. */
  readonly words: string;
  readonly heard: string;
  readonly outcome: Outcome;
  /** The same words typed are asked back too. */
  readonly askedByRule: boolean;
  readonly replays: readonly Replay[];
};
