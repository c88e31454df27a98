/** What a clock measures. */
export type ClockId =
  | "preoxygenation"
  | "apnoea"
  | "attempt"
  | "tubeToCo2"
  | "pressureDue"
  | "pushDose"
  | "sedationDue"
  | "hyperventilation"
  | "rescue"
  | "osmotic"
  | "bag"
  | "cylinder"
  | "neuroDue"
  | "fullSetDue";

/** A clock that runs. Its words are the language's; `subject` names what it is about where there are several. */
export type Clock = {
  readonly id: ClockId;
  readonly startedAtMs: number;
  /** When it is over or something is due; none: it only counts up. */
  readonly endsAtMs?: number;
  /** A drug as it is said, or the number of an attempt. */
  readonly subject?: string;
};

/** How long it has run, ms. Never negative: a device clock may be set back. */
export const runFor = ({ startedAtMs }: Clock, nowMs: number): number => Math.max(0, nowMs - startedAtMs);

/** How long it still runs, ms; 0 when it is over. Never longer than it is in all, whatever became of the device clock. */
export function leftOf({ startedAtMs, endsAtMs }: Clock, nowMs: number): number | undefined {
  if (endsAtMs === undefined) return undefined;
  return Math.min(Math.max(0, endsAtMs - nowMs), Math.max(0, endsAtMs - startedAtMs));
}

export const isOver = (clock: Clock, nowMs: number): boolean => leftOf(clock, nowMs) === 0;
