/** The part of Web Locks that is used; tests hand in a fake. */
export type Locks = Pick<LockManager, "request" | "query">;

/** A page being reloaded gives its lock up a moment after the new one starts. */
const WAIT_MS = 1_500;

/**
 * Takes the right to write, for as long as the page lives.
 *
 * @param locks undefined in browsers without Web Locks: the right is then given, and only the database's refusal to
 *              write one place twice is left against a second tab.
 * @returns false when another tab holds it.
 */
export function becomeSingleWriter(locks: Locks | undefined, name: string): Promise<boolean> {
  if (locks === undefined) return Promise.resolve(true);
  return new Promise((resolve) => {
    const waiting = new AbortController();
    const timer = setTimeout(() => waiting.abort(), WAIT_MS);
    locks
      .request(name, { signal: waiting.signal }, () => {
        clearTimeout(timer);
        resolve(true);
        return new Promise<never>(() => undefined);
      })
      .catch(() => {
        clearTimeout(timer);
        resolve(false);
      });
  });
}

const LOOK_EVERY_MS = 2_000;

/**
 * Calls once when nobody has had the right to write for a while: the tab that had it is gone, and is not merely being
 * reloaded. The right is not taken.
 */
export function whenNobodyWrites(locks: Locks, name: string, tell: () => void): void {
  let wasFree = false;
  const look = async (): Promise<void> => {
    const { held } = await locks.query();
    const isFree = held?.some((lock) => lock.name === name) === false;
    if (isFree && wasFree) return tell();
    wasFree = isFree;
    lookLater();
  };
  // A browser that cannot tell is asked again.
  const lookLater = (): void => void setTimeout(() => void look().catch(lookLater), LOOK_EVERY_MS);
  lookLater();
}
