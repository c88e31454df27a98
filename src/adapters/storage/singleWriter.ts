/** The part of Web Locks that is used; tests hand in a fake. */
export type Locks = Pick<LockManager, "request">;

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
