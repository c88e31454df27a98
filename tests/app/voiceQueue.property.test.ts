import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { emptyVoiceQueue, queueVoice, type NewItem, type VoiceInput } from "../../src/app/voiceQueue.ts";
import { isTooOld, OwedModel, type Heard, type Said } from "./voiceQueueModel.ts";

const ALERTS = ["map", "sbp", "spo2"] as const;
const CODES = ["map", "sbp", "spo2"] as const;
const QUESTIONS = ["q1", "q2"] as const;

const about = fc.option(fc.subarray([...CODES], { minLength: 1, maxLength: 2 }), { nil: undefined });
const withAbout = (item: NewItem, codes: readonly string[] | undefined): NewItem =>
  codes === undefined ? item : { ...item, about: codes };
const words = fc.constantFrom("words", "words", "words", "");

const reply = fc
  .tuple(about, fc.option(fc.constantFrom(...QUESTIONS), { nil: undefined }))
  .map(([codes, asksId]) =>
    withAbout({ text: "words", priority: "none", alertId: undefined, ...(asksId && { asksId }) }, codes),
  );
const unnamed = fc.constant<NewItem>({ text: "words", priority: "low", alertId: undefined });
const notice = fc.constant<NewItem>({ text: "words", priority: "none", alertId: "phase" });
const alert = fc
  .tuple(words, fc.constantFrom("high" as const, "medium" as const, "low" as const), fc.constantFrom(...ALERTS), about)
  .map(([text, priority, alertId, codes]) => withAbout({ text, priority, alertId }, codes));

/** One turn says each alert once, and has one reply. */
const batch = fc.uniqueArray(fc.oneof({ weight: 3, arbitrary: alert }, reply, unnamed, notice), {
  maxLength: 4,
  selector: (i) => `${i.alertId ?? ""} ${i.alertId === undefined ? i.priority : ""}`,
});

/** `finish` is the end of what sounds now; ids are only known when it is played. */
type Move = {
  readonly what: Exclude<VoiceInput, { kind: "ended" }> | { readonly kind: "finish" } | { readonly kind: "stray" };
  readonly afterMs: number;
};
const sometimes = <T>(values: readonly T[]) => fc.oneof(fc.constant<T[]>([]), fc.subarray([...values]));
const move: fc.Arbitrary<Move> = fc
  .tuple(
    fc.oneof(
      fc.record({
        kind: fc.constant("say" as const),
        items: batch,
        withdrawn: sometimes(ALERTS),
        closed: sometimes(QUESTIONS),
        outdated: sometimes(CODES),
      }),
      fc.constantFrom({ kind: "finish" as const }, { kind: "stray" as const }),
      fc.constantFrom({ kind: "userStarted" as const }, { kind: "userEnded" as const }),
    ),
    fc.constantFrom(0, 0, 500, 3_000, 13_000, 20_000),
  )
  .map(([what, afterMs]) => ({ what, afterMs }));

type Step = {
  readonly input: VoiceInput;
  readonly nowMs: number;
  /** Before the effects of the input, with its own consequences. */
  readonly owed: readonly Said[];
  readonly soundedBefore: Said | undefined;
  /** What sounded before and is owed no longer, or not now. */
  readonly heard: Heard;
  readonly toGiveBack: readonly string[];
  readonly userTalks: boolean;
  readonly over: readonly Said[];
  readonly speaks: number;
};

/** Plays the moves; in the end the user is quiet and everything is said out. */
function play(moves: readonly Move[]): { readonly steps: readonly Step[]; readonly model: OwedModel } {
  let queue = emptyVoiceQueue;
  let nowMs = 0;
  let named = 0;
  const model = new OwedModel();
  const steps: Step[] = [];
  const all = new Map<string, Said>();
  const take = (input: VoiceInput): void => {
    // Words that are like no others say which item they are; a tone has none, and is known by what it is about.
    const items = input.kind === "say" ? input.items : [];
    const said = items.map((item): Said => {
      const name = `n${named++}`;
      const text = item.text === "" ? "" : name;
      return { ...item, text, name, withinMs: named, madeAtMs: nowMs };
    });
    for (const each of said) all.set(String(each.withinMs), each);
    const soundedBefore = model.sounding;
    const given: VoiceInput =
      input.kind === "say" ? { ...input, items: said.map(({ name: _n, madeAtMs: _m, ...item }) => item) } : input;
    if (input.kind === "ended" && input.id === queue.speaking?.id) model.finish();
    model.take(given, said, nowMs);
    const [next, effects] = queueVoice(queue, given, nowMs);
    queue = next;
    const owed = [...model.owed];
    const { toGiveBack } = model;
    const heard = model.hear(effects, (item) => all.get(String(item.withinMs))!);
    const speaks = effects.filter((e) => e.kind === "speak").length;
    const { userTalks, over } = model;
    steps.push({ input, nowMs, owed, soundedBefore, heard, toGiveBack, userTalks, over: [...over], speaks });
  };
  for (const { what, afterMs } of moves) {
    nowMs += afterMs;
    if (what.kind === "finish") take({ kind: "ended", id: queue.speaking?.id ?? 0 });
    else if (what.kind === "stray") take({ kind: "ended", id: 10_000 });
    else take(what);
  }
  take({ kind: "userEnded" });
  while (queue.speaking !== undefined) take({ kind: "ended", id: queue.speaking.id });
  return { steps, model };
}

const always = (check: (steps: readonly Step[], model: OwedModel) => void): void =>
  fc.assert(
    fc.property(fc.array(move, { maxLength: 40 }), (moves) => {
      const { steps, model } = play(moves);
      check(steps, model);
    }),
    { numRuns: 400 },
  );

describe("the voice queue, whatever comes", () => {
  it("has one voice: nothing starts while something sounds that was not silenced", () => {
    always((steps) => {
      let sounding: string | undefined;
      for (const { input, heard, speaks, soundedBefore } of steps) {
        expect(speaks).toBeLessThanOrEqual(1);
        if (input.kind === "ended" && input.id !== 10_000 && soundedBefore !== undefined) sounding = undefined;
        if (heard.silenced) {
          expect(sounding).toBeDefined();
          sounding = undefined;
        }
        if (heard.started === undefined) continue;
        expect(sounding).toBeUndefined();
        sounding = heard.started.name;
      }
    });
  });

  it("starts only what is owed: not what is withdrawn, closed, outdated, said anew, said out, or too old", () => {
    always((steps) => {
      for (const { heard, owed, nowMs } of steps) {
        if (heard.started === undefined) continue;
        expect(owed).toContain(heard.started);
        expect(isTooOld(heard.started, nowMs)).toBe(false);
      }
    });
  });

  it("never starts anything lower while a high alert waits, and cuts in for it", () => {
    always((steps) => {
      for (const { heard, owed, over, soundedBefore, input, nowMs } of steps) {
        const waits = owed.filter((o) => o.priority === "high" && !over.includes(o) && !isTooOld(o, nowMs));
        if (heard.started !== undefined && heard.started.priority !== "high") expect(waits).toEqual([]);
        if (input.kind !== "say" || soundedBefore?.priority === "high") continue;
        if (waits.some((o) => o.madeAtMs === nowMs)) expect(heard.started?.priority).toBe("high");
      }
    });
  });

  it("starts nothing else than a high alert while the user talks, and none that he talked over", () => {
    always((steps) => {
      for (const { heard, userTalks, over, input, soundedBefore } of steps) {
        if (input.kind === "userStarted") {
          expect(heard.started).toBeUndefined();
          expect(heard.silenced).toBe(soundedBefore !== undefined);
        }
        if (!userTalks || heard.started === undefined) continue;
        expect(heard.started.priority).toBe("high");
        expect(over).not.toContain(heard.started);
      }
    });
  });

  it("gives every alert back whose words became untrue or too old, and nothing else", () => {
    always((steps) => {
      for (const { heard, owed, toGiveBack, nowMs } of steps) {
        const old = owed.flatMap((o) =>
          isTooOld(o, nowMs) && o.priority !== "none" && o !== heard.started ? (o.alertId ?? []) : [],
        );
        for (const id of toGiveBack) expect(heard.back).toContain(id);
        for (const id of heard.back) expect([...toGiveBack, ...old]).toContain(id);
      }
    });
  });

  it("ends with nothing left to say, and everything that was true and fresh has been said", () => {
    always((steps, model) => {
      expect(model.sounding).toBeUndefined();
      // What was too old for its words is in nobody's debt: an alert of it was given back, as the test before this one says.
      const nowMs = steps.at(-1)!.nowMs;
      expect(model.owed.filter((o) => !isTooOld(o, nowMs))).toEqual([]);
      expect(model.owed.filter((o) => o.priority !== "none" && o.alertId !== undefined)).toEqual([]);
      const last = steps.findLastIndex(({ input }) => input.kind === "userEnded");
      const started = steps.slice(last).flatMap(({ heard }) => heard.started ?? []);
      const due = steps[last]!.owed.filter((o) => !isTooOld(o, steps[last]!.nowMs));
      for (const o of due) expect([...started, steps[last]!.soundedBefore]).toContain(o);
    });
  });
});
