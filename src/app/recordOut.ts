import type { RecordedCase } from "../export/recordedCase.ts";
import type { Clock, ExportFile, FileSaver, Printer } from "./ports.ts";
import { viewRecord, type ExportKind, type RecordOutcome, type RecordView } from "./view/record.ts";

/** When and where a record leaves the device. */
type At = { readonly nowMs: number; readonly zone: string };
type PrintedMaker = (recorded: RecordedCase, at: At) => string;
/** Makes files of one form. Their names say the form alone, "vitals.csv": which case it is is put before them here. */
export type Exporter = (recorded: RecordedCase, at: At) => Promise<readonly ExportFile[]>;

export type RecordOutOptions = {
  readonly clock: Pick<Clock, "nowMs">;
  /** IANA name of the time zone in which times are printed. */
  readonly zone: string;
  /** The case as it stands. */
  readonly recorded: () => RecordedCase;
  /** Why this case can only be saved as it stands; none where it can be printed and saved in every form. */
  readonly unfit?: (recorded: RecordedCase) => string | undefined;
  readonly loadPrinted: () => Promise<PrintedMaker>;
  readonly exporters: Readonly<Partial<Record<ExportKind, Exporter>>>;
  readonly saver: FileSaver;
  readonly printer: Printer;
  readonly onChange: (view: RecordView) => void;
};

/** The label as a part of a file name; nothing of the patient is in it. */
const nameOf = ({ label, rehearsal }: RecordedCase): string =>
  ["tragus", label, ...(rehearsal ? ["rehearsal"] : [])].join("-").replace(/[^\p{L}\p{N}]+/gu, "-");

const detailOf = (thrown: unknown): string => (thrown instanceof Error ? thrown.message : String(thrown));

/** Every way in which the record leaves the device. What came of it is shown, and that it then lies outside. */
export class RecordOut {
  readonly #o: RecordOutOptions;
  #makePrinted: PrintedMaker | undefined;

  constructor(options: RecordOutOptions) {
    this.#o = options;
    options.printer.onPrint(() => this.#document());
    this.#show({ kind: "none" });
  }

  /** Makes ready for the browser's own print, which waits for nothing. */
  async prepare(): Promise<void> {
    try {
      this.#makePrinted ??= await this.#o.loadPrinted();
    } catch {
      // The button tries again and then says so; until it succeeds the browser prints the screen.
    }
  }

  async print(): Promise<void> {
    try {
      this.#makePrinted ??= await this.#o.loadPrinted();
    } catch (thrown) {
      this.#show({ kind: "failed", detail: detailOf(thrown) });
      return;
    }
    this.#show({ kind: "printed" });
    this.#o.printer.print();
  }

  async export(kind: ExportKind): Promise<void> {
    const { exporters, recorded, saver } = this.#o;
    try {
      const about = recorded();
      const unfit = kind === "json" ? undefined : this.#o.unfit?.(about);
      if (unfit !== undefined) throw new Error(unfit);
      const made = (await exporters[kind]?.(about, this.#at())) ?? [];
      const files = made.map((file) => ({ ...file, name: `${nameOf(about)}-${file.name}` }));
      for (const file of files) {
        const saved = saver.save(file);
        if (!saved.ok) throw new Error(saved.error.detail);
      }
      this.#show({ kind: "saved", names: files.map(({ name }) => name) });
    } catch (thrown) {
      this.#show({ kind: "failed", detail: detailOf(thrown) });
    }
  }

  /** The document to be printed; none where it cannot be made, which is shown. */
  #document(): string | undefined {
    try {
      const about = this.#o.recorded();
      const unfit = this.#o.unfit?.(about);
      if (unfit !== undefined) throw new Error(unfit);
      return this.#makePrinted?.(about, this.#at());
    } catch (thrown) {
      this.#show({ kind: "failed", detail: detailOf(thrown) });
      return undefined;
    }
  }

  #at(): At {
    return { nowMs: this.#o.clock.nowMs(), zone: this.#o.zone };
  }

  #show(outcome: RecordOutcome): void {
    this.#o.onChange(viewRecord(Object.keys(this.#o.exporters) as ExportKind[], outcome));
  }
}
