import type { Sex } from "../core/bodySize.ts";
import type { VitalCode } from "../core/vitals.ts";
import type { Priority } from "../protocol/priority.ts";
import type { Cause } from "../protocol/protocol.ts";
import type { HeardBy } from "./heardBy.ts";
import type { CareFact, SaidAmount, SaidRate } from "./careFacts.ts";
import type { FindingValue, Statement, VitalValue } from "./statement.ts";
import type { TalkFact } from "./talkFacts.ts";

export type { FindingValue, Level, Method, SaidUnit, Site, Statement, VitalValue } from "./statement.ts";

export type QuestionReason =
  | "sound-alike" // thirteen / thirty and the like
  | "acoustic" // another meaning was nearly as likely
  | "unit" // the number fits more than one unit
  | "implausible" // outside limits or order, e.g. diastolic over systolic
  | "jump" // far from the last value
  | "ambiguous" // the words have more than one meaning
  | "always-confirm"; // the protocol wants this one affirmed

/** One reading of what was heard. `choose` is what the user says to pick it, e.g. "one five", "kilopascals". */
export type Candidate = {
  readonly choose: string;
  /** The number as said whose digits pick this candidate; none where it is picked by its unit or as a whole. */
  readonly number: number | undefined;
  readonly statement: Statement;
};

/** Something to be done that is no value: what a dose is, an answer to a step, what is to be struck, standing by. */
export type Act =
  | { readonly kind: "dose"; readonly drugId: string }
  /** These words, heard with a doubt: affirmed, they count as if they had been heard well. */
  | { readonly kind: "words"; readonly words: string }
  /** Facts that wait for "affirm", as they will stand in the record. */
  | { readonly kind: "record"; readonly facts: readonly AffirmedFact[]; readonly forRate?: RateWanted }
  | ({ readonly kind: "step"; readonly stepId: string } & AnswerToStep)
  /** The facts that were named: others that came in since are not meant. */
  /** The open case is closed, and another opened. */
  | { readonly kind: "newCase"; readonly rehearsal: boolean }
  | { readonly kind: "disregard"; readonly targetIds: readonly string[] }
  | StrikeAct
  | { readonly kind: "standBy" };

/** What is only recorded after it was read back and affirmed. */
export type AffirmedFact = Extract<
  CareFact,
  {
    readonly type:
      "strength.affirmed" | "drug.given" | "infusion.set" | "fluid.given" | "recipe.started" | "rescue.started";
  }
>;

/** A rate that was asked about before its concentration was known: it is worked out once that is affirmed. */
export type RateWanted = { readonly rate?: SaidRate; readonly weightKg?: number };

/** What a question wants to be told, where that is neither yes nor no nor a vital. */
export type Want =
  /** The concentration in the hand. */
  | { readonly kind: "strength"; readonly drugId: string; readonly forRate?: RateWanted }
  /** The ampoule that a dilution is to be made from. */
  | { readonly kind: "stock"; readonly drugId: string; readonly purpose: RecipePurpose }
  /** How much was given. */
  | { readonly kind: "amount"; readonly drugId: string }
  /** How fast the infusion is to run. */
  | { readonly kind: "rate"; readonly drugId: string }
  /** Which unit an amount or a rate was said in. */
  | { readonly kind: "amountUnit"; readonly drugId: string; readonly choices: readonly SaidAmount[] }
  | { readonly kind: "rateUnit"; readonly drugId: string; readonly choices: readonly SaidRate[] }
  /** What the case is called, said to erase it. */
  | { readonly kind: "caseLabel" }
  /** The value that an answer to a step carries. */
  | { readonly kind: "stepValue"; readonly stepId: string };

/** What a dilution is made for, as it was asked for. */
export type RecipePurpose = "pushDose" | "infusion" | "any";

/** Asked aloud; waits for its answer without blocking other values. */
export type Question = {
  readonly id: string;
  readonly reason: QuestionReason;
  /** The vitals it would settle, the one in doubt first. Saying one of them again answers it too. */
  readonly about: readonly VitalCode[];
  readonly prompt: string;
  readonly heard: string;
  readonly by: HeardBy;
  readonly askedAtMs: number;
  /** Facts struck when a candidate is taken (the question came from a correction). */
  readonly strikes: readonly string[];
  /** One candidate: answered by affirm or negative. Several: answered by naming one. Empty: only a restatement helps. */
  readonly candidates: readonly Candidate[];
  /**
   * What is in question where it is no value; there are no candidates then. One: answered by affirm or negative. Several:
   * by saying one of them again. Older records have none.
   */
  readonly acts?: readonly Act[];
  /** There are no candidates and no acts then: only what is wanted answers it, or "negative". */
  readonly wants?: Want;
};

/** `waived`: passed over aloud although it is not done and is needed. */
export type StepAnswer = "done" | "not-needed" | "later" | "waived";

/** The value that an answer carried, in the unit that the protocol names. */
export type StepValue = { readonly value: number; readonly unit: string };

/** An answer with all that was said with it. */
export type AnswerToStep = {
  readonly answer: StepAnswer;
  readonly value?: StepValue;
  /** Why it is not needed or was waived, as said. */
  readonly reason?: string;
  /** Who does it, by role, never by name. */
  readonly role?: string;
};

/** Which protocol counts. The hash is that of its canonical form; facts written before there was one have none. */
export type ProtocolMark = {
  readonly name: string;
  readonly version: string;
  /** SHA-256, 64 hexadecimal digits. */
  readonly hash?: string;
  /** The trusted key whose signature held; absent: unsigned. */
  readonly signedBy?: string;
};

type Stamp = {
  /** Shape version of this fact. */
  readonly v: 2;
  readonly id: string;
  /** Unix ms by the running clock of the case, which nobody can set. */
  readonly atMs: number;
  /** Only on what was heard: how sure the recogniser was of it, 0 to 1. None where it was typed or came as text. */
  readonly certainty?: number;
  /** Only on what was heard: taken as heard and read back, or affirmed by a further word. */
  readonly confirmation?: "readBack" | "affirmed";
};

/** What a value puts right long after that was said: it takes its place, and its time (Unix ms). */
export type Corrects = { readonly id: string; readonly takenAtMs: number };
export type Becomes = VitalValue & { readonly readingId: string; readonly corrects: Corrects };
type Struck = Readonly<{ kind: "strike"; targetIds: readonly string[]; words: string }>;
export type StrikeAct = Struck & { readonly becomes: readonly Becomes[] };
/** Values said in one breath share a `readingId`; they are appended together or not at all. */
type Heard = { readonly readingId: string; readonly heard: string; readonly by: HeardBy };

/** Facts that happened. Never edited, never removed; a correction is a new fact. */
export type Fact = Stamp &
  (
    | {
        readonly type: "case.opened";
        readonly caseId: string;
        /** What the case is called aloud. */
        readonly label: string;
        /** There is no patient. */
        readonly rehearsal: boolean;
        readonly protocol: ProtocolMark;
      }
    /** The last fact of a case: nothing is added to it any more. */
    | { readonly type: "case.closed" }
    /** From here on another protocol counts. */
    | { readonly type: "protocol.replaced"; readonly protocol: ProtocolMark }
    | ({ readonly type: "vital.recorded"; readonly corrects?: Corrects } & Heard & VitalValue)
    | ({ readonly type: "finding.recorded" } & Heard & FindingValue)
    | ({ readonly type: "sex.recorded"; readonly sex: Sex } & Heard)
    | ({ readonly type: "cause.recorded"; readonly cause: Cause } & Heard)
    | ({ readonly type: "herniation.recorded"; readonly present: boolean } & Heard)
    | {
        readonly type: "entry.struck";
        readonly targetIds: readonly string[];
        readonly reason: "corrected" | "disregarded";
      }
    | { readonly type: "question.asked"; readonly question: Question }
    | {
        readonly type: "question.closed";
        readonly questionId: string;
        readonly outcome: "affirmed" | "denied" | "restated" | "unconfirmed";
      }
    | { readonly type: "step.called"; readonly stepId: string }
    | ({
        readonly type: "step.answered";
        readonly stepId: string;
        readonly heard: string;
        readonly by: HeardBy;
      } & AnswerToStep)
    | CareFact
    | TalkFact
    | { readonly type: "standBy.started"; readonly untilMs: number }
    /** The device's clock was set forward (over 0) or back while the case ran on: `atMs` of all facts is not moved by it. */
    | { readonly type: "clock.changed"; readonly byMs: number }
    /** The device slept, or the page was held still: nothing was heard, watched or said for so long. */
    | { readonly type: "device.slept"; readonly forMs: number }
    /** Again for one that stands: it became worse, or milder. `escalated`: by time alone. */
    | {
        readonly type: "alert.raised";
        readonly alertId: string;
        readonly priority: Priority;
        readonly value: number;
        readonly escalated?: true;
      }
    | {
        readonly type: "alert.announced";
        readonly alertId: string;
        readonly priority: Priority;
        readonly value: number;
        readonly text: string;
        /** Past the cap on spoken alerts, or in a spoken prompt: this one was a tone, or nothing of its own. */
        readonly unspoken?: true;
        /** Of the device and not of the patient: it takes no place under the cap. */
        readonly ofDevice?: true;
      }
    /** `withdrawn`: the value that raised it was struck out. */
    | { readonly type: "alert.cleared"; readonly alertId: string; readonly withdrawn?: true }
  );

/** A fact before the log has given it its stamp. */
export type NewFact = Fact extends infer F ? (F extends Fact ? Omit<F, keyof Stamp> : never) : never;
