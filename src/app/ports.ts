import type { Result } from "../core/result.ts";
import type { CheckedEntries } from "../log/chain/checkEntries.ts";
import type { LogEntry } from "../log/chain/entry.ts";
import type { Fact } from "../log/facts.ts";
import type { HeardBy } from "../log/heardBy.ts";
import type { SoundShape } from "../listener/soundShape.ts";
import type { VoiceProfile, VoiceProfileError } from "../listener/voiceProfile.ts";
import type { RecordFile } from "../log/recordFile/recordFile.ts";
import type { ClockMove } from "../core/runningClock.ts";
import type { Priority } from "../protocol/priority.ts";

/** Unix ms now, and a call every so often. The only door to time. */
export interface Clock {
  nowMs(): number;
  /** Calls back until the returned function is called. */
  every(periodMs: number, tick: () => void): () => void;
}

export type ClockMoved = ClockMove & { readonly nowMs: number };

/** A clock of a case that runs on when the device's clock is set. */
export interface RunningClock extends Clock {
  /** From here on `nowMs` is this much behind the device's clock, ms: what the record says it was set forward by. */
  align(setForwardMs: number): void;
  /** The device's clock was set, or the device slept. */
  onMoved(listener: (moved: ClockMoved) => void): void;
}

/** What one utterance sounded like, before any meaning. Typed and browser text come as one candidate without scores. */
export type Utterance = {
  readonly by: HeardBy;
  /** Best first; distinct word sequences. Empty: speech was there, but no path through the grammar. */
  readonly candidates: readonly { readonly words: string; readonly score: number }[];
  /** Log score of the best free phone path, and its number of phones. Only from the listener. */
  readonly free?: { readonly score: number; readonly phones: number };
  /** How it sounded. Only from the listener. */
  readonly shape?: SoundShape;
  /** The last utterance and this one as one, where the last might have been going on. Only from the listener. */
  readonly withLast?: Pick<Utterance, "candidates" | "free" | "shape">;
  /** Our own voice sounded at the same time: it may be our own words, or words heard through them. */
  readonly overlapped?: true;
  /** The room was too loud to hear safely, or this voice is heard badly: what it says of a value is asked back. */
  readonly doubtful?: true;
  /** Unix ms at which the speech ended (not at which it was decoded). */
  readonly endedAtMs: number;
};

export type RecogniserError =
  | { readonly kind: "microphone-refused" }
  | { readonly kind: "microphone-lost" }
  | { readonly kind: "microphone-silent"; readonly forMs: number }
  /** Several utterances in a row too soft to be trusted: none of them was recognised. */
  | { readonly kind: "voice-faint" }
  | { readonly kind: "not-supported"; readonly detail: string }
  | { readonly kind: "load-failed"; readonly asset: string; readonly detail: string }
  | { readonly kind: "timed-out"; readonly afterMs: number }
  | { readonly kind: "worker-died"; readonly detail: string }
  | { readonly kind: "disposed" };

export type HearingEvent =
  | { readonly kind: "listening" }
  | { readonly kind: "stopped" }
  /** About five a second. dBFS of speech band now and of the noise floor. */
  | {
      readonly kind: "level";
      readonly levelDb: number;
      readonly noiseDb: number;
      readonly inSpeech: boolean;
    }
  | { readonly kind: "speechStarted"; readonly atMs: number }
  | { readonly kind: "speechEnded"; readonly atMs: number }
  | { readonly kind: "heard"; readonly utterance: Utterance }
  | { readonly kind: "fault"; readonly error: RecogniserError }
  /** After a fault: working again. */
  | { readonly kind: "recovered" };

/** What may be said now. One compiled word graph each; see `grammars/case.jsgf`. */
export type GrammarState = "open" | "asked" | "openAfter" | "askedAfter";

/**
 * open: voice activity decides. held: one utterance from hold(true) to hold(false). called: voice activity decides, and
 * the words may begin with the call word, "tragus"; whether they must is not the recogniser's business.
 */
export type ListeningMode = "open" | "held" | "called";

/** Hears people. Nothing here says WASM, worker or browser. Every promise settles. */
export interface Recogniser {
  start(): Promise<Result<void, RecogniserError>>;
  stop(): void;
  useGrammar(state: GrammarState): void;
  setMode(mode: ListeningMode): void;
  hold(down: boolean): void;
  /** While our own voice sounds: no recognition, only strict voice activity for barge-in (`speechStarted`). */
  setSpeaking(speaking: boolean): void;
  onEvent(listener: (event: HearingEvent) => void): () => void;
  dispose(): void;
}

export type SpeakerError =
  | { readonly kind: "load-failed"; readonly asset: string; readonly detail: string }
  | { readonly kind: "timed-out"; readonly afterMs: number }
  | { readonly kind: "worker-died"; readonly detail: string }
  | { readonly kind: "audio-blocked" }
  | { readonly kind: "disposed" };

export type Spoken = {
  /** Empty: the tone alone. */
  readonly text: string;
  /** An alert: its tone sounds first, then the words. */
  readonly tone?: Priority;
  /** Said without pauses, and faster, where it would last longer than this. */
  readonly withinMs?: number;
  /** Times the usual pace; under 1 is slower. */
  readonly pace?: number;
  /** Louder or softer than usual, dB; words and tone alike. */
  readonly gainDb?: number;
};

/** Sounds that say something without words: heard, refused, asking, called (go ahead), mute (read the screen). Short and soft. */
export type Mark = "heard" | "asked" | "refused" | "called" | "mute";

/**
 * Says things. `say` settles when the sound has ended, was cancelled, or failed. `onStart`: the first sound, tone or word,
 * begins; `onWords`: the first word does, which a tone alone and a voice that has failed never bring about.
 */
export interface Speaker {
  warmUp(): Promise<Result<void, SpeakerError>>;
  say(spoken: Spoken, onStart: () => void, onWords?: () => void): Promise<Result<"ended" | "cancelled", SpeakerError>>;
  mark(mark: Mark): void;
  /** Silence at once. */
  cancel(): void;
  dispose(): void;
}

export type StoreError =
  /** Another tab keeps the record: this one can read what stood there when it was opened, and write nothing. */
  | { readonly kind: "other-tab"; readonly facts: readonly Fact[] }
  | { readonly kind: "unavailable"; readonly detail: string }
  | { readonly kind: "quota-exceeded" }
  /** A case that was to be added is here already. */
  | { readonly kind: "case-exists" }
  | { readonly kind: "write-failed"; readonly detail: string }
  /** Some facts cannot be read. `facts` holds the `readable` others, in order; the unreadable ones stay where they are. */
  | {
      readonly kind: "corrupt";
      readonly detail: string;
      readonly readable: number;
      readonly facts: readonly Fact[];
    };

/** Keeps facts. `append` settles only when they are durable, all of them or none. */
export interface FactStore {
  /** Every fact of the open case, oldest first; empty when there is none. */
  load(): Promise<Result<readonly Fact[], StoreError>>;
  append(facts: readonly Fact[]): Promise<Result<void, StoreError>>;
  /** Removes a case wholly, the open one or another. Erasing what is not there is no error. */
  erase(caseId: string): Promise<Result<void, StoreError>>;
}

/** A row of the list of cases. What its opening says is missing where that cannot be read. */
export type CaseInStore = {
  readonly caseId: string;
  readonly label?: string;
  readonly rehearsal?: boolean;
  /** Unix ms. */
  readonly openedAtMs?: number;
  readonly isClosed: boolean;
  readonly entries: number;
};

/** A case with its chain as it stands there, and what can be used of it. */
export type CaseRead = Omit<CheckedEntries, "tail"> & { readonly entries: readonly LogEntry[] };

/** All cases on this device. Every promise settles. */
export interface CaseArchive {
  /** Newest first. */
  cases(): Promise<Result<readonly CaseInStore[], StoreError>>;
  read(caseId: string): Promise<Result<CaseRead, StoreError>>;
  /** A case that comes from a file, its chain checked. Errors: `case-exists` where it is here already. */
  add(record: Pick<RecordFile, "caseId" | "entries">): Promise<Result<void, StoreError>>;
}

/** What the browser says of the place where the record is kept; what it does not say is missing. */
export type StorageRoom = {
  /** It will not evict the record when the device runs short. */
  readonly isKept?: boolean;
  readonly freeBytes?: number;
};

/** Why the platform cannot do it, e.g. "no Ed25519 in this browser". */
export type SignaturesError = { readonly kind: "not-supported"; readonly detail: string };

/** Digests and signatures. Every promise settles. */
export interface Signatures {
  /** 64 hexadecimal digits in lower case. */
  sha256Hex(bytes: Uint8Array): Promise<Result<string, SignaturesError>>;
  /**
   * Whether an Ed25519 signature (RFC 8032) holds over these bytes.
   * @param spki the public key as SubjectPublicKeyInfo.
   */
  verifyEd25519(spki: Uint8Array, signature: Uint8Array, bytes: Uint8Array): Promise<Result<boolean, SignaturesError>>;
}

export type ProfileStoreError = { readonly kind: "unavailable" | "write-failed"; readonly detail: string };

/** Keeps what was learnt of the user's voice on this device. Every promise settles. */
export interface ProfileStore {
  /** Undefined where nothing is kept. Damaged data is an error, and stays where it is until it is replaced or cleared. */
  load(): Promise<Result<VoiceProfile | undefined, ProfileStoreError | VoiceProfileError>>;
  save(profile: VoiceProfile): Promise<Result<void, ProfileStoreError>>;
  clear(): Promise<Result<void, ProfileStoreError>>;
}

/** What the user has chosen: a protocol file as it came, and the public key whose signatures count. */
export type StoredProtocol = {
  readonly file?: { readonly name: string; readonly bytes: Uint8Array; readonly signature?: Uint8Array };
  /** PEM. */
  readonly trustedKey?: string;
};

export type ProtocolStoreError = { readonly kind: "unavailable" | "write-failed"; readonly detail: string };

/** Keeps the chosen protocol file for the next start. Every promise settles. */
export interface ProtocolStore {
  /** Empty where nothing was chosen. */
  load(): Promise<Result<StoredProtocol, ProtocolStoreError>>;
  /** In place of what was kept before, all of it. */
  save(stored: StoredProtocol): Promise<Result<void, ProtocolStoreError>>;
  clear(): Promise<Result<void, ProtocolStoreError>>;
}

/** A file that somebody has chosen, not read yet: `Blob`. */
export type RecordSource = { readonly size: number; text(): Promise<string> };

/** A file that is to leave the device. */
export type ExportFile = { readonly name: string; readonly type: string; readonly text: string };

export type SaveFileError = { readonly kind: "not-saved"; readonly detail: string };

/** Hands files over to the user: from then on they lie outside of the app. */
export interface FileSaver {
  save(file: ExportFile): Result<void, SaveFileError>;
}

/** Puts a document on paper in place of the page, whoever asks for it: the page or the browser's own print. */
export interface Printer {
  /** @param make the document as HTML, made when it is needed; none: the page itself is printed. */
  onPrint(make: () => string | undefined): void;
  print(): void;
}
