import { describe, expect, it } from "vitest";
import { renderMark } from "../../../src/adapters/voice/marks.ts";
import { renderTone } from "../../../src/adapters/voice/tones.ts";
import { burstsOf, levelDb } from "./spectrum.ts";

const RATE = 48_000;
const MARKS = ["heard", "asked", "refused", "called", "mute"] as const;

const loudestHz = (pcm: Float32Array): number => {
  let loudest = { hz: 0, db: -Infinity };
  for (let hz = 100; hz <= 3_000; hz += 10) {
    const db = levelDb(pcm, hz, RATE);
    if (db > loudest.db) loudest = { hz, db };
  }
  return loudest.hz;
};

describe.each(MARKS)("the mark %s", (mark) => {
  const pcm = renderMark(mark, RATE);

  it("lasts at most 120 ms", () => {
    expect((pcm.length / RATE) * 1000).toBeLessThanOrEqual(120);
  });

  it("is softer than the softest alert by 6 dB", () => {
    expect(Math.max(...pcm)).toBeGreaterThan(0.1);
    expect(Math.max(...pcm)).toBeLessThan(Math.max(...renderTone("low", RATE)) / 2);
  });
});

it("sounds once high for heard, twice for asked, once low for refused", () => {
  const [heard, asked, refused] = MARKS.map((mark) => renderMark(mark, RATE));
  expect([heard, asked, refused].map((pcm) => burstsOf(pcm!, RATE).length)).toEqual([1, 2, 1]);
  expect(loudestHz(heard!)).toBeGreaterThan(3 * loudestHz(refused!));
});

it("sounds twice on one level for called", () => {
  const pcm = renderMark("called", RATE);
  expect(burstsOf(pcm, RATE)).toHaveLength(2);
  const half = Math.floor(pcm.length / 2);
  expect(loudestHz(pcm.slice(half)) / loudestHz(pcm.slice(0, half))).toBeCloseTo(1, 1);
});

it("rises for asked", () => {
  const pcm = renderMark("asked", RATE);
  const half = Math.floor(pcm.length / 2);
  expect(loudestHz(pcm.slice(half))).toBeGreaterThan(1.3 * loudestHz(pcm.slice(0, half)));
});

it("falls for mute, as nothing else does", () => {
  const pcm = renderMark("mute", RATE);
  expect(burstsOf(pcm, RATE)).toHaveLength(2);
  const half = Math.floor(pcm.length / 2);
  expect(loudestHz(pcm.subarray(0, half))).toBeGreaterThan(1.5 * loudestHz(pcm.subarray(half)));
});
