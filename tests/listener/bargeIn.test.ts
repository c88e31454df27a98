import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { createBargeIn } from "../../src/listener/bargeIn.ts";
import { BARGE_IN_ENDPOINT, HALF_FRAME_SAMPLES, OPEN_ENDPOINT } from "../../src/listener/endpoint.ts";

const SURE = BARGE_IN_ENDPOINT.startProbability;
/** No band to speak of, so that the level of the treble alone tells. */
const NO_BAND = 1e-12;

/** A half frame whose treble has a level in dB. */
const hiss = (db: number): Float32Array => {
  const step = 10 ** (db / 20);
  return Float32Array.from({ length: HALF_FRAME_SAMPLES }, (_, i) => (i % 2 === 0 ? step / 2 : -step / 2));
};

type Half = { readonly bandDb: number; readonly trebleDb?: number; readonly p: number; readonly isOwn?: boolean };

/** Whether somebody is taken to talk over our voice, frame by frame, and between them from the third half on. */
function over(halves: readonly Half[]): readonly boolean[] {
  const bargeIn = createBargeIn();
  return halves.map(({ bandDb, trebleDb = -90, p, isOwn = true }, i) => {
    bargeIn.measure(hiss(trebleDb), bandDb <= -120 ? NO_BAND : 10 ** (bandDb / 10), isOwn);
    return bargeIn.weigh(p, i % 2 === 1) >= SURE;
  });
}

const times = (n: number, half: Half): readonly Half[] => Array.from({ length: n }, () => half);
/** What our voice leaves: a second of it at −50 dB, that the model is not sure about. */
const OURS = times(62, { bandDb: -50, p: 0.6 });
const LOUD_MOMENT = times(10, { bandDb: -30, p: 0.6 });
const SAID = times(60, { bandDb: -30, p: 0.4, isOwn: false });

describe("somebody who talks over our voice", () => {
  test.each<readonly [string, readonly Half[], readonly Half[], boolean]>([
    ["likely, and 7 dB louder", OURS, [{ bandDb: -43, p: 0.81 }], true],
    ["louder in the treble alone, as an s is", OURS, [{ bandDb: -50, trebleDb: -80, p: 0.81 }], true],
    ["likely, and 5 dB louder", OURS, [{ bandDb: -45, p: 0.81 }], false],
    ["sure, and no louder: it may be our own voice", OURS, [{ bandDb: -50, p: 1 }], false],
    ["louder, and not likely: a cough or a knock", OURS, [{ bandDb: -20, p: 0.79 }], false],
    ["sure, no louder, and does not end", OURS, times(16, { bandDb: -50, p: 0.95 }), true],
    ["not quite so long", OURS, times(15, { bandDb: -50, p: 0.95 }), false],
    ["sure, before our voice is known", [], [{ bandDb: -50, p: SURE }], true],
    ["likely, before our voice is known", [], [{ bandDb: -20, p: 0.89 }], false],
    ["as loud as what was said before our voice", [...SAID, ...OURS], [{ bandDb: -30, p: 0.9 }], true],
    [
      "louder than our voice mostly is",
      [...OURS, ...LOUD_MOMENT, ...OURS.slice(0, 4)],
      [{ bandDb: -43, p: 0.81 }],
      true,
    ],
  ])("%s", (_, before, now, isOver) => {
    expect(over([...before, ...now]).at(-1)).toBe(isOver);
    expect(over(OURS)).not.toContain(true);
  });

  test("our voice is remembered from one sentence to the next, whatever sounds between them", () => {
    const between = times(500, { bandDb: -70, p: 0.01, isOwn: false });
    expect(over([...OURS, ...between, { bandDb: -50, p: 0.95 }]).at(-1)).toBe(false);
  });
});

describe("whatever comes", () => {
  const level = fc.double({ min: -90, max: 0, noNaN: true });
  const half = fc.record({
    bandDb: level,
    trebleDb: level,
    p: fc.double({ min: 0, max: 1, noNaN: true }),
    isOwn: fc.boolean(),
  });

  test("only what is likely begins, and what goes on goes on", () => {
    fc.assert(
      fc.property(fc.array(half, { maxLength: 300 }), (halves) => {
        const bargeIn = createBargeIn();
        halves.forEach(({ bandDb, trebleDb, p, isOwn }, i) => {
          bargeIn.measure(hiss(trebleDb), 10 ** (bandDb / 10), isOwn);
          const weighed = bargeIn.weigh(p, i % 2 === 1);
          if (p < 0.8) expect(weighed).toBeLessThan(SURE);
          expect(weighed).toBeLessThanOrEqual(1);
          expect(weighed >= OPEN_ENDPOINT.stayProbability).toBe(p >= OPEN_ENDPOINT.stayProbability);
        });
      }),
    );
  });

  test("the gain of a microphone does not matter", () => {
    // No two of these levels are just as far apart as the rise that is asked for, which rounding could decide either way.
    const coarse = fc.integer({ min: -100, max: -30 }).map((n) => n * 0.7);
    const halves = fc.array(
      fc.record({
        bandDb: coarse,
        trebleDb: coarse,
        p: fc.double({ min: 0, max: 1, noNaN: true }),
        isOwn: fc.boolean(),
      }),
      { maxLength: 200 },
    );
    fc.assert(
      fc.property(halves, fc.integer({ min: -20, max: 20 }), (heard, gainDb) => {
        const louder = heard.map((h) => ({ ...h, bandDb: h.bandDb + gainDb, trebleDb: h.trebleDb + gainDb }));
        expect(over(louder)).toEqual(over(heard));
      }),
    );
  });

  test("speech that is sure and lasts is let through", () => {
    fc.assert(
      fc.property(fc.array(half, { maxLength: 200 }), level, (before, bandDb) => {
        const even = before.length % 2 === 0 ? before : before.slice(1);
        expect(over([...even, ...times(16, { bandDb, p: 0.95 })]).at(-1)).toBe(true);
      }),
    );
  });
});
