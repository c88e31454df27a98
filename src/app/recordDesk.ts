import type { Sha256Hex } from "../log/chain/sealFacts.ts";
import { CaseShelf, openCase, type ShelfView } from "./caseShelf.ts";
import { EntryList } from "./entryList.ts";
import { exportersOf } from "./exporters.ts";
import type { KeptFacts } from "./keptFacts.ts";
import { loadPart } from "./loadPart.ts";
import type { CaseArchive, Clock, FactStore, FileSaver, Printer } from "./ports.ts";
import { RecordOut } from "./recordOut.ts";
import type { ScreenActions } from "./screenView.ts";
import type { Session } from "./session.ts";
import type { EntriesView } from "./view/entries.ts";
import type { RecordView } from "./view/record.ts";

export type RecordDeskParts = {
  readonly session: Session;
  readonly archive: CaseArchive & Pick<FactStore, "erase">;
  /** The facts of the open case, with the ones that are still to be written. */
  readonly kept: Pick<KeptFacts, "facts" | "unsavedIds">;
  readonly sha256Hex: Sha256Hex;
  readonly clock: Pick<Clock, "nowMs">;
  /** IANA name. */
  readonly zone: string;
  readonly saver: FileSaver;
  readonly printer: Printer;
  readonly onRecord: (view: RecordView) => void;
  readonly onShelf: (view: ShelfView) => void;
  readonly onEntries: (view: EntriesView) => void;
};

export type RecordActions = Pick<
  ScreenActions,
  "printRecord" | "exportRecord" | "showEntries" | "listCases" | "chooseCase" | "addRecord" | "eraseCase"
> & {
  /** To be called whenever the record may have grown, or have been written. */
  refreshEntries(): void;
};

/** All that is done with records besides keeping them. Not a part of the start: it is loaded once the case is open. */
export function openRecordDesk(parts: RecordDeskParts): RecordActions {
  const { session, archive, kept, onRecord, onShelf } = parts;
  const shelf = new CaseShelf({
    ...parts,
    context: () => session.context,
    open: () => openCase(session, kept),
    onChange: onShelf,
  });
  const out = new RecordOut({
    ...parts,
    recorded: () => shelf.recorded(),
    unfit: (recorded) => shelf.unfit(recorded),
    loadPrinted: async () => (await loadPart(() => import("../export/printed/printedRecord.ts"))).printedRecord,
    exporters: exportersOf(archive),
    onChange: onRecord,
  });
  const entries = new EntryList({ ...parts, context: () => session.context });
  void out.prepare();
  entries.refresh();
  return {
    printRecord: () => void out.print(),
    exportRecord: (kind) => void out.export(kind),
    showEntries: (more) => entries.showMore(more),
    refreshEntries: () => entries.refresh(),
    listCases: () => void shelf.refresh(),
    chooseCase: (caseId) => void shelf.choose(caseId),
    eraseCase: (typed) => void shelf.erase(typed),
    addRecord: (file) => void shelf.add(file),
  };
}
