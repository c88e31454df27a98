import type { Sex } from "../core/bodySize.ts";
import type { VitalCode } from "../core/vitals.ts";
import type { Priority } from "../protocol/priority.ts";
import type { Cause } from "../protocol/protocol.ts";
import { FIRST_TALK_SETTINGS, type TalkSettings } from "./talkState.ts";
import { emptyCare, type CareState, type StepEntry } from "./careState.ts";
import type { Fact, FindingValue, ProtocolMark, Question, VitalValue } from "./facts.ts";
import type { HeardBy } from "./heardBy.ts";

export type VitalEntry = VitalValue & {
  readonly id: string;
  /** Number of its fact in the case: the order in which things were said, also within one millisecond. */
  readonly seq: number;
  readonly atMs: number;
  readonly readingId: string;
  readonly heard: string;
  readonly by: HeardBy;
};

/** Newest first, struck entries left out. A linked list, so that adding one reading costs the same in the ninth hour. */
export type History = { readonly entry: VitalEntry; readonly earlier: History | undefined };

/** The newest finding, with the one that comes back if it is struck. */
export type FindingEntry = FindingValue & {
  readonly id: string;
  readonly readingId: string;
  readonly seq: number;
  readonly atMs: number;
  readonly earlier: FindingEntry | undefined;
};

export type SexEntry = { readonly id: string; readonly sex: Sex; readonly earlier: SexEntry | undefined };
export type CauseEntry = { readonly id: string; readonly cause: Cause; readonly earlier: CauseEntry | undefined };
export type HerniationEntry = {
  readonly id: string;
  readonly seq: number;
  readonly atMs: number;
  readonly present: boolean;
  readonly earlier: HerniationEntry | undefined;
};

export type AlertState = {
  readonly alertId: string;
  readonly priority: Priority;
  readonly raisedAtMs: number;
  readonly announcedAtMs: number | undefined;
  /** Fact numbers of the last raise (or step up) and of the last announcement: is there anything still to be said? */
  readonly raisedAtSeq: number;
  readonly announcedAtSeq: number | undefined;
  /** The value that it was last raised or announced with: is the newest one worse? */
  readonly keptValue: number;
  /** It was low, and counts for more since it has stood for long. */
  readonly escalated: boolean;
  /** Since when somebody has it; none again once it became worse. */
  readonly acknowledgedAtMs: number | undefined;
  /** It was said in words of its own, and not only by its tone or by an alert of the same cause. */
  readonly spoken: boolean;
  /** How often it was announced since it was raised or became worse. */
  readonly times: number;
};

export type CaseState = {
  readonly caseId: string | undefined;
  /** What the case is called aloud. */
  readonly label: string | undefined;
  readonly isRehearsal: boolean;
  readonly isClosed: boolean;
  /** How far the device's clock has been set forward since the opening, ms; under 0: back. */
  readonly setForwardMs: number;
  readonly openedAtMs: number | undefined;
  /** Which protocol counts: that of the opening, or the one that replaced it last. */
  readonly protocolMark: ProtocolMark | undefined;
  /** Facts folded so far; the next fact's number. */
  readonly factCount: number;
  readonly vitals: Readonly<Partial<Record<VitalCode, History>>>;
  readonly findings: Readonly<Partial<Record<FindingValue["code"], FindingEntry>>>;
  readonly sex: SexEntry | undefined;
  readonly cause: CauseEntry | undefined;
  readonly herniation: HerniationEntry | undefined;
  /** The ids of the last reading's facts: what "correction" and "disregard" act on. */
  readonly lastReading:
    | {
        readonly readingId: string;
        /** Number of its newest fact in the case. */
        readonly seq: number;
        readonly factIds: readonly string[];
        readonly facts: readonly Fact[];
      }
    | undefined;
  /** Open questions, newest first: the newest is the one that "affirm" answers. */
  readonly questions: readonly Question[];
  /** Questions that nobody answered in time, oldest first: what was said counts for nothing, and may have happened. */
  readonly unconfirmed: readonly Question[];
  readonly steps: Readonly<Record<string, StepEntry>>;
  /** The step last read out, waiting for its answer. */
  readonly calledStepId: string | undefined;
  /** When a step was last named aloud, also again after something else was said. */
  readonly lastCall: { readonly seq: number; readonly atMs: number } | undefined;
  readonly care: CareState;
  readonly standByUntilMs: number | undefined;
  /** Standing alerts by id. */
  readonly alerts: Readonly<Record<string, AlertState>>;
  /** Unix ms of the last alerts and prompts that were spoken, newest first: a few are enough to cap them. */
  readonly spokenAtMs: readonly number[];
  readonly talk: TalkSettings;
};

export const emptyCase: CaseState = {
  caseId: undefined,
  label: undefined,
  isRehearsal: false,
  isClosed: false,
  setForwardMs: 0,
  openedAtMs: undefined,
  protocolMark: undefined,
  factCount: 0,
  vitals: {},
  findings: {},
  sex: undefined,
  cause: undefined,
  herniation: undefined,
  lastReading: undefined,
  questions: [],
  unconfirmed: [],
  steps: {},
  calledStepId: undefined,
  lastCall: undefined,
  care: emptyCare,
  standByUntilMs: undefined,
  alerts: {},
  spokenAtMs: [],
  talk: FIRST_TALK_SETTINGS,
};
