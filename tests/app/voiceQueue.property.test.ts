import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  emptyVoiceQueue,
  queueVoice,
  type QueueItem,
  type VoiceInput,
  type VoiceQueue,
} from "../../src/app/voiceQueue.ts";

const ALERTS = ["map", "sbp", "cpp"] as const;
const RANK = { high: 0, medium: 1, none: 2, low: 3 } as const;

const item: fc.Arbitrary<Omit<QueueItem, "id">> = fc.oneof(
  fc.record({ text: fc.string(), priority: fc.constant("none" as const), alertId: fc.constant(undefined) }),
  fc.record({ text: fc.string(), priority: fc.constant("low" as const), alertId: fc.constant(undefined) }),
  fc.record({
    text: fc.string(),
    priority: fc.constantFrom("high" as const, "medium" as const, "low" as const),
    alertId: fc.constantFrom(...ALERTS),
  }),
);

/** One turn says each alert once. */
const batch = fc.uniqueArray(item, { minLength: 1, maxLength: 4, selector: (i) => i.alertId ?? i });

/** `ended` stands for the end of what sounds now; ids are only known when it is played. */
type Move = VoiceInput | { readonly kind: "finish" };
const move: fc.Arbitrary<Move> = fc.oneof(
  fc.record({ kind: fc.constant("say" as const), items: batch }),
  fc.record({ kind: fc.constant("withdraw" as const), alertIds: fc.subarray([...ALERTS], { minLength: 1 }) }),
  fc.constant({ kind: "finish" as const }),
  fc.record({ kind: fc.constant("ended" as const), id: fc.nat(20) }),
  fc.constant({ kind: "userStarted" as const }),
  fc.constant({ kind: "userEnded" as const }),
);

type Step = {
  readonly input: VoiceInput;
  readonly before: VoiceQueue;
  readonly after: VoiceQueue;
  readonly started: readonly QueueItem[];
  readonly silences: number;
};

function play(moves: readonly Move[]): readonly Step[] {
  let queue = emptyVoiceQueue;
  const steps: Step[] = [];
  const take = (input: VoiceInput): void => {
    const before = queue;
    const [after, effects] = queueVoice(before, input);
    const started = effects.flatMap((e) => (e.kind === "speak" ? [e.item] : []));
    steps.push({ input, before, after, started, silences: effects.length - started.length });
    queue = after;
  };
  for (const m of moves) take(m.kind === "finish" ? { kind: "ended", id: queue.speaking?.id ?? 0 } : m);
  // In the end the user is quiet and the speaker says everything out.
  take({ kind: "userEnded" });
  while (queue.speaking !== undefined) take({ kind: "ended", id: queue.speaking.id });
  return steps;
}

const always = (check: (steps: readonly Step[]) => void): void =>
  fc.assert(
    fc.property(fc.array(move, { maxLength: 40 }), (moves) => void check(play(moves))),
    { numRuns: 300 },
  );

describe("the voice queue, whatever comes", () => {
  it("has one voice: nothing starts while something sounds, unless that was silenced or has ended", () => {
    always((steps) => {
      for (const { input, before, started, silences } of steps) {
        expect(started.length).toBeLessThanOrEqual(1);
        const over = before.speaking === undefined || (input.kind === "ended" && input.id === before.speaking.id);
        if (started.length === 1 && !over) expect(silences).toBe(1);
        if (before.speaking === undefined) expect(silences).toBe(0);
      }
    });
  });

  it("never keeps a high alert behind anything lower", () => {
    always((steps) => {
      for (const { after, started } of steps) {
        for (const now of started)
          expect(after.waiting.every((w) => RANK[w.priority] >= RANK[now.priority] || after.userTalks)).toBe(true);
        if (after.speaking !== undefined && after.speaking.priority !== "high")
          expect(after.waiting.some((w) => w.priority === "high")).toBe(false);
      }
    });
  });

  it("starts nothing but a high alert while the user talks, and is silent once he begins", () => {
    always((steps) => {
      for (const { input, before, after, started, silences } of steps) {
        if (after.userTalks) expect(started.every((s) => s.priority === "high")).toBe(true);
        if (input.kind !== "userStarted") continue;
        expect(after.speaking).toBeUndefined();
        expect(started).toEqual([]);
        expect(silences).toBe(before.speaking === undefined ? 0 : 1);
      }
    });
  });

  it("says nothing of an alert between its withdrawal and its being raised again", () => {
    always((steps) => {
      const gone = new Set<string>();
      for (const { input, started } of steps) {
        if (input.kind === "withdraw") for (const id of input.alertIds) gone.add(id);
        if (input.kind === "say")
          for (const { alertId } of input.items) if (alertId !== undefined) gone.delete(alertId);
        for (const { alertId } of started) expect(alertId !== undefined && gone.has(alertId)).toBe(false);
      }
    });
  });

  it("gives each item an id of its own and starts a reply at most once", () => {
    always((steps) => {
      const starts = steps.flatMap((s) => s.started);
      const replies = starts.filter((s) => s.alertId === undefined).map((s) => s.id);
      expect(new Set(replies).size).toBe(replies.length);
      const seen = new Map<number, string>();
      for (const { id, text } of starts) {
        expect(seen.get(id) ?? text).toBe(text);
        seen.set(id, text);
      }
    });
  });

  it("ends with nothing left to say", () => {
    always((steps) => {
      const last = steps.at(-1)?.after;
      expect([last?.speaking, last?.waiting]).toEqual([undefined, []]);
    });
  });

  it("says the last wording of every alert that was not withdrawn after it", () => {
    always((steps) => {
      const due = new Map<string, string>();
      for (const { input } of steps) {
        if (input.kind === "withdraw") for (const id of input.alertIds) due.delete(id);
        if (input.kind === "say")
          for (const { alertId, text } of input.items) if (alertId !== undefined) due.set(alertId, text);
      }
      const lastSaid = new Map(steps.flatMap((s) => s.started).map((s) => [s.alertId ?? "", s.text]));
      for (const [alertId, text] of due) expect(lastSaid.get(alertId)).toBe(text);
    });
  });
});
