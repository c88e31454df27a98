import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  FIRST_EARS,
  PRESS_LASTS_MS,
  stepEars,
  type Ears,
  type EarsEffect,
  type EarsInput,
} from "../../src/app/ears.ts";
import { TOO_LOUD_AFTER_MS } from "../../src/app/loudness.ts";
import type { ListeningMode, Utterance } from "../../src/app/ports.ts";
import { makeVoiceProfile, VOICE_VERDICTS, type VoiceVerdict } from "../../src/listener/voiceProfile.ts";

const SHAPE = { lengthMs: 2_600, levelDb: -20, noiseDb: -70, clipped: false };
const heard = (words: string, endedAtMs: number): EarsInput => ({
  kind: "heard",
  utterance: {
    by: "listener",
    candidates: [{ words, score: 0 }],
    free: { score: 0, phones: 12 },
    shape: SHAPE,
    endedAtMs,
  },
});
const mode = (name: ListeningMode): EarsInput => ({ kind: "mode", mode: name });
const answered = (outcome: "recorded" | "asked" | "refused" | "ignored", waits: boolean, atMs: number): EarsInput => ({
  kind: "answered",
  utterance: { by: "listener", candidates: [], shape: SHAPE, endedAtMs: atMs },
  outcome,
  waits,
  atMs,
});
const ownVoice = (sounding: boolean, waits: boolean, atMs: number): EarsInput => ({
  kind: "ownVoice",
  sounding,
  waits,
  atMs,
});
const enrolled = (verdict: VoiceVerdict | undefined): EarsInput => ({
  kind: "enrolled",
  profile: verdict && makeVoiceProfile({ madeAtMs: 0, speechDb: -24, noiseDb: -70, verdict }),
});
const level = (noiseDb: number, atMs: number): EarsInput => ({ kind: "level", noiseDb, atMs });

function play(inputs: readonly EarsInput[], from: Ears = FIRST_EARS) {
  let ears = from;
  const effects: EarsEffect[] = [];
  for (const input of inputs) {
    const [next, some] = stepEars(ears, input);
    ears = next;
    effects.push(...some);
  }
  return { ears, effects };
}

const short = (effect: EarsEffect): string => {
  switch (effect.kind) {
    case "take":
      return `${effect.utterance.doubtful ? "doubt" : "take"} ${effect.utterance.candidates.map((c) => c.words).join("|")}`;
    case "attend":
      return "attend";
    case "hold":
      return effect.down ? "down" : "up";
    case "loudness":
      return effect.tooLoud ? "too loud" : "well";
  }
};

const LOUD = [answered("recorded", false, 0), level(-15, 100), level(-15, 100 + TOO_LOUD_AFTER_MS)];

const ROWS: readonly (readonly [name: string, inputs: readonly EarsInput[], effects: readonly string[]])[] = [
  [
    "open: all counts, the words as they are",
    [heard("tragus status", 0), heard("status", 1)],
    ["take tragus status", "take status"],
  ],
  ["held: all counts", [mode("held"), heard("status", 0)], ["take status"]],
  [
    "a voice that is heard badly is doubted, until it is forgotten",
    [enrolled("badly"), heard("status", 0), enrolled(undefined), heard("status", 1)],
    ["doubt status", "take status"],
  ],
  [
    "a voice heard with some doubt is believed as its sound is",
    [enrolled("doubtful"), heard("status", 0)],
    ["take status"],
  ],
  ["called: nothing counts", [mode("called"), heard("status", 0)], []],
  ["called: the call word goes", [mode("called"), heard("tragus status", 0)], ["take status"]],
  [
    "called alone, then words that began in time",
    [mode("called"), heard("tragus", 0), heard("status", 9_500)],
    ["attend", "take status"],
  ],
  ["called alone, then words too late", [mode("called"), heard("tragus", 0), heard("status", 10_500)], ["attend"]],
  [
    "an answer to our question",
    [
      mode("called"),
      answered("asked", true, 0),
      ownVoice(true, true, 10),
      ownVoice(false, true, 3_000),
      heard("yes", 9_000),
    ],
    ["take yes"],
  ],
  [
    "said again, as we asked",
    [
      mode("called"),
      answered("refused", false, 0),
      ownVoice(true, false, 10),
      ownVoice(false, false, 1_000),
      heard("status", 9_000),
    ],
    ["take status"],
  ],
  [
    "… but only the first time our voice ends",
    [
      mode("called"),
      answered("refused", false, 0),
      ownVoice(true, false, 10),
      ownVoice(false, false, 1_000),
      ownVoice(true, false, 60_000),
      ownVoice(false, false, 61_000),
      heard("status", 64_000),
    ],
    [],
  ],
  ["what changed nothing answers nothing", [mode("called"), answered("ignored", false, 0), heard("status", 2_000)], []],
  [
    "another mode forgets the call",
    [mode("called"), heard("tragus", 0), mode("open"), mode("called"), heard("status", 3_000)],
    ["attend"],
  ],
  [
    "hold by finger",
    [mode("held"), { kind: "hold", down: true }, { kind: "hold", down: true }, { kind: "hold", down: false }],
    ["down", "up"],
  ],
  [
    "press to begin, press to end",
    [mode("held"), { kind: "press", atMs: 0 }, { kind: "press", atMs: 4_000 }],
    ["down", "up"],
  ],
  [
    "pressed and forgotten",
    [
      mode("held"),
      { kind: "press", atMs: 0 },
      { kind: "tick", atMs: PRESS_LASTS_MS - 1 },
      { kind: "tick", atMs: PRESS_LASTS_MS },
      { kind: "tick", atMs: PRESS_LASTS_MS + 500 },
    ],
    ["down", "up"],
  ],
  [
    "held by finger for long",
    [mode("held"), { kind: "hold", down: true }, { kind: "tick", atMs: 10 * PRESS_LASTS_MS }],
    ["down"],
  ],
  [
    "a press ends what a finger began",
    [mode("held"), { kind: "hold", down: true }, { kind: "press", atMs: 1_000 }, { kind: "hold", down: false }],
    ["down", "up"],
  ],
  [
    "keys do nothing in other modes",
    [{ kind: "press", atMs: 0 }, { kind: "hold", down: true }, mode("called"), { kind: "press", atMs: 1 }],
    [],
  ],
  ["too loud: doubted", [...LOUD, heard("status", 5_000)], ["too loud", "doubt status"]],
  ["too loud and called", [mode("called"), ...LOUD, heard("tragus status", 5_000)], ["too loud", "doubt status"]],
  [
    "no longer too loud",
    [...LOUD, level(-60, 4_000), level(-60, 9_000), heard("status", 9_100)],
    ["too loud", "well", "take status"],
  ],
];

describe("the ears", () => {
  it.each(ROWS)("%s", (_, inputs, effects) => {
    expect(play(inputs).effects.map(short)).toEqual(effects);
  });

  const words = fc.constantFrom("status", "map ninety", "tragus", "tragus status", "yes");
  const anything = fc.oneof(
    fc.record({
      kind: fc.constant("mode" as const),
      mode: fc.constantFrom("open" as const, "held" as const, "called" as const),
    }),
    fc.record({ kind: fc.constant("hold" as const), down: fc.boolean() }),
    fc.record({ kind: fc.constant("press" as const), atMs: fc.nat(60_000) }),
    fc.record({ kind: fc.constant("tick" as const), atMs: fc.nat(60_000) }),
    fc.record({ kind: fc.constant("level" as const), noiseDb: fc.integer({ min: -90, max: 0 }), atMs: fc.nat(60_000) }),
    fc.tuple(words, fc.nat(60_000)).map(([said, atMs]) => heard(said, atMs)),
    fc
      .tuple(fc.constantFrom("recorded" as const, "refused" as const), fc.boolean(), fc.nat(60_000))
      .map((a) => answered(...a)),
    fc.tuple(fc.boolean(), fc.boolean(), fc.nat(60_000)).map((a) => ownVoice(...a)),
    fc.constantFrom(undefined, ...VOICE_VERDICTS).map(enrolled),
  );
  const course = fc.array(anything, { maxLength: 40 });

  it("holds only in held mode, and every hold that begins is told once before it ends", () => {
    fc.assert(
      fc.property(course, (inputs) => {
        let ears = FIRST_EARS;
        let down = false;
        for (const input of inputs) {
          const [next, effects] = stepEars(ears, input);
          if (input.kind === "mode") down = false; // the recogniser ends it by itself
          for (const effect of effects)
            if (effect.kind === "hold") {
              expect(ears.mode).toBe("held");
              expect(effect.down).not.toBe(down);
              down = effect.down;
            }
          expect(next.holding).toBe(down);
          ears = next;
        }
      }),
    );
  });

  it("never makes words of its own, and doubts exactly while it is too loud or the voice is heard badly", () => {
    fc.assert(
      fc.property(course, words, (inputs, said) => {
        const { ears } = play(inputs);
        const [, effects] = stepEars(ears, heard(said, 70_000));
        for (const effect of effects) {
          if (effect.kind !== "take") continue;
          const { utterance }: { utterance: Utterance } = effect;
          expect([said, said.replace(/^tragus /, "")]).toContain(utterance.candidates[0]?.words);
          expect(utterance.doubtful === true).toBe(ears.loudness.tooLoud || ears.isHeardBadly);
        }
        if (ears.mode !== "called") expect(effects).toHaveLength(1);
      }),
    );
  });
});
