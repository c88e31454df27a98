/** A time as text, from Unix ms. */
export type TellTime = (atMs: number) => string;

/**
 * Times in ISO 8601 with their offset, to the millisecond: `2027-01-15T09:00:00.000+01:00`.
 *
 * @param zone IANA name, e.g. "Europe/London". An unknown one throws `RangeError`: the caller takes it from the device.
 *
 * Not for: showing a time to a reader in a hurry.
 */
export function isoTime(zone: string): TellTime {
  const format = new Intl.DateTimeFormat("en", {
    timeZone: zone,
    calendar: "gregory",
    numberingSystem: "latn",
    hourCycle: "h23",
    year: "numeric",
    month: "2-digit",
    day: "2-digit",
    hour: "2-digit",
    minute: "2-digit",
    second: "2-digit",
    fractionalSecondDigits: 3,
    timeZoneName: "longOffset",
  });
  return (atMs) => {
    const part = Object.fromEntries(format.formatToParts(atMs).map(({ type, value }) => [type, value]));
    const { year, month, day, hour, minute, second, fractionalSecond } = part;
    // "GMT+01:00", and "GMT" alone where there is no offset.
    const offset = part.timeZoneName?.slice(3) || "+00:00";
    return `${year}-${month}-${day}T${hour}:${minute}:${second}.${fractionalSecond}${offset}`;
  };
}
