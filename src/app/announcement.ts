import type { Priority } from "../protocol/priority.ts";

/** Said without being asked. */
export type Announcement = {
  readonly text: string;
  readonly priority: Priority | "none";
  readonly alertId: string | undefined;
};
