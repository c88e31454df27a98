import { timesIn } from "../export/printed/times.ts";
import type { AppContext } from "./context.ts";
import type { KeptFacts } from "./keptFacts.ts";
import { viewEntries, type EntriesView } from "./view/entries.ts";

/** What is seen at a glance, and what there is room for when more is asked for; a print has them all. */
const LATEST = 6;
const MOST = 300;

export type EntryListParts = {
  readonly kept: Pick<KeptFacts, "facts" | "unsavedIds">;
  readonly context: () => Pick<AppContext, "protocol" | "mark">;
  /** IANA name. */
  readonly zone: string;
  readonly onEntries: (view: EntriesView) => void;
};

/** The entries of the open case on the screen: the newest few, or as many as there is room for. */
export class EntryList {
  readonly #parts: EntryListParts;
  #isLong = false;
  /** What the view was made of: it is not made again of the same. */
  #shown = "";

  constructor(parts: EntryListParts) {
    this.#parts = parts;
  }

  showMore(more: boolean): void {
    this.#isLong = more;
    this.refresh();
  }

  /** To be called whenever the record may have grown, or have been written. */
  refresh(): void {
    const { kept, context, zone, onEntries } = this.#parts;
    const { protocol, mark } = context();
    const [facts, unsavedIds] = [kept.facts(), kept.unsavedIds()];
    const made = [facts.at(-1)?.id, facts.length, unsavedIds.size, this.#isLong, mark.hash].join(" ");
    if (made === this.#shown) return;
    this.#shown = made;
    // An erased case leaves no entries, here too.
    const times = timesIn(facts[0]?.atMs ?? 0, zone);
    const atMost = this.#isLong ? MOST : LATEST;
    onEntries({ ...viewEntries({ facts, unsavedIds, protocol, times, atMost }), isLong: this.#isLong });
  }
}
