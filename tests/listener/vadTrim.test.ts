import { describe, expect, test } from "vitest";
import { frameSpeech, PADDING_SAMPLES, speechSpan, type FrameJudge } from "../../src/listener/vadTrim.ts";

const FRAME = 512;
const SPEECH = 0.5;

/** Background of a level that tells where it came from, speech in the frames given. */
function recording(frames: number, first: number, last: number): Float32Array {
  return Float32Array.from({ length: frames * FRAME }, (_, i) => {
    const frame = Math.floor(i / FRAME);
    return frame >= first && frame <= last ? SPEECH : 0.01;
  });
}

let resets = 0;
const judge: FrameJudge = {
  judge: (frame: Float32Array) => Promise.resolve(frame.some((x) => x === SPEECH) ? 0.9 : 0.01),
  reset: () => void resets++,
  another: () => judge,
};

test.each([
  [[], undefined],
  [[0.1, 0.19], undefined],
  [[0.1, 0.2, 0.1], { first: 1, last: 1 }],
  [[0.9, 0, 0, 0.3, 0], { first: 0, last: 3 }],
])("span of %j", (probabilities, span) => {
  expect(speechSpan(probabilities)).toEqual(span);
});

describe("frameSpeech", () => {
  test.each([
    ["long background is cut", 200, 60, 100],
    ["missing background is made", 41, 0, 40],
    ["on one side only", 100, 0, 40],
    ["as it should be already", 60, 10, 49],
  ])("%s", async (_, frames, first, last) => {
    const framed = await frameSpeech(recording(frames, first, last), judge);
    expect(framed).toHaveLength((last - first + 1) * FRAME + 2 * PADDING_SAMPLES);
    const inside = framed.slice(PADDING_SAMPLES, -PADDING_SAMPLES);
    expect(inside.every((x) => x === SPEECH)).toBe(true);
  });

  test("made background is the recording's own quietest", async () => {
    const pcm = recording(60, 0, 50); // quiet at the end, none at the start
    const framed = await frameSpeech(pcm, judge);
    expect(new Set(framed.slice(0, PADDING_SAMPLES))).toEqual(new Set([Math.fround(0.01)]));
  });

  test("without speech all of it counts as speech", async () => {
    const pcm = recording(20, -1, -1);
    expect(await frameSpeech(pcm, judge)).toHaveLength(pcm.length + 2 * PADDING_SAMPLES);
  });

  test.each([0, 1, 100, 511])("%i samples do no harm", async (length) => {
    const framed = await frameSpeech(new Float32Array(length).fill(0.25), judge);
    expect(framed).toHaveLength(length + 2 * PADDING_SAMPLES);
    expect(framed.every((x) => x === (length === 0 ? 0 : 0.25))).toBe(true);
  });

  test("forgets the recording before", async () => {
    resets = 0;
    await frameSpeech(recording(3, 0, 1), judge);
    expect(resets).toBe(1);
  });
});
