import type { StorageRoom } from "../../app/ports.ts";

/**
 * Asks the browser to keep the record when the device runs short, and how much room there is. Whatever it cannot be asked, or
 * does not answer, stays out: nothing is promised that nobody said.
 */
export async function askForRoom(
  storage: Pick<StorageManager, "persist" | "estimate"> | undefined,
): Promise<StorageRoom> {
  const isKept = await storage?.persist().catch(() => undefined);
  const { quota, usage } = (await storage?.estimate().catch(() => undefined)) ?? {};
  return {
    ...(isKept === undefined ? {} : { isKept }),
    ...(quota === undefined || usage === undefined ? {} : { freeBytes: Math.max(0, quota - usage) }),
  };
}
