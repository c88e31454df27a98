import { ok } from "../../core/result.ts";
import { readVoiceProfile } from "../../listener/voiceProfile.ts";
import type { ProfileStore } from "../../app/ports.ts";
import { createKeptValue } from "./keptValue.ts";

/** The store of the running page. */
export const profileStoreInPage = (): ProfileStore => createProfileStore("tragus-voice");

/**
 * Keeps what was learnt of the user's voice in IndexedDB. Errors: those of `keptValue.ts`; on loading also what is wrong
 * with what was found.
 */
export function createProfileStore(name: string): ProfileStore {
  const kept = createKeptValue({ database: name, store: "profile", key: "mine" });
  return {
    load: async () => {
      const found = await kept.get();
      if (!found.ok) return found;
      return found.value === undefined ? ok(undefined) : readVoiceProfile(found.value);
    },
    save: (profile) => kept.put(profile),
    clear: () => kept.remove(),
  };
}
