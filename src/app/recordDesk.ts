import type { Sha256Hex } from "../log/chain/sealFacts.ts";
import type { Fact } from "../log/facts.ts";
import { CaseShelf, openCase, type ShelfView } from "./caseShelf.ts";
import { exportersOf } from "./exporters.ts";
import { loadPart } from "./loadPart.ts";
import type { CaseArchive, Clock, FileSaver, Printer } from "./ports.ts";
import { RecordOut } from "./recordOut.ts";
import type { ScreenActions } from "./screenView.ts";
import type { Session } from "./session.ts";
import type { RecordView } from "./view/record.ts";

export type RecordDeskParts = {
  readonly session: Session;
  readonly archive: CaseArchive;
  /** Those of the open case, with the ones that are still to be written. */
  readonly facts: () => readonly Fact[];
  readonly sha256Hex: Sha256Hex;
  readonly clock: Pick<Clock, "nowMs">;
  /** IANA name. */
  readonly zone: string;
  readonly saver: FileSaver;
  readonly printer: Printer;
  readonly onRecord: (view: RecordView) => void;
  readonly onShelf: (view: ShelfView) => void;
};

export type RecordActions = Pick<
  ScreenActions,
  "printRecord" | "exportRecord" | "listCases" | "chooseCase" | "addRecord"
>;

/** All that is done with records besides keeping them. Not a part of the start: it is loaded once the case is open. */
export function openRecordDesk(parts: RecordDeskParts): RecordActions {
  const { session, archive, facts, onRecord, onShelf } = parts;
  const shelf = new CaseShelf({
    ...parts,
    context: () => session.context,
    open: () => openCase(session, facts()),
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
  void out.prepare();
  return {
    printRecord: () => void out.print(),
    exportRecord: (kind) => void out.export(kind),
    listCases: () => void shelf.refresh(),
    chooseCase: (caseId) => void shelf.choose(caseId),
    addRecord: (file) => void shelf.add(file),
  };
}
