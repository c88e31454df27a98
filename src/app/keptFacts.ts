import type { Fact } from "../log/facts.ts";
import type { FactStore } from "./ports.ts";

/** The facts of the open case in memory too: a print that the browser begins cannot wait for a read. */
export type KeptFacts = {
  /** The same store; what goes through it is kept. */
  readonly store: FactStore;
  /** Oldest first, with those whose write failed and that are still to be tried again. */
  facts(): readonly Fact[];
  /** Which of them are still to be tried again. */
  unsavedIds(): ReadonlySet<string>;
};

/** A fact that opens a case leaves those of the last one behind. */
function keptAfter(durable: Fact[], added: readonly Fact[]): Fact[] {
  const opening = added.findLastIndex(({ type }) => type === "case.opened");
  if (opening >= 0) return added.slice(opening);
  durable.push(...added);
  return durable;
}

export function keepFacts(store: FactStore): KeptFacts {
  let durable: Fact[] = [];
  let waiting: readonly Fact[] = [];
  return {
    store: {
      erase: async (caseId) => {
        const erased = await store.erase(caseId);
        if (erased.ok) [durable, waiting] = [[], []];
        return erased;
      },
      load: async () => {
        const loaded = await store.load();
        durable = [...(loaded.ok ? loaded.value : "facts" in loaded.error ? loaded.error.facts : [])];
        return loaded;
      },
      append: async (facts) => {
        const appended = await store.append(facts);
        // Those that could not be written come again with the next ones.
        if (appended.ok) durable = keptAfter(durable, facts);
        waiting = appended.ok ? [] : facts;
        return appended;
      },
    },
    facts: () => [...durable, ...waiting],
    unsavedIds: () => new Set(waiting.map(({ id }) => id)),
  };
}
