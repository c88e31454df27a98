import type { Priority } from "../protocol/priority.ts";

/** Said without being asked. */
export type Announcement = {
  /** Empty where only the tone is to sound: past the cap on spoken alerts. */
  readonly text: string;
  readonly priority: Priority | "none";
  readonly alertId: string | undefined;
  /** What its numbers are of, e.g. "map": words that wait are dropped once there is a newer number. */
  readonly about?: readonly string[];
  /** Nobody has acknowledged it: louder than usual. */
  readonly louder?: true;
};
