import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  ANSWER_LASTS_MS,
  CALL_LASTS_MS,
  isAttentive,
  stepCalled,
  UNCALLED,
  type CalledEffect,
  type CalledInput,
  type CalledState,
} from "../../src/app/calledMode.ts";

const said = (
  call: "uncalled" | "alone" | "called",
  startedAtMs: number,
  endedAtMs = startedAtMs + 500,
): CalledInput => ({
  kind: "heard",
  call,
  startedAtMs,
  endedAtMs,
});
const UNDERSTOOD: CalledInput = { kind: "understood" };
const voice = (sounding: boolean, atMs: number, waits = true): CalledInput => ({
  kind: "voice",
  sounding,
  waits,
  atMs,
});
const waiting = (waits: boolean, atMs: number): CalledInput => ({ kind: "waiting", waits, atMs });

/** Effects of the utterances among these inputs, in order. */
function play(inputs: readonly CalledInput[]): { state: CalledState; effects: readonly CalledEffect[] } {
  let state = UNCALLED;
  const effects: CalledEffect[] = [];
  for (const input of inputs) {
    const [next, effect] = stepCalled(state, input);
    state = next;
    if (input.kind === "heard") effects.push(effect);
  }
  return { state, effects };
}

const ROWS: readonly (readonly [name: string, inputs: readonly CalledInput[], effects: readonly CalledEffect[]])[] = [
  ["nothing called", [said("uncalled", 0)], ["ignore"]],
  ["called in one breath", [said("called", 0)], ["take"]],
  ["… and it does not open the next", [said("called", 0), UNDERSTOOD, said("uncalled", 600)], ["take", "ignore"]],
  ["alone, then words", [said("alone", 0), said("uncalled", 1_000)], ["attend", "take"]],
  [
    "alone, words that begin in time and end late",
    [said("alone", 0), said("uncalled", 8_400, 12_000)],
    ["attend", "take"],
  ],
  ["alone, words too late", [said("alone", 0), said("uncalled", 500 + CALL_LASTS_MS + 1)], ["attend", "ignore"]],
  [
    "alone, words, more words",
    [said("alone", 0), said("uncalled", 1_000), UNDERSTOOD, said("uncalled", 2_000)],
    ["attend", "take", "ignore"],
  ],
  [
    "alone, something not understood, then words",
    [said("alone", 0), said("uncalled", 1_000), said("uncalled", 2_000)],
    ["attend", "take", "take"],
  ],
  [
    "alone twice: the second counts from itself",
    [said("alone", 0), said("alone", 5_000), said("uncalled", 12_000)],
    ["attend", "attend", "take"],
  ],
  ["an answer over our voice", [waiting(true, 0), voice(true, 100), said("uncalled", 60_000)], ["take"]],
  ["an answer in time", [voice(true, 0), voice(false, 3_000), said("uncalled", 13_000)], ["take"]],
  ["an answer too late", [voice(true, 0), voice(false, 3_000), said("uncalled", 3_001 + ANSWER_LASTS_MS)], ["ignore"]],
  [
    "answered: no more",
    [
      voice(true, 0),
      voice(false, 3_000),
      said("uncalled", 4_000),
      UNDERSTOOD,
      waiting(false, 5_000),
      said("uncalled", 6_000),
    ],
    ["take", "ignore"],
  ],
  [
    "our voice says something that wants no answer",
    [voice(true, 0, false), voice(false, 3_000, false), said("uncalled", 4_000)],
    ["ignore"],
  ],
  ["a question waits, but our voice never came", [waiting(true, 0), said("uncalled", ANSWER_LASTS_MS)], ["take"]],
];

describe("called listening", () => {
  it.each(ROWS)("%s", (_, inputs, effects) => {
    expect(play(inputs).effects).toEqual(effects);
  });

  const input = fc.oneof(
    fc.record({
      kind: fc.constant("heard" as const),
      call: fc.constantFrom("uncalled" as const, "alone" as const, "called" as const),
      gapMs: fc.integer({ min: 0, max: 15_000 }),
    }),
    fc.record({ kind: fc.constant("understood" as const), gapMs: fc.nat(5_000) }),
    fc.record({ kind: fc.constant("waiting" as const), waits: fc.boolean(), gapMs: fc.nat(5_000) }),
    fc.record({ kind: fc.constant("voice" as const), waits: fc.boolean(), gapMs: fc.nat(5_000) }),
  );
  const course = fc.array(input, { maxLength: 30 });

  /** Random inputs with times that only go on; our voice always ends before the next thing. */
  function played(steps: typeof course extends fc.Arbitrary<infer T> ? T : never): readonly CalledInput[] {
    let atMs = 0;
    return steps.flatMap((step): CalledInput[] => {
      atMs += step.gapMs;
      if (step.kind === "heard") return [said(step.call, atMs, (atMs += 400))];
      if (step.kind === "voice") return [voice(true, atMs, step.waits), voice(false, (atMs += 2_000), step.waits)];
      return step.kind === "waiting" ? [waiting(step.waits, atMs)] : [UNDERSTOOD];
    });
  }

  it("takes nothing uncalled that no call and no question of ours came before, close enough", () => {
    fc.assert(
      fc.property(course, (steps) => {
        let state = UNCALLED;
        let openUntilMs = -Infinity;
        for (const next of played(steps)) {
          const [after, effect] = stepCalled(state, next);
          if (next.kind === "heard" && next.call === "uncalled" && effect === "take")
            expect(next.startedAtMs).toBeLessThanOrEqual(openUntilMs);
          if (next.kind === "heard" && next.call === "alone")
            openUntilMs = Math.max(openUntilMs, next.endedAtMs + CALL_LASTS_MS);
          if ((next.kind === "waiting" || next.kind === "voice") && next.waits)
            openUntilMs = Math.max(openUntilMs, next.atMs + ANSWER_LASTS_MS);
          state = after;
        }
      }),
    );
  });

  it("always takes what is called in one breath, and always attends to the call alone", () => {
    fc.assert(
      fc.property(course, (steps) => {
        const { state } = play(played(steps));
        expect(stepCalled(state, said("called", 1e9))[1]).toBe("take");
        expect(stepCalled(state, said("alone", 1e9))[1]).toBe("attend");
      }),
    );
  });

  it("is deaf again in the end, whatever happened", () => {
    fc.assert(
      fc.property(course, (steps) => {
        expect(isAttentive(play(played(steps)).state, 1e9)).toBe(false);
      }),
    );
  });
});
