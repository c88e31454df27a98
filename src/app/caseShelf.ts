import { recordedCase, type RecordedCase } from "../export/recordedCase.ts";
import { fail } from "../core/result.ts";
import { emptyCase } from "../log/caseState.ts";
import type { Sha256Hex } from "../log/chain/sealFacts.ts";
import { MAX_RECORD_CHARACTERS, readRecordFile } from "../log/recordFile/readRecordFile.ts";
import { reduceFacts } from "../log/reduceFact.ts";
import {
  showCaseRow,
  sayAdded,
  sayCaseFaults,
  sayNoRecordFile,
  sayEraseCase,
  sayErasedCase,
  sayOtherLabel,
  sayOtherProtocol,
} from "../language/sentences/caseList.ts";
import type { AppContext } from "./context.ts";
import { sayStoreError } from "./deviceFault.ts";
import type { KeptFacts } from "./keptFacts.ts";
import type { CaseArchive, CaseInStore, FactStore, RecordSource } from "./ports.ts";
import type { Session } from "./session.ts";

/** The cases on this device, and what came of the last wish about them. */
export type ShelfView = {
  /** Newest first. */
  readonly cases: readonly { readonly caseId: string; readonly text: string; readonly chosen: boolean }[];
  /** How to erase the chosen case; none while that is the open one, which is erased by saying so. */
  readonly eraseText?: string;
  readonly notice: string;
  readonly failed: boolean;
};

export type CaseShelfOptions = {
  readonly archive: CaseArchive & Pick<FactStore, "erase">;
  readonly sha256Hex: Sha256Hex;
  /** IANA name of the time zone in which times are shown. */
  readonly zone: string;
  readonly context: () => Pick<AppContext, "protocol" | "mark">;
  /** The open case as it stands. */
  readonly open: () => RecordedCase;
  readonly onChange: (view: ShelfView) => void;
};

/** A file that cannot be read is no record either, which is what an empty text is refused as. */
const textOf = (file: RecordSource): Promise<string> => file.text().catch(() => "");

/** The open case with its facts, as everything that leaves the device is made from it. */
export function openCase({ state, context }: Session, kept: Pick<KeptFacts, "facts" | "unsavedIds">): RecordedCase {
  const [facts, unsavedIds] = [kept.facts(), kept.unsavedIds()];
  const { caseId = "", label = "", isRehearsal: rehearsal } = state.log;
  const { protocol, mark } = context;
  return recordedCase({ caseId, label, rehearsal, facts, unsavedIds, protocol, mark });
}

/** What is typed to erase a case: its label, or a word where its opening cannot be read. */
const wordOf = ({ label }: RecordedCase): string => (label === "" ? "erase" : label);

/** All cases on this device: which of them is printed and saved, and cases that come from files. */
export class CaseShelf {
  readonly #o: CaseShelfOptions;
  #rows: readonly CaseInStore[] = [];
  #chosen: RecordedCase | undefined;

  constructor(options: CaseShelfOptions) {
    this.#o = options;
  }

  /** The chosen case, or the open one. */
  recorded(): RecordedCase {
    return this.#chosen ?? this.#o.open();
  }

  /** Its targets are in a protocol that is not at hand: it can only be saved as it stands. */
  unfit({ mark }: RecordedCase): string | undefined {
    return mark.hash === this.#o.context().mark.hash ? undefined : sayOtherProtocol(mark);
  }

  async refresh(): Promise<void> {
    await this.#show("", false);
  }

  /** What is printed and saved from here on; none: the open case. Until it is read, that is what was chosen before. */
  async choose(caseId: string | undefined): Promise<void> {
    if (caseId === undefined || caseId === this.#o.open().caseId) {
      this.#chosen = undefined;
      return this.#show("", false);
    }
    const read = await this.#o.archive.read(caseId);
    if (!read.ok) return this.#show(sayStoreError(read.error), true);
    const { facts, faults } = read.value;
    const { label = "", isRehearsal: rehearsal, protocolMark } = reduceFacts(facts, emptyCase);
    const { protocol, mark } = this.#o.context();
    this.#chosen = recordedCase({ caseId, label, rehearsal, facts, protocol, mark: protocolMark ?? mark });
    await this.#show(sayCaseFaults(faults), faults.length > 0);
  }

  /** A case from a file. It is only added where every entry of it fits its chain. */
  async add(file: RecordSource): Promise<void> {
    // No character takes less than a byte; and what is far too large must not be read at all.
    const isLarge = file.size > MAX_RECORD_CHARACTERS;
    const tooLarge = fail({ kind: "too-large", characters: file.size } as const);
    const read = isLarge ? tooLarge : await readRecordFile(await textOf(file), this.#o.sha256Hex);
    if (!read.ok) return this.#show(sayNoRecordFile(read.error), true);
    const added = await this.#o.archive.add(read.value);
    await (added.ok ? this.#show(sayAdded(read.value), false) : this.#show(sayStoreError(added.error), true));
  }

  /**
   * Removes the chosen case from every store of the device. Never the open one.
   *
   * @param typed the word that was asked for, its label: it was chosen with open eyes.
   */
  async erase(typed: string): Promise<void> {
    const chosen = this.#chosen;
    if (chosen === undefined) return;
    if (typed.trim().toLowerCase().split(/\s+/u).join(" ") !== wordOf(chosen))
      return this.#show(sayOtherLabel(wordOf(chosen)), true);
    const erased = await this.#o.archive.erase(chosen.caseId);
    if (!erased.ok) return this.#show(sayStoreError(erased.error), true);
    this.#chosen = undefined;
    await this.#show(sayErasedCase(chosen), false);
  }

  async #show(notice: string, failed: boolean): Promise<void> {
    const listed = await this.#o.archive.cases();
    if (listed.ok) this.#rows = listed.value;
    const chosenId = this.recorded().caseId;
    this.#o.onChange({
      cases: this.#rows.map((row) => ({
        caseId: row.caseId,
        text: showCaseRow(row, this.#o.zone),
        chosen: row.caseId === chosenId,
      })),
      ...(this.#chosen && { eraseText: sayEraseCase(this.#chosen, wordOf(this.#chosen)) }),
      notice: listed.ok ? notice : sayStoreError(listed.error),
      failed: failed || !listed.ok,
    });
  }
}
