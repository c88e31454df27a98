import type { ShownClock } from "../language/sentences/clock.ts";
import type { ListeningMode, RecordSource } from "./ports.ts";
import type { DrugsView } from "./view/drugs.ts";
import type { ExportKind } from "./view/record.ts";
import type { Priority } from "../protocol/priority.ts";
import type { ProtocolActions, ProtocolNotice } from "./protocolFile.ts";

/** What came of an utterance; the same words in the terminal, on screen and in tests. */
export type Outcome = "recorded" | "asked" | "answered" | "refused" | "ignored";

/** As it is shown: what was to be recorded and could not be written is not recorded yet. */
export type ShownOutcome = Outcome | "not saved";

/** One number with its age and where it comes from, ready to print. */
export type Tile = {
  readonly id: string;
  readonly label: string;
  /** "110/60 mmHg", "not yet recorded". */
  readonly text: string;
  readonly origin: "measured" | "computed" | "assumed" | "none";
  /** "2 min ago", or empty before the first reading. */
  readonly ageText: string;
  readonly stale: boolean;
};

/** MAP as a bar made of ICP and of what remains for perfusion. All lengths in mmHg from zero. */
export type PerfusionBar = {
  readonly scaleMaxMmHg: number;
  readonly mapMmHg: number;
  readonly icp: { readonly kind: "measured" | "assumed"; readonly lowMmHg: number; readonly highMmHg: number };
  /** The MAP that meets the target: the target line. */
  readonly targetMmHg: number;
  /** The bar in one sentence, for those who do not see it. */
  readonly description: string;
};

export type HearingStatus = "off" | "loading" | "listening" | "speaking" | "fault";

/** How to listen and with which voice to speak. */
export type SettingsView = {
  readonly engines: readonly {
    readonly id: "built-in" | "browser";
    readonly label: string;
    readonly chosen: boolean;
  }[];
  /** A question to be answered before sound may leave the device. */
  readonly consent: string | undefined;
  readonly voices: readonly { readonly id: string | undefined; readonly label: string; readonly chosen: boolean }[];
};

/** "Hear me": what was learnt of the voice, and the line that is to be repeated while it runs. */
export type HearMeView = {
  readonly running: { readonly countText: string; readonly line: string; readonly prompt: string } | undefined;
  /** "Heard well. Measured 2 min ago: …"; empty where nothing is known. */
  readonly profileText: string;
  readonly notice: string;
};

/** Why a number is what it is: in short as it was said, and whole. */
export type WhyView = {
  readonly text: string;
  readonly lines: readonly { readonly label: string; readonly text: string; readonly sourceText: string }[];
};

/** A step of the list that counts now. */
export type StepRow = {
  readonly id: string;
  readonly name: string;
  readonly state: "open" | "called" | "later" | "closed" | "passed";
  /** "done, 8.0 mm", "waived, no time", "later". */
  readonly text: string;
  readonly killer: boolean;
};

/** Everything the page shows, already in words. Components render it and decide nothing. */
export type ScreenView = {
  /** "Case kilo four seven", "Rehearsal kilo four seven. No patient." */
  readonly caseText: string;
  readonly isRehearsal: boolean;
  readonly caution: string;
  readonly protocolText: string;
  /** "Example protocol, not approved for patients."; empty where its owner has approved it. */
  readonly protocolWarning: string;
  /** What came of the last choice of a protocol file. */
  readonly protocolNotice: ProtocolNotice | undefined;
  readonly saveText: string;
  /** What must be known of the place where the record is kept; empty where all is well. */
  readonly roomText: string;
  readonly saveFailed: boolean;
  readonly hearing: {
    readonly status: HearingStatus;
    readonly text: string;
    readonly mode: ListeningMode;
    /** Held listening is taking an utterance. */
    readonly holding: boolean;
    /** "Too loud to hear safely. …"; empty while it is not. */
    readonly notice: string;
    /** How it talks where that is not as usual: "Brief talk. Alerts paused, 1 min 20 s left."; else empty. */
    readonly talkText: string;
  };
  readonly lastHeard: { readonly words: string; readonly outcome: ShownOutcome } | undefined;
  readonly lastSpoken: string | undefined;
  readonly question: string | undefined;
  readonly headline: {
    readonly mapText: string;
    readonly deficitText: string;
    readonly cppText: string;
    /** MAP at its target, and a measured CPP too. */
    readonly met: boolean;
    readonly mapUnder: boolean;
    /** Only a measured CPP is judged. */
    readonly cppUnder: boolean;
  };
  readonly bar: PerfusionBar | undefined;
  /** The targets in force: whose they are, the numbers, each ceiling, herniation. One sentence each. */
  readonly targetLines: readonly string[];
  /** The number last explained; none before the first "why". */
  readonly why: WhyView | undefined;
  /** The handover, part by part, while it is the newest thing asked for; else none. */
  readonly handover: readonly { readonly title: string; readonly text: string }[];
  readonly tiles: readonly Tile[];
  readonly drugs: DrugsView;
  /** "Induction phase". */
  readonly phaseText: string;
  /** "Attempt 2, running"; empty before the first. */
  readonly attemptText: string;
  /** What runs, with how long it has run or still runs. */
  readonly clocks: readonly ShownClock[];
  readonly nextStep: { readonly groupText: string; readonly challenge: string; readonly killer: boolean } | undefined;
  readonly progressText: string;
  /** The list that counts now: "Preparation", "Rescue". */
  readonly listTitle: string;
  readonly groups: readonly {
    readonly id: string;
    readonly title: string;
    readonly done: number;
    readonly total: number;
    readonly steps: readonly StepRow[];
  }[];
  readonly alerts: readonly {
    readonly id: string;
    readonly priority: Priority;
    readonly text: string;
    /** Another one where there is something new to say of it: raised, worse, milder. Its age alone is not new. */
    readonly news: string;
    /** Somebody has it. */
    readonly acknowledged: boolean;
  }[];
  readonly settings: SettingsView;
  readonly hearMe: HearMeView;
  /** Examples of what can be said now. */
  readonly phrases: readonly string[];
};

/** Sound meter: changes several times a second, so it is kept apart from the page. */
export type Meter = { readonly levelDb: number; readonly noiseDb: number; readonly inSpeech: boolean };

/** What the page may do. */
export interface ScreenActions extends ProtocolActions {
  typed(text: string): void;
  startListening(): void;
  stopListening(): void;
  setMode(mode: ListeningMode): void;
  hold(down: boolean): void;
  chooseEngine(id: "built-in" | "browser"): void;
  answerConsent(agreed: boolean): void;
  chooseVoice(id: string | undefined): void;
  startHearMe(): void;
  skipHearMe(): void;
  forgetVoice(): void;
  printRecord(): void;
  exportRecord(kind: ExportKind): void;
  /** The entries of the open case: the newest few, or more of them. */
  showEntries(more: boolean): void;
  listCases(): void;
  /** What is printed and saved from here on; none: the open case. */
  chooseCase(caseId: string | undefined): void;
  /** A case from a file. */
  addRecord(file: RecordSource): void;
  /** The chosen case, where its label was typed. */
  eraseCase(typed: string): void;
}
