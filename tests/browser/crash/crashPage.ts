import { sha256HexHere } from "../../../src/adapters/files/webCrypto.ts";
import { factStoreInPage } from "../../../src/adapters/storage/indexedDbFactStore.ts";
import type { FactStore } from "../../../src/app/ports.ts";
import { ok } from "../../../src/core/result.ts";
import type { Spoil } from "./crashMessages.ts";
import { factsOf, opensCase } from "./crashTurns.ts";
import { readRecords } from "./readRecords.ts";
import type { FromPage } from "./crashMessages.ts";

/** Tells the parent, over a connection that outlives this page. */
const tell = (message: FromPage): Promise<unknown> =>
  fetch("/tell", { method: "POST", body: JSON.stringify(message) }).catch(() => undefined);

/** The store of the app, or one that is spoilt on purpose, so that the test can show that it would be noticed. */
function storeOf(spoil: Spoil | undefined): FactStore {
  const store = factStoreInPage(sha256HexHere());
  switch (spoil) {
    case undefined:
      return store;
    case "early": {
      // Says that facts are durable while they are still being written; only the next ones wait for them.
      let last: Promise<unknown> = Promise.resolve();
      const append: FactStore["append"] = async (facts) => {
        await last;
        last = store.append(facts);
        return ok(undefined);
      };
      return { ...store, append };
    }
    case "apart": {
      // Each fact in a transaction of its own.
      const append: FactStore["append"] = async (facts) => {
        for (const fact of facts) {
          const written = await store.append([fact]);
          if (!written.ok) return written;
        }
        return ok(undefined);
      };
      return { ...store, append };
    }
  }
}

/**
 * Tells what it finds in the store, then speaks turns as fast as they are written, until this browser is killed. The next
 * turn does not wait until the parent has heard of the last one, but of the one before that.
 */
async function speak(launch: number, store: FactStore): Promise<void> {
  const loaded = await store.load();
  let heard = tell({ kind: "found", loaded, records: await readRecords() });
  const isEmpty = loaded.ok && loaded.value.length === 0;
  for (let turn = 0; ; turn++) {
    const written = await store.append(factsOf({ launch, turn }, turn === 0 && (isEmpty || opensCase(launch))));
    await heard;
    heard = tell(written.ok ? { kind: "saved", launch, turn } : { kind: "failed", launch, turn, error: written.error });
    if (!written.ok) return;
  }
}

const asked = new URLSearchParams(location.search);
const spoil = asked.get("spoil") ?? undefined;
void speak(Number(asked.get("launch")), storeOf(spoil as Spoil | undefined));
