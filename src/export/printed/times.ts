/** How instants are printed in one case and one time zone. */
export type Times = {
  /** "14:03:22"; with the day where it is not that of the opening, and with the offset where that has changed since. */
  readonly time: (atMs: number) => string;
  /** "14:03" */
  readonly hour: (atMs: number) => string;
  /** "15 January 2027, 14:03:22, GMT+01:00" */
  readonly full: (atMs: number) => string;
  /** "GMT+01:00" */
  readonly offset: (atMs: number) => string;
};

const CLOCK = { hour: "2-digit", minute: "2-digit", hourCycle: "h23" } as const;

const QUARTER_MS = 15 * 60_000;

/**
 * @param openedAtMs Unix ms of the opening, whose day and offset go without saying.
 * @param zone       IANA name of the time zone.
 */
export function timesIn(openedAtMs: number, zone: string): Times {
  const format = (options: Intl.DateTimeFormatOptions) => {
    const formatter = new Intl.DateTimeFormat("en-GB", { timeZone: zone, ...options });
    return (atMs: number): string => formatter.format(atMs);
  };
  const second = format({ ...CLOCK, second: "2-digit" });
  const hour = format(CLOCK);
  const day = format({ day: "numeric", month: "short" });
  const date = format({ day: "numeric", month: "long", year: "numeric" });
  const named = new Intl.DateTimeFormat("en-GB", { timeZone: zone, timeZoneName: "longOffset" });
  const offset = (atMs: number): string =>
    named.formatToParts(atMs).find(({ type }) => type === "timeZoneName")?.value ?? zone;
  const [firstDay, firstOffset] = [day(openedAtMs), offset(openedAtMs)];
  /** What stands before and after a time of day; it can change with a quarter of an hour alone, and is costly. */
  const around = new Map<number, readonly [before: string, after: string]>();
  const aroundOf = (atMs: number): readonly [string, string] => {
    const quarter = Math.floor(atMs / QUARTER_MS);
    const known = around.get(quarter);
    if (known !== undefined) return known;
    const [here, shift] = [day(atMs), offset(atMs)];
    const made = [here === firstDay ? "" : `${here} `, shift === firstOffset ? "" : ` ${shift}`] as const;
    around.set(quarter, made);
    return made;
  };
  return {
    time: (atMs) => {
      const [before, after] = aroundOf(atMs);
      return `${before}${second(atMs)}${after}`;
    },
    hour,
    full: (atMs) => `${date(atMs)}, ${second(atMs)}, ${offset(atMs)}`,
    offset,
  };
}

const MS_PER_S = 1000;
const S_PER_MIN = 60;

/** A length of time: "40 s", "12 min 5 s", "1 h 10 min". */
export function showLength(ms: number): string {
  const s = Math.round(Math.max(0, ms) / MS_PER_S);
  const min = Math.floor(s / S_PER_MIN);
  if (min === 0) return `${s} s`;
  if (min < S_PER_MIN) return s % S_PER_MIN === 0 ? `${min} min` : `${min} min ${s % S_PER_MIN} s`;
  return min % S_PER_MIN === 0
    ? `${Math.floor(min / S_PER_MIN)} h`
    : `${Math.floor(min / S_PER_MIN)} h ${min % S_PER_MIN} min`;
}
