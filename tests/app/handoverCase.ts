import { freshState, type AppContext, type AppState } from "../../src/app/context.ts";
import { takeTick, takeUtterance, type Turn } from "../../src/app/takeTurn.ts";
import { readTalkLine } from "../../src/cli/talkLine.ts";
import type { HandoverPart } from "../../src/language/sentences/handoverParts.ts";
import { emptyCase } from "../../src/log/caseState.ts";
import { reduceFacts } from "../../src/log/reduceFact.ts";
import { stamp } from "../../src/app/decide/stamp.ts";
import { testContext } from "./playCase.ts";

const T0_MS = 1_800_000_000_000;
const STEP_MS = 1000;

/** A case that is said line by line in the form of the terminal, and then asked for its handover. */
export class HandoverCase {
  readonly context: AppContext;
  state: AppState;
  nowMs = T0_MS;

  constructor(lines: readonly string[], context: AppContext = testContext()) {
    this.context = context;
    const opened = stamp(
      emptyCase,
      [{ type: "case.opened", caseId: "test", label: "kilo four seven", rehearsal: false, protocol: context.mark }],
      T0_MS,
    );
    this.state = freshState(reduceFacts(opened));
    for (const line of lines) this.say(line);
  }

  say(raw: string): Turn {
    const line = readTalkLine(raw);
    if (!line.ok) throw new Error(line.error);
    const untilMs = line.value.atMs === undefined ? this.nowMs : T0_MS + line.value.atMs;
    for (; this.nowMs < untilMs; this.nowMs += STEP_MS)
      this.state = takeTick(this.context, this.state, this.nowMs).state;
    const utterance = {
      by: "typed",
      candidates: [{ words: line.value.text, score: 0 }],
      endedAtMs: this.nowMs,
    } as const;
    const turn = takeUtterance(this.context, this.state, utterance, this.nowMs);
    this.state = turn.state;
    return turn;
  }

  /** The handover that was begun last. */
  get handover(): readonly HandoverPart[] {
    return this.state.handover?.parts ?? [];
  }

  /** Its sentences, once it is asked for in these words; without what else is said in that turn. */
  sentences(words: string): readonly string[] {
    this.parts(words);
    return this.handover.map(({ text }) => text);
  }

  /** All of it began to sound, which the record tells, and nobody cut it off. */
  soundsToItsEnd(): void {
    const { handover } = this.state;
    this.state = {
      ...this.state,
      handover: handover && { ...handover, at: handover.parts.length - 1, isEnded: true },
    };
  }

  /** What is said of it one after another. */
  parts(words: string): readonly string[] {
    return this.say(words).answer?.parts ?? [];
  }
}

/** More than anybody hands over: every kind of entry there is. Invented. */
export const STUFFED: readonly string[] = [
  "thirty eight year old woman",
  "weight seventy eight point five kilos",
  "affirm",
  "height one seventy",
  "cause head injury",
  "herniation suspected",
  "affirm",
  "one oh five over fifty five, rate one thirty, sats eighty eight",
  "g c s eyes three verbal four motor five",
  "left pupil four brisk",
  "right pupil four brisk",
  "icp three eight",
  "temp thirty six point five",
  "glucose seven point five",
  "breaths twenty two",
  "[4:00] eighty eight over forty four, rate one forty, sats eighty six",
  "left pupil seven fixed",
  "eyes one verbal one motor two",
  "ketamine fifty milligrams per mil",
  "affirm",
  "ketamine one hundred and fifty milligrams given",
  "affirm",
  "rocuronium ten milligrams per mil",
  "affirm",
  "rocuronium one hundred and eighteen milligrams given",
  "affirm",
  "fentanyl one hundred and fifteen micrograms given",
  "affirm",
  "phenylephrine ten milligrams in one hundred",
  "affirm",
  "phenylephrine one hundred micrograms given",
  "affirm",
  "[6:00] phenylephrine one hundred and fifty micrograms given",
  "affirm",
  "three percent saline two hundred and fifty given",
  "affirm",
  "tranexamic acid one gram given",
  "affirm",
  "levetiracetam three thousand milligrams given",
  "affirm",
  "saline five hundred given",
  "affirm",
  "blood two fifty given",
  "affirm",
  "tube eight point zero",
  "[7:00] blade in",
  "[8:00] out",
  "[9:00] blade in",
  "[9:30] tube in",
  "end tidal thirty eight",
  "tube confirmed",
  "tube depth twenty three centimetres",
  "[12:00] ninety eight over fifty eight, rate one eighteen, sats ninety three",
  "icp three two",
  "noradrenaline four milligrams in two fifty",
  "affirm",
  "start noradrenaline at point one five",
  "affirm",
  "propofol ten milligrams per mil",
  "affirm",
  "start propofol at fifty micrograms per kilo per minute",
  "affirm",
  "vasopressin twenty units in fifty",
  "affirm",
  "start vasopressin at two units per hour",
  "affirm",
  "cylinder six hundred litres at fifteen",
  "[19:00] one fifteen over sixty eight, rate one oh eight, sats ninety five",
  "end tidal thirty three",
  "icp two eight",
];
