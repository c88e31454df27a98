import fc from "fast-check";
import { freshState, type AppState } from "../../src/app/context.ts";
import { firstFacts } from "../../src/app/protocolFileMark.ts";
import { stamp } from "../../src/app/decide/stamp.ts";
import { takeTick, takeUtterance, type Turn } from "../../src/app/takeTurn.ts";
import { recordedCase, type RecordedCase } from "../../src/export/recordedCase.ts";
import { labelFrom } from "../../src/log/caseLabel.ts";
import { emptyCase } from "../../src/log/caseState.ts";
import type { Fact, NewFact } from "../../src/log/facts.ts";
import type { HeardBy } from "../../src/log/heardBy.ts";
import { reduceFacts } from "../../src/log/reduceFact.ts";
import type { DeviceFault } from "../../src/rules/alerts/condition.ts";
import { testContext } from "../app/playCase.ts";
import { CARE_ROWS } from "../phrases/careRows.ts";
import { CAUSE_ROWS } from "../phrases/causeRows.ts";
import { CONTROL_ROWS } from "../phrases/controlRows.ts";
import { AFTER_ROWS, COURSE_ROWS } from "../phrases/courseRows.ts";
import { NEURO_AND_BODY_ROWS } from "../phrases/neuroAndBodyRows.ts";
import { PREPARATION_ROWS } from "../phrases/preparationRows.ts";
import { PRESSURE_ROWS } from "../phrases/pressureRows.ts";
import { VITAL_ROWS } from "../phrases/vitalRows.ts";

/** What may happen to a case. */
export type Move =
  /** Something is said; `then` is said where that leaves a question open. */
  | { readonly kind: "say"; readonly words: string; readonly by: HeardBy; readonly then: string | undefined }
  | { readonly kind: "wait"; readonly seconds: number }
  /** The device's clock is set; the case runs on. */
  | { readonly kind: "clock"; readonly byMs: number }
  /** One of the entries that were made so far is struck out, minutes later too: 0 the first, 1 the last. */
  | { readonly kind: "strike"; readonly at: number }
  /** The microphone fails, or works again. */
  | { readonly kind: "microphone"; readonly fails: boolean };

const pick = (...all: readonly string[]): fc.Arbitrary<string> => fc.constantFrom(...all);
const number = (min: number, max: number): fc.Arbitrary<string> => fc.integer({ min, max }).map(String);
const words = (...parts: readonly (string | fc.Arbitrary<string>)[]): fc.Arbitrary<string> =>
  fc
    .tuple(...parts.map((part): fc.Arbitrary<string> => (typeof part === "string" ? fc.constant(part) : part)))
    .map((said) => said.join(" "));

const DRUGS = [
  "ketamine",
  "propofol",
  "etomidate",
  "fentanyl",
  "rocuronium",
  "suxamethonium",
  "midazolam",
  "adrenaline",
];

const vitals = fc.oneof(
  words(pick("", "cuff", "art line", "left arm"), number(60, 220), "over", number(30, 120)),
  words(number(90, 180), "over", number(40, 90), "map", number(60, 120)),
  words(pick("systolic", "diastolic", "map"), number(40, 160)),
  words(pick("heart rate", "rate", "breaths", "i c p", "end tidal"), number(5, 180)),
  words("sats", number(70, 100)),
  words("end tidal", pick("4.8", "five", "5.1"), "kilopascals"),
  words("temperature", pick("36.2", "98.6 fahrenheit", "31")),
  words("glucose", pick("6.1", "110 mg/dL", "2.4", "12")),
);
const neuro = fc.oneof(
  words("eyes", number(1, 4), "verbal", number(1, 5), "motor", number(1, 6)),
  words("eyes", number(1, 4), "verbal not testable motor", number(1, 6)),
  words(pick("left pupil", "right pupil", "both pupils"), number(1, 9), pick("", "brisk", "sluggish", "fixed")),
  words(pick("left pupil", "right pupil", "both pupils"), pick("brisk", "fixed", "reactive")),
);
const body = fc.oneof(
  words("weight", number(3, 140), "kilos"),
  words("estimated weight", number(40, 120), "kilos"),
  words("weight", number(90, 250), "pounds"),
  words("height", number(60, 200)),
  words(number(1, 110), pick("year old man", "year old woman")),
  words("age", number(0, 110)),
  pick("six months old", "six year old girl", "sex male", "cause bleed", "herniation suspected", "no herniation"),
);
const drugs = fc.oneof(
  words(pick(...DRUGS), "given"),
  words(pick(...DRUGS), number(1, 300), pick("given", "milligrams given", "micrograms given")),
  words(pick(...DRUGS), pick("1", "10", "50"), pick("milligrams per mil", "micrograms per mil")),
  words(
    pick("noradrenaline 4 milligrams in 250", "phenylephrine 10 milligrams in 100", "adrenaline 1 milligram in 10"),
  ),
  words("push dose", pick("given", "10 micrograms given", "100 micrograms given")),
  words(pick("three percent saline", "mannitol"), pick("given", "250 given", "250 millilitres given")),
  words(pick("saline", "blood"), pick("250 given", "500 running", "100 mL given")),
  words(pick("totals", "make push dose adrenaline", "cylinder 600 litres at 15")),
);
const infusions = fc.oneof(
  words(
    pick("start", "stop"),
    pick("noradrenaline", "propofol", "midazolam", "phenylephrine", "vasopressin", "fentanyl"),
    pick(
      "",
      "",
      "at 5 millilitres per hour",
      "at 0.1",
      "at 20 micrograms per kilo per minute",
      "at 0.03 units per minute",
    ),
  ),
  words(pick("noradrenaline", "propofol"), pick("running at 8 mL/h", "up to 0.2", "down to 0.05")),
);
const airway = pick(
  ...["oxygen running", "blade in", "blade in", "out", "tube in", "tube in", "tube confirmed", "tube out"],
  ...["apnoea started", "stop apnoea", "failed airway", "start rescue", "end rescue", "hyperventilating"],
);
const list = pick(
  ...["read the list", "killer items", "next", "done", "done", "later", "not needed", "not needed no time", "waive"],
  ...["waive no time", "suction ready", "second medic calls pressure", "tube eight point zero", "plan agreed"],
);
const repair = fc.oneof(
  pick("disregard", "disregard", "affirm", "negative", "say again", "heard", "stand by", "pause alerts", "status"),
  words("correction", number(5, 200)),
  words("correction", vitals),
);
/** Everything that the phrase tables hold, and what they must not understand. */
const tabled = pick(
  ...[VITAL_ROWS, PRESSURE_ROWS, NEURO_AND_BODY_ROWS, CAUSE_ROWS, CONTROL_ROWS, CARE_ROWS, COURSE_ROWS].flatMap(
    (rows) => rows.map(([said]) => said),
  ),
  ...[PREPARATION_ROWS, AFTER_ROWS].flatMap((rows) => rows.map(([said]) => said)),
);
const spoken = fc.oneof(
  { weight: 6, arbitrary: vitals },
  { weight: 3, arbitrary: neuro },
  { weight: 2, arbitrary: body },
  { weight: 4, arbitrary: drugs },
  { weight: 3, arbitrary: infusions },
  { weight: 3, arbitrary: airway },
  { weight: 2, arbitrary: list },
  { weight: 3, arbitrary: repair },
  { weight: 4, arbitrary: tabled },
  { weight: 1, arbitrary: fc.string({ maxLength: 12 }) },
);
const answers = fc.oneof(
  { weight: 6, arbitrary: fc.constant("affirm") },
  { weight: 1, arbitrary: pick("negative", "15", "50", "kilopascals", "10 milligrams in 1 mil", "20") },
  { weight: 2, arbitrary: fc.constant(undefined) },
);

const move: fc.Arbitrary<Move> = fc.oneof(
  {
    weight: 16,
    arbitrary: fc.record({
      kind: fc.constant("say" as const),
      words: spoken,
      by: fc.constantFrom<HeardBy>("typed", "typed", "browser"),
      then: answers,
    }),
  },
  {
    weight: 6,
    arbitrary: fc.constantFrom(1, 5, 20, 40, 61, 200, 900).map((seconds): Move => ({ kind: "wait", seconds })),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom(-3_600_000, 3_600_000, 90_000).map((byMs): Move => ({ kind: "clock", byMs })),
  },
  { weight: 1, arbitrary: fc.double({ min: 0, max: 1, noNaN: true }).map((at): Move => ({ kind: "strike", at })) },
  { weight: 1, arbitrary: fc.boolean().map((fails): Move => ({ kind: "microphone", fails })) },
);

/** An intubation as it goes. Of each case some of it is left out. Invented. */
const STORY = [
  ...["forty five year old man", "weight 80 kilos", "height 178", "cause head injury", "cuff 118 over 66", "sats 97"],
  ...[
    "eyes two verbal not testable motor four",
    "both pupils four brisk",
    "i c p 22",
    "ketamine 50 milligrams per mil",
  ],
  ...["rocuronium 10 milligrams per mil", "noradrenaline 4 milligrams in 250", "read the list", "not needed no time"],
  ...["sedation not needed", "fluid not needed", "waive no time", "suction ready", "oxygen running"],
  ...["start noradrenaline at 5 millilitres per hour", "ketamine given", "rocuronium given", "blade in", "sats 84"],
  ...[
    "out",
    "blade in",
    "tube in",
    "end tidal 38",
    "tube confirmed",
    "depth 23",
    "cuff 82 over 44",
    "end tidal 4.8 kPa",
  ],
  ...["noradrenaline running at 8 mL/h", "push dose 100 micrograms given", "art line 120 over 70 map 88"],
  ...["right pupil six fixed", "start rescue", "three percent saline given", "saline 250 given", "stop noradrenaline"],
].map((said): Move => ({ kind: "say", words: said, by: "typed", then: "affirm" }));

/** One of each in turn, until both are used up. */
const between = (a: readonly Move[], b: readonly Move[]): readonly Move[] =>
  Array.from({ length: Math.max(a.length, b.length) }, (_, i) => [...a.slice(i, i + 1), ...b.slice(i, i + 1)]).flat();

/** A case as people, and not only sensible ones, may play it: what they say, how long they wait, what fails. */
export const randomMoves: fc.Arbitrary<readonly Move[]> = fc.oneof(
  fc.array(move, { minLength: 1, maxLength: 30, size: "max" }),
  fc.tuple(fc.subarray(STORY), fc.array(move, { maxLength: 12, size: "max" })).map(([a, b]) => between(a, b)),
);

const STRIKABLE: readonly Fact["type"][] = [
  ...(["vital.recorded", "finding.recorded", "sex.recorded", "cause.recorded", "herniation.recorded"] as const),
  ...(["step.answered", "airway.event", "drug.given", "infusion.set", "fluid.given", "strength.affirmed"] as const),
];

/** Where every random case begins, Unix ms. */
export const BEGAN_MS = 1_800_000_000_000;
const context = testContext();
const MICROPHONE: DeviceFault = { kind: "microphoneLost", sinceMs: BEGAN_MS, text: "No microphone." };

/** A case that is played through the decisions and the rules of the app, without storage and sound. */
class Play {
  readonly facts: Fact[] = [];
  #state: AppState = freshState(emptyCase);
  #nowMs = BEGAN_MS;
  #faults: readonly DeviceFault[] = [];

  constructor(caseId: string) {
    this.#append(firstFacts([], context.mark, { caseId, label: labelFrom(caseId), rehearsal: false }));
  }

  #append(facts: readonly NewFact[]): void {
    const stamped = stamp(this.#state.log, facts, this.#nowMs);
    this.facts.push(...stamped);
    this.#state = { ...this.#state, log: reduceFacts(stamped, this.#state.log) };
  }

  /** What is said counts as said: the reply, and whatever was announced. */
  #take({ state, facts, answer, announcements }: Turn): void {
    this.#state = state;
    this.facts.push(...facts);
    const spoken = [...announcements.filter(({ text }) => text !== "").map(({ text }) => text), answer?.reply ?? ""];
    for (const text of spoken.filter((said) => said !== ""))
      this.#append([{ type: "speech.started", text, priority: "none" }]);
  }

  say(said: string, by: HeardBy): void {
    const utterance = { by, candidates: [{ words: said, score: 0 }], endedAtMs: this.#nowMs };
    this.#take(takeUtterance(context, this.#state, utterance, this.#nowMs, this.#faults));
  }

  move(next: Move): void {
    switch (next.kind) {
      case "say":
        this.say(next.words, next.by);
        if (next.then !== undefined && this.#state.log.questions.length > 0) this.say(next.then, next.by);
        return;
      case "wait":
        // A few looks on the way are enough for whatever falls due.
        for (let look = 0; look < 4; look++) {
          this.#nowMs += Math.ceil((next.seconds * 1000) / 4);
          this.#take(takeTick(context, this.#state, this.#nowMs, this.#faults));
        }
        return;
      case "clock":
        return this.#append([{ type: "clock.changed", byMs: next.byMs }]);
      case "strike": {
        const entries = this.facts.filter(({ type }) => STRIKABLE.includes(type));
        const target = entries[Math.round(next.at * (entries.length - 1))];
        if (target !== undefined)
          this.#append([{ type: "entry.struck", targetIds: [target.id], reason: "disregarded" }]);
        return;
      }
      case "microphone":
        this.#faults = next.fails ? [MICROPHONE] : [];
    }
  }
}

/** Plays these moves through the app, and gives every fact that came of them, oldest first. */
export function playMoves(moves: readonly Move[], caseId = "random"): readonly Fact[] {
  const play = new Play(caseId);
  for (const next of moves) play.move(next);
  return play.facts;
}

/** These facts as the exports take them, under the protocol that they were played with. */
export const recordedFrom = (facts: readonly Fact[], rehearsal = false): RecordedCase =>
  recordedCase({
    caseId: facts[0]?.type === "case.opened" ? facts[0].caseId : "case",
    label: "kilo four seven",
    rehearsal,
    facts,
    protocol: context.protocol,
    mark: context.mark,
  });
