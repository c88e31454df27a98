import { describe, expect, test } from "vitest";
import { createMeter, type MeterEvent } from "../../src/listener/hearingMeter.ts";
import { createSpeechBand } from "../../src/listener/speechBand.ts";

const RATE_HZ = 16_000;
const FRAME = 512;

type Wave = (i: number) => number;
const tone =
  (hz: number, peak: number): Wave =>
  (i) =>
    peak * Math.sin((2 * Math.PI * hz * i) / RATE_HZ);

function measure(wave: Wave, seconds: number, inSpeech = false, meter = createMeter()): MeterEvent[] {
  const events: MeterEvent[] = [];
  const bandPowerOf = createSpeechBand();
  for (let at = 0; at + FRAME <= seconds * RATE_HZ; at += FRAME) {
    const frame = Float32Array.from({ length: FRAME }, (_, i) => wave(at + i));
    events.push(...meter.measure(frame, bandPowerOf(frame), inSpeech));
  }
  return events;
}

const levels = (events: readonly MeterEvent[]) => events.filter((event) => event.kind === "level");

describe("level", () => {
  test("about five reports a second", () => {
    expect(levels(measure(tone(1_000, 0.5), 10)).length).toBeGreaterThanOrEqual(45);
    expect(levels(measure(tone(1_000, 0.5), 10)).length).toBeLessThanOrEqual(55);
  });

  // A sine of peak 1 has a mean power of one half: −3.01 dB.
  test.each([
    ["full-scale speech band", 1_000, 1, -3.01, 0.3],
    ["a tenth of it", 1_000, 0.1, -23.01, 0.3],
    ["corner of the low-pass, half the power", 4_000, 1, -6.02, 0.3],
    ["rumble of a rotor is left out", 20, 1, -43.0, 1],
  ])("%s", (_, hz, peak, db, within) => {
    const last = levels(measure(tone(hz, peak), 3)).at(-1);
    expect(Math.abs((last?.levelDb ?? 0) - db)).toBeLessThan(within);
  });

  test("the floor follows the background, and speech does not lift it", () => {
    const meter = createMeter();
    const quiet = levels(measure(tone(1_000, 0.001), 5, false, meter)).at(-1);
    expect(quiet?.noiseDb).toBeCloseTo(-63, 0);
    const speech = levels(measure(tone(1_000, 0.5), 5, true, meter)).at(-1);
    expect(speech?.noiseDb).toBeCloseTo(-63, 0);
    expect(speech?.levelDb).toBeCloseTo(-9, 0);
    const louder = levels(measure(tone(1_000, 0.03), 6, false, meter)).at(-1);
    expect(louder?.noiseDb).toBeCloseTo(-33.5, 0);
  });

  test("says when the sound is clipped", () => {
    expect(levels(measure(tone(1_000, 0.9), 1)).some((event) => event.clipped)).toBe(false);
    expect(levels(measure((i) => Math.max(-1, Math.min(1, 2 * tone(1_000, 1)(i))), 1)).every((e) => e.clipped)).toBe(
      true,
    );
  });
});

describe("a microphone that gives nothing", () => {
  const silence: Wave = () => 0;
  const offset: Wave = () => 0.01;
  /** One step of 16-bit sound up and down: the quietest room that a working microphone shows. */
  const lastBit: Wave = (i) => ((i * 7) % 3 === 0 ? 1 / 32_768 : 0);

  test.each([
    ["all zero", silence, true],
    ["a constant", offset, true],
    ["the last bit moves", lastBit, false],
    ["sound", tone(300, 0.1), false],
  ])("%s", (_, wave, silent) => {
    const told = measure(wave, 10).filter((event) => event.kind === "silentMicrophone");
    expect(told).toHaveLength(silent ? 1 : 0);
    if (silent) expect(told[0]).toMatchObject({ forMs: 3_008 });
  });

  test("2.9 s of nothing are not a fault", () => {
    expect(measure(silence, 2.9).filter((event) => event.kind !== "level")).toEqual([]);
  });

  test("tells that sound is back, once", () => {
    const meter = createMeter();
    measure(silence, 4, false, meter);
    const after = measure(tone(300, 0.1), 4, false, meter).filter((event) => event.kind !== "level");
    expect(after).toEqual([{ kind: "soundAgain" }]);
  });
});
