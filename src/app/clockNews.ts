import type { ClockMove } from "../core/runningClock.ts";
import { sayClockSet, saySlept } from "../language/sentences/caseRecord.ts";
import type { NewFact } from "../log/facts.ts";
import type { Announcement } from "./announcement.ts";

/** What is recorded and said when the device's clock was set, or the device slept. */
export function clockNews(move: ClockMove): {
  readonly fact: NewFact;
  readonly announcements: readonly Announcement[];
} {
  const announce = (text: string): readonly Announcement[] => [{ text, priority: "medium", alertId: "clock" }];
  return move.kind === "set"
    ? { fact: { type: "clock.changed", byMs: move.byMs }, announcements: announce(sayClockSet(move.byMs)) }
    : { fact: { type: "device.slept", forMs: move.forMs }, announcements: announce(saySlept(move.forMs)) };
}
