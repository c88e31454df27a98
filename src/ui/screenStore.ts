import { createStore } from "zustand/vanilla";
import type { Meter, ScreenView } from "../app/screenView.ts";
import type { ShelfView } from "../app/caseShelf.ts";
import type { EntriesView } from "../app/view/entries.ts";
import type { RecordView } from "../app/view/record.ts";
import type { ProtocolPageView } from "../app/view/protocolPageTypes.ts";

/** How far the page may be trusted to start without a network. */
export type OfflineState = "unknown" | "ready" | "updateWaiting" | "failed";

type ScreenState = {
  /** Undefined until the case has been read from storage. */
  readonly view: ScreenView | undefined;
  readonly meter: Meter | undefined;
  readonly protocolPage: ProtocolPageView | undefined;
  readonly record: RecordView | undefined;
  readonly shelf: ShelfView;
  readonly entries: EntriesView;
  readonly offline: OfflineState;
};

/** What the page shows now. Written by `main.tsx` alone; components only read it. */
export const screenStore = createStore<ScreenState>(() => ({
  view: undefined,
  meter: undefined,
  protocolPage: undefined,
  record: undefined,
  shelf: { cases: [], notice: "", failed: false },
  entries: { rows: [], hasOlder: false, isLong: false },
  offline: "unknown",
}));

export function showView(view: ScreenView): void {
  screenStore.setState({ view });
}

/** Kept apart from the view: the meter moves several times a second and must not redraw the page. */
export function showMeter(meter: Meter): void {
  screenStore.setState({ meter });
}

/** Kept apart too: it is long, and changes only with the protocol. */
export function showProtocolPage(protocolPage: ProtocolPageView): void {
  screenStore.setState({ protocolPage });
}

/** Kept apart too: it changes only when the record leaves the device. */
export function showRecord(record: RecordView): void {
  screenStore.setState({ record });
}

export function showShelf(shelf: ShelfView): void {
  screenStore.setState({ shelf });
}

/** Kept apart too: it comes with the record desk. */
export function showEntries(entries: EntriesView): void {
  screenStore.setState({ entries });
}

export function showOffline(offline: OfflineState): void {
  screenStore.setState({ offline });
}
