import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  ASK_WAIT_MS,
  HEAR_ME_IDLE,
  LINE_WAIT_MS,
  stepHearMe,
  type HearMe,
  type HearMeEffect,
  type HearMeInput,
} from "../../src/app/hearMe.ts";
import type { LineOutcome } from "../../src/app/hearMeVerdict.ts";
import type { HeardLine } from "../../src/app/hearMeLine.ts";
import { HEAR_ME_LINES } from "../../src/app/hearMeLines.ts";

const NOW_MS = 1_000_000;
const said = (outcome: LineOutcome, speechDb = -30): HeardLine => ({
  kind: "line",
  outcome,
  words: outcome === "missed" ? "" : `heard ${outcome}`,
  measure: { speechDb, noiseDb: speechDb - 30 },
});
const hears = (heard: HeardLine): HearMeInput => ({ kind: "heard", heard, nowMs: NOW_MS });
const start: HearMeInput = { kind: "start", nowMs: NOW_MS };

function play(inputs: readonly HearMeInput[], from: HearMe = HEAR_ME_IDLE) {
  let state = from;
  const effects: HearMeEffect[] = [];
  for (const input of inputs) {
    const [next, more] = stepHearMe(state, input);
    state = next;
    effects.push(...more);
  }
  return { state, effects, last: effects.at(-1) };
}

const rights = (count: number): readonly HearMeInput[] => Array.from({ length: count }, () => hears(said("right")));

describe("the five lines", () => {
  it("are asked for one after another, and end in a profile", () => {
    const { effects, state, last } = play([start, ...rights(5)]);
    expect(effects.slice(0, 5)).toEqual(HEAR_ME_LINES.map((line, i) => ({ kind: "ask", line, isFirst: i === 0 })));
    expect(state).toEqual(HEAR_ME_IDLE);
    expect(last).toEqual({
      kind: "finished",
      profile: { version: 1, madeAtMs: NOW_MS, speechDb: -30, noiseDb: -60, verdict: "well" },
    });
  });

  it("measure with the median level", () => {
    const lines = [said("right", -20), said("right", -30), said("unsure", -90), said("right", -31), said("right", -29)];
    const { last } = play([start, ...lines.map(hears)]);
    expect(last).toMatchObject({ kind: "finished", profile: { speechDb: -30, noiseDb: -60 } });
  });

  it.each(["wrong", "missed"] as const)("a line that is %s is asked for once more, then left", (outcome) => {
    const { effects } = play([start, hears(said(outcome)), hears(said(outcome))]);
    const heard = outcome === "wrong" ? "heard wrong" : "";
    expect(effects).toEqual([
      { kind: "ask", line: HEAR_ME_LINES[0], isFirst: true },
      { kind: "askAgain", line: HEAR_ME_LINES[0], heard },
      { kind: "ask", line: HEAR_ME_LINES[1], isFirst: false },
    ]);
  });

  it("right only at the second try counts as unsure", () => {
    const second = [hears(said("missed")), hears(said("right"))];
    const { last } = play([start, ...second, ...second, ...second, ...second, ...second]);
    expect(last).toMatchObject({ kind: "finished", profile: { verdict: "badly" } });
  });
});

const RIGHT_OF_FIVE: readonly (readonly [right: number, verdict: string])[] = [
  [5, "well"],
  [4, "doubtful"],
  [3, "doubtful"],
  [2, "doubtful"],
  [1, "badly"],
  [0, "badly"],
];

it.each(RIGHT_OF_FIVE)("%d lines right of five: %s", (right, verdict) => {
  const unsure = Array.from({ length: 5 - right }, () => hears(said("unsure")));
  expect(play([start, ...rights(right), ...unsure]).last).toMatchObject({ kind: "finished", profile: { verdict } });
});

const tick = (nowMs: number): HearMeInput => ({ kind: "tick", nowMs });

const ENDS: readonly (readonly [name: string, inputs: readonly HearMeInput[], why: string])[] = [
  ["a button", [{ kind: "skip" }], "skipped"],
  ["stop", [hears({ kind: "command", command: "notNow" })], "skipped"],
  ["any other command", [hears({ kind: "command", command: "status" })], "skipped"],
  ["an alert", [{ kind: "interrupt" }], "interrupted"],
  ["a recogniser without a measure", [hears({ kind: "unmeasured" })], "unmeasured"],
  ["two lines of silence", [1, 2, 3, 4].map((n) => tick(NOW_MS + n * ASK_WAIT_MS)), "silence"],
];

describe("its end", () => {
  it.each(ENDS)("by %s keeps nothing", (_name, inputs, why) => {
    const { state, last } = play([start, ...inputs]);
    expect([state, last]).toEqual([HEAR_ME_IDLE, { kind: "ended", why }]);
  });

  it("does not come from our own voice, nor from a wish to hear the line again", () => {
    const { state, effects } = play([
      start,
      hears({ kind: "ownVoice" }),
      hears({ kind: "command", command: "sayAgain" }),
    ]);
    expect(state.kind).toBe("running");
    expect(effects.slice(1)).toEqual([{ kind: "ask", line: HEAR_ME_LINES[0], isFirst: false }]);
  });

  it("waits for a line from the moment our voice is silent", () => {
    const ended = NOW_MS + 9_000;
    const voiceEnded: HearMeInput = { kind: "voiceEnded", nowMs: ended };
    expect(play([start, voiceEnded, tick(ended + LINE_WAIT_MS - 1)]).effects).toHaveLength(1);
    expect(play([start, voiceEnded, tick(ended + LINE_WAIT_MS)]).last).toMatchObject({ kind: "askAgain", heard: "" });
  });

  it("a second start while it runs changes nothing", () => {
    const running = play([start, ...rights(2)]).state;
    expect(stepHearMe(running, start)).toEqual([running, []]);
  });
});

const anyHeard: fc.Arbitrary<HeardLine> = fc.oneof(
  fc
    .tuple(
      fc.constantFrom<LineOutcome>("right", "unsure", "wrong", "missed"),
      fc.double({ min: -90, max: 0, noNaN: true }),
    )
    .map(([outcome, db]) => said(outcome, db)),
  fc.constant<HeardLine>({ kind: "line", outcome: "missed", words: "", measure: undefined }),
  fc.constant<HeardLine>({ kind: "ownVoice" }),
  fc.constant<HeardLine>({ kind: "command", command: "sayAgain" }),
);
const anyInput: fc.Arbitrary<HearMeInput> = fc.oneof(
  anyHeard.map(hears),
  fc.constant<HearMeInput>(start),
  fc.constant<HearMeInput>({ kind: "voiceEnded", nowMs: NOW_MS }),
  fc.constant<HearMeInput>({ kind: "skip" }),
  fc.constant<HearMeInput>({ kind: "interrupt" }),
);

describe("whatever happens", () => {
  it("it ends exactly once for each start: in a profile or in a reason", () => {
    fc.assert(
      fc.property(fc.array(anyInput, { maxLength: 40 }), (inputs) => {
        // Whatever came before, silence alone ends it: two tries at each of five lines, at the most.
        const silence = Array.from({ length: 10 }, (_, n) => tick(NOW_MS + (n + 1) * ASK_WAIT_MS));
        const { state, effects } = play([start, ...inputs, ...silence]);
        expect(state).toEqual(HEAR_ME_IDLE);
        const starts = effects.filter((e) => e.kind === "ask" && e.isFirst).length;
        expect(effects.filter((e) => e.kind === "finished" || e.kind === "ended")).toHaveLength(starts);
      }),
    );
  });

  it("a profile holds numbers that can be read back", () => {
    fc.assert(
      fc.property(fc.array(anyHeard, { maxLength: 20 }), (heard) => {
        const { effects } = play([start, ...heard.map(hears)]);
        for (const effect of effects)
          if (effect.kind === "finished")
            for (const value of [effect.profile.speechDb, effect.profile.noiseDb])
              expect(Number.isFinite(value)).toBe(true);
      }),
    );
  });
});
