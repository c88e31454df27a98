import { ok } from "../../core/result.ts";
import type { ProtocolStore, StoredProtocol } from "../../app/ports.ts";
import { createKeptValue } from "./keptValue.ts";

/** The store of the running page. */
export const protocolStoreInPage = (): ProtocolStore => createIndexedDbProtocolStore("tragus-protocol");

/** Stored by this app or a newer one, or by nobody knows whom: only what has the right shape is handed on. */
function readStored(stored: unknown): StoredProtocol {
  const { file, trustedKey } = (stored ?? {}) as { [K in keyof StoredProtocol]: unknown };
  const { name, bytes, signature } = (file ?? {}) as Readonly<Record<string, unknown>>;
  const isFile = typeof name === "string" && bytes instanceof Uint8Array;
  return {
    ...(isFile ? { file: { name, bytes, ...(signature instanceof Uint8Array ? { signature } : {}) } } : {}),
    ...(typeof trustedKey === "string" ? { trustedKey } : {}),
  };
}

/** Keeps the chosen protocol file; errors are those of `keptValue.ts`. */
export function createIndexedDbProtocolStore(name: string): ProtocolStore {
  const kept = createKeptValue({ database: name, store: "chosen", key: "protocol" });
  return {
    load: async () => {
      const found = await kept.get();
      return found.ok ? ok(readStored(found.value)) : found;
    },
    save: (stored) => kept.put(stored),
    clear: () => kept.remove(),
  };
}
