import type { Result } from "../core/result.ts";
import { PROTOCOL_NOT_USED } from "../language/sentences/protocol.ts";
import type { Protocol } from "../protocol/protocol.ts";
import type { ProtocolStore, Signatures, StoredProtocol } from "./ports.ts";
import {
  bundledProtocol,
  readProtocolFile,
  type ChosenFile,
  type LoadedProtocol,
  type ProtocolNotice,
} from "./protocolFile.ts";
import { sortFiles, type SortedFiles } from "./protocolFileKinds.ts";
import { keyName } from "./protocolFileSignature.ts";

type StoredFile = NonNullable<StoredProtocol["file"]>;

/** What a choice led to: the protocol that counts from now on, where it is another, and what to tell the user. */
export type Choice = { readonly loaded: LoadedProtocol | undefined; readonly notice: ProtocolNotice };
/** What counts at the start; a notice and words only where the stored file is no longer any good. */
export type FirstChoice = {
  readonly loaded: LoadedProtocol;
  readonly notice: ProtocolNotice | undefined;
  readonly fault: string | undefined;
};

const refused = (text: string, errors: readonly string[]): Choice => ({
  loaded: undefined,
  notice: { kind: "refused", text, errors },
});

function describe({ protocol, signedBy, upgradedFrom }: LoadedProtocol): string {
  const signed = signedBy === undefined ? "not signed" : `signed by key ${signedBy}`;
  const upgraded = upgradedFrom === undefined ? "" : `, upgraded from schema ${upgradedFrom}`;
  return `${protocol.name}, version ${protocol.version}, ${signed}${upgraded}`;
}

/** Chooses between the bundled protocol and a file of the user's, and keeps the choice. A bad file changes nothing. */
export class ProtocolChoice {
  readonly #example: Protocol;
  readonly #store: ProtocolStore;
  readonly #signatures: Signatures;
  #stored: StoredProtocol = {};

  /** @param example the protocol that comes with the app. */
  constructor(example: Protocol, store: ProtocolStore, signatures: Signatures) {
    this.#example = example;
    this.#store = store;
    this.#signatures = signatures;
  }

  /** The stored file, read, verified and validated anew; the bundled example where there is none or it is no good. */
  async start(): Promise<FirstChoice> {
    const bundled = await bundledProtocol(this.#example, this.#signatures);
    const kept = await this.#store.load();
    const unusable = (text: string, errors: readonly string[]): FirstChoice => ({
      loaded: bundled,
      notice: { kind: "refused", text, errors },
      fault: PROTOCOL_NOT_USED,
    });
    if (!kept.ok) return unusable(PROTOCOL_NOT_USED, [`Storage: ${kept.error.detail}.`]);
    this.#stored = kept.value;
    if (kept.value.file === undefined) return { loaded: bundled, notice: undefined, fault: undefined };
    const read = await this.#read(kept.value.file, kept.value.trustedKey);
    if (!read.ok) return unusable(`${kept.value.file.name}: ${PROTOCOL_NOT_USED}`, read.error);
    return { loaded: read.value, notice: undefined, fault: undefined };
  }

  /** Takes the files that the user picked together. */
  async choose(files: readonly ChosenFile[]): Promise<Choice> {
    const sorted = sortFiles(files);
    if (!sorted.ok) return refused("No protocol was loaded.", [sorted.error]);
    const { protocol } = sorted.value;
    return protocol === undefined ? this.#trust(sorted.value) : this.#load(protocol, sorted.value);
  }

  /** Back to the bundled example. */
  async forget(): Promise<Choice> {
    const cleared = await this.#store.clear();
    const loaded = await bundledProtocol(this.#example, this.#signatures);
    if (!cleared.ok)
      return refused("The stored protocol could not be forgotten.", [`Storage: ${cleared.error.detail}.`]);
    this.#stored = {};
    return { loaded, notice: { kind: "done", text: `Back to the bundled protocol: ${describe(loaded)}`, errors: [] } };
  }

  async #load(file: ChosenFile, { signature, trustedKey = this.#stored.trustedKey }: SortedFiles): Promise<Choice> {
    const signed = { ...file, ...(signature === undefined ? {} : { signature }) };
    const read = await this.#read(signed, trustedKey);
    if (!read.ok) return refused(`${file.name} was not loaded. The protocol in use stays.`, read.error);
    const saved = await this.#keep({ file: signed, ...(trustedKey === undefined ? {} : { trustedKey }) });
    const text = `Loaded ${file.name}: ${describe(read.value)}.${saved}`;
    return { loaded: read.value, notice: { kind: "done", text, errors: [] } };
  }

  /** A key alone: files with a signature are judged by it from now on, the one in use included. */
  async #trust({ trustedKey = "" }: SortedFiles): Promise<Choice> {
    const name = await keyName(trustedKey, this.#signatures);
    if (!name.ok) return refused("The key was not taken.", [name.error]);
    const { file } = this.#stored;
    const read = file?.signature === undefined ? undefined : await this.#read(file, trustedKey);
    if (read?.ok === false)
      return refused("The key was not taken: it did not sign the protocol in use.", [
        "Choose the key together with the protocol file and the signature that belong to it.",
      ]);
    const saved = await this.#keep({ ...this.#stored, trustedKey });
    return { loaded: undefined, notice: { kind: "done", text: `Trusted key ${name.value}.${saved}`, errors: [] } };
  }

  #read(file: StoredFile, trustedKey: string | undefined): Promise<Result<LoadedProtocol, readonly string[]>> {
    const signed = { ...file, ...(trustedKey === undefined ? {} : { trustedKey }) };
    return readProtocolFile(signed, this.#example, this.#signatures);
  }

  /** Empty once it is kept; else what the user must know. */
  async #keep(stored: StoredProtocol): Promise<string> {
    const saved = await this.#store.save(stored);
    this.#stored = stored;
    return saved.ok ? "" : ` It could not be stored (${saved.error.detail}): after a reload it is gone.`;
  }
}
