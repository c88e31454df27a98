import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { createCrowd } from "../../src/listener/crowd.ts";
import { FRAME_MS, OPEN_ENDPOINT, SILENCE, stepEndpoint, type EndpointState } from "../../src/listener/endpoint.ts";

const framesOf = (ms: number): number => Math.round(ms / FRAME_MS);
const power = (db: number): number => 10 ** (db / 10);

/** A stretch of sound: how long, how loud in the speech band, how active. */
type Stretch = readonly [ms: number, levelDb: number, probability: number];

/** Utterances found, as milliseconds from and to, when each frame is weighed as live listening does it. */
function utterances(stretches: readonly Stretch[], isWeighed = true): readonly (readonly [number, number])[] {
  const crowd = createCrowd();
  let state: EndpointState = SILENCE;
  let frame = 0;
  const found: [number, number][] = [];
  for (const [ms, levelDb, probability] of stretches)
    for (let i = 0; i < framesOf(ms); i++) {
      // A crowd's level is never still: a slow wave of ±3 dB.
      const bandPower = power(levelDb + 3 * Math.sin(frame));
      const weighed = crowd.weigh(probability, bandPower, false);
      const [next, event] = stepEndpoint(state, frame++, isWeighed ? weighed : probability, OPEN_ENDPOINT);
      state = next;
      if (event?.kind === "ended") found.push([event.first * FRAME_MS, (event.last + 1) * FRAME_MS]);
    }
  return found;
}

const CROWD: Stretch = [12_000, -38, 0.8];
const AFTER: Stretch = [2_000, -38, 0.8];
const NEAR = (ms: number, levelDb: number): Stretch => [ms, levelDb, 0.95];

describe("somebody near, over a crowd", () => {
  test.each([10, 8])("is found and has an end, %i dB over it", (overDb) => {
    const found = utterances([CROWD, NEAR(1_500, -38 + overDb), AFTER]);
    const ours = found.filter(([, to]) => to > 12_000);
    expect(ours).toHaveLength(1);
    const [from, to] = ours[0]!;
    expect(from).toBeGreaterThanOrEqual(11_900);
    expect(from).toBeLessThanOrEqual(12_300);
    expect(to).toBeGreaterThanOrEqual(13_300);
    expect(to).toBeLessThanOrEqual(13_800);
  });

  test("without the weighing no end would come", () => {
    expect(utterances([CROWD, NEAR(1_500, -28), AFTER], false)).toEqual([]);
  });

  test("a pause of 0.4 s stands inside the utterance", () => {
    const found = utterances([CROWD, NEAR(800, -28), [400, -38, 0.8], NEAR(800, -28), AFTER]);
    expect(found.filter(([, to]) => to > 12_000)).toHaveLength(1);
  });

  test("a crowd that begins in the middle of listening is learned within 6 s", () => {
    const found = utterances([[10_000, -70, 0.02], [6_000, -38, 0.8], NEAR(1_500, -28), AFTER]);
    expect(found.filter(([from]) => from > 15_900)).toHaveLength(1);
  });
});

describe("no crowd", () => {
  const HUSH: Stretch = [700, -70, 0.05];
  test.each<readonly [string, readonly Stretch[]]>([
    [
      "one utterance after another in a quiet room",
      [
        [4_000, -70, 0.02],
        ...Array(8)
          .fill([NEAR(2_000, -26), HUSH])
          .flat(),
      ],
    ],
    ["an utterance of 5 s that falls by 10 dB", [[4_000, -70, 0.02], NEAR(2_500, -24), NEAR(2_500, -34), HUSH]],
    ["an utterance at once, 3 s long", [NEAR(3_000, -26), HUSH, NEAR(1_000, -36), HUSH]],
    ["an engine as loud as the voice", [[6_000, -30, 0.1], NEAR(1_500, -27), [900, -30, 0.1]]],
  ])("%s: nothing changes", (_, stretches) => {
    const [weighed, plain] = [utterances(stretches).flat(), utterances(stretches, false).flat()];
    expect(plain.length).toBeGreaterThan(0);
    expect(weighed).toHaveLength(plain.length);
    // When listening begins in the middle of speech, its last two frames may be taken for background.
    plain.forEach((ms, i) => expect(Math.abs(ms - weighed[i]!)).toBeLessThanOrEqual(2 * FRAME_MS));
  });

  test("never makes speech more likely, whatever comes", () => {
    const frame = fc.tuple(
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.boolean(),
    );
    fc.assert(
      fc.property(fc.array(frame, { maxLength: 400 }), (frames) => {
        const crowd = createCrowd();
        for (const [probability, bandPower, isOwnVoice] of frames) {
          const weighed = crowd.weigh(probability, bandPower, isOwnVoice);
          expect(weighed).toBeGreaterThanOrEqual(0);
          expect(weighed).toBeLessThanOrEqual(probability);
        }
      }),
      { numRuns: 40 },
    );
  });
});
