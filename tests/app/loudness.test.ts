import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  QUIET_ROOM,
  speechAloneDb,
  speechLevelDb,
  stepLoudness,
  TOO_LOUD_AFTER_MS,
  TOO_LOUD_UNDER_DB,
  WELL_AFTER_MS,
  WELL_FROM_DB,
  type Loudness,
  type LoudnessInput,
} from "../../src/app/loudness.ts";
import type { SoundShape } from "../../src/listener/soundShape.ts";

const shape = (levelDb: number, noiseDb = -90): SoundShape => ({ lengthMs: 2_000, levelDb, noiseDb, clipped: false });
const spoke = (levelDb: number, understood = true): LoudnessInput => ({
  kind: "spoke",
  shape: shape(levelDb),
  understood,
});

/** The room at one level for so long, five reports a second. */
const room = (noiseDb: number, fromMs: number, forMs: number): readonly LoudnessInput[] =>
  Array.from({ length: Math.floor(forMs / 200) + 1 }, (_, i) => ({ kind: "level", noiseDb, atMs: fromMs + i * 200 }));

function play(inputs: readonly LoudnessInput[], from: Loudness = QUIET_ROOM) {
  let state = from;
  const effects: string[] = [];
  for (const input of inputs) {
    const [next, effect] = stepLoudness(state, input);
    state = next;
    if (effect !== undefined) effects.push(effect);
  }
  return { state, effects };
}

const LOUD_DB = -20 - TOO_LOUD_UNDER_DB + 1;
const WELL_DB = -20 - WELL_FROM_DB - 0.5;
const BETWEEN_DB = -20 - TOO_LOUD_UNDER_DB - 1;
const OWN = (sounding: boolean, atMs: number): LoudnessInput => ({ kind: "ownVoice", sounding, atMs });

const ROWS: readonly (readonly [name: string, inputs: readonly LoudnessInput[], effects: readonly string[]])[] = [
  ["nobody has spoken yet", room(-5, 0, 20_000), []],
  ["loud for long enough", [spoke(-20), ...room(LOUD_DB, 0, TOO_LOUD_AFTER_MS)], ["tooLoud"]],
  ["loud for a moment", [spoke(-20), ...room(LOUD_DB, 0, TOO_LOUD_AFTER_MS - 400), ...room(WELL_DB, 3_000, 9_000)], []],
  [
    "loud, again and again for a moment",
    [spoke(-20), ...room(LOUD_DB, 0, 2_000), ...room(BETWEEN_DB, 2_200, 0), ...room(LOUD_DB, 2_400, 2_000)],
    [],
  ],
  ["loud once is said once", [spoke(-20), ...room(LOUD_DB, 0, 60_000)], ["tooLoud"]],
  [
    "between the limits it stays as it is",
    [spoke(-20), ...room(LOUD_DB, 0, 4_000), ...room(BETWEEN_DB, 4_200, 60_000)],
    ["tooLoud"],
  ],
  [
    "well again for long enough",
    [spoke(-20), ...room(LOUD_DB, 0, 4_000), ...room(WELL_DB, 4_200, WELL_AFTER_MS)],
    ["tooLoud", "well"],
  ],
  [
    "well again for a moment",
    [spoke(-20), ...room(LOUD_DB, 0, 4_000), ...room(WELL_DB, 4_200, WELL_AFTER_MS - 400)],
    ["tooLoud"],
  ],
  [
    "the user speaks up",
    [spoke(-20), ...room(LOUD_DB, 0, 4_000), spoke(-10), spoke(-10), spoke(-10), ...room(LOUD_DB, 4_200, 6_000)],
    ["tooLoud", "well"],
  ],
  ["the user's level is enrolled", [{ kind: "enrolled", speechDb: -20 }, ...room(LOUD_DB, 0, 4_000)], ["tooLoud"]],
  ["nothing can be understood", [spoke(-20, false), ...room(LOUD_DB, 0, 4_000)], ["tooLoud"]],
  ["one refused among the understood", [spoke(-10), spoke(-20, false), ...room(LOUD_DB, 0, 4_000)], []],
  [
    "our own voice is no noise",
    [spoke(-20), OWN(true, 0), ...room(LOUD_DB, 0, 10_000), OWN(false, 10_100), ...room(LOUD_DB, 10_200, 1_600)],
    [],
  ],
  [
    "… but what goes on after it is",
    [spoke(-20), OWN(true, 0), OWN(false, 100), ...room(LOUD_DB, 200, 6_000)],
    ["tooLoud"],
  ],
  [
    "listening stopped",
    [spoke(-20), ...room(LOUD_DB, 0, 2_000), { kind: "stopped" }, ...room(LOUD_DB, 2_200, 9_000)],
    [],
  ],
];

describe("too loud to hear safely", () => {
  it.each(ROWS)("%s", (_, inputs, effects) => {
    expect(play(inputs).effects).toEqual(effects);
  });

  it("forgets the room when listening stops, but not the enrolled voice", () => {
    const { state } = play([
      { kind: "enrolled", speechDb: -30 },
      spoke(-20),
      ...room(LOUD_DB, 0, 4_000),
      { kind: "stopped" },
    ]);
    expect(state.tooLoud).toBe(false);
    expect(speechLevelDb(state)).toBe(-30);
  });

  it("cannot flap: changes are as far apart as the dwell of what they change to", () => {
    const levels = fc.array(
      fc.tuple(fc.double({ min: -60, max: 0, noNaN: true }), fc.integer({ min: 50, max: 3_000 })),
      { maxLength: 60 },
    );
    fc.assert(
      fc.property(levels, (some) => {
        let state = stepLoudness(QUIET_ROOM, spoke(-20))[0];
        let atMs = 0;
        let lastChangeMs = -Infinity;
        for (const [noiseDb, gapMs] of some) {
          atMs += gapMs;
          const [next, effect] = stepLoudness(state, { kind: "level", noiseDb, atMs });
          if (effect !== undefined) {
            expect(effect).toBe(state.tooLoud ? "well" : "tooLoud");
            expect(atMs - lastChangeMs).toBeGreaterThanOrEqual(effect === "well" ? WELL_AFTER_MS : TOO_LOUD_AFTER_MS);
            lastChangeMs = atMs;
          } else expect(next.tooLoud).toBe(state.tooLoud);
          state = next;
        }
      }),
    );
  });
});

describe("the level of speech under noise", () => {
  it.each([
    { levelDb: -20, noiseDb: -80, alone: -20 },
    { levelDb: -20, noiseDb: -23.01, alone: -23.02 },
    { levelDb: -20, noiseDb: -30, alone: -20.46 },
  ])("$levelDb with $noiseDb in it: $alone", ({ levelDb, noiseDb, alone }) => {
    expect(speechAloneDb(shape(levelDb, noiseDb))).toBeCloseTo(alone, 1);
  });

  it("is a number under the whole, however it lies to the noise", () => {
    const db = fc.double({ min: -100, max: 0, noNaN: true });
    fc.assert(
      fc.property(db, db, (levelDb, noiseDb) => {
        const alone = speechAloneDb(shape(levelDb, noiseDb));
        expect(Number.isFinite(alone)).toBe(true);
        expect(alone).toBeLessThanOrEqual(Math.max(levelDb, noiseDb + 0.5));
      }),
    );
  });
});
