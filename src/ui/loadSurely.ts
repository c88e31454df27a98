/** The network may be gone before everything is stored for work without it. */
const AGAIN_MS = 5_000;

/** Loads a part of the page that the start did not wait for, and tries again until it is there. */
export async function loadSurely<T>(load: () => Promise<T>): Promise<T> {
  for (;;) {
    try {
      return await load();
    } catch {
      await new Promise((resolve) => setTimeout(resolve, AGAIN_MS));
    }
  }
}
