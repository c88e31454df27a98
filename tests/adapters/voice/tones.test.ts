import { describe, expect, it } from "vitest";
import { renderTone } from "../../../src/adapters/voice/tones.ts";
import { ALARM_ROWS, expectAlarm, fundamentalOf } from "./alarmFigures.ts";
import { burstsOf } from "./spectrum.ts";

const RATES = [16_000, 44_100, 48_000];
const CASES = ALARM_ROWS.flatMap((row) => RATES.map((sampleRate) => ({ row, sampleRate })));

describe.each(CASES)("the $row.priority tone at $sampleRate Hz", ({ row, sampleRate }) => {
  const pcm = renderTone(row.priority, sampleRate);

  it("has the pulses, the harmonics and the rise of its row", () => {
    expectAlarm(row, pcm, sampleRate);
  });

  it("starts at once and stays within full scale", () => {
    expect(burstsOf(pcm, sampleRate)[0]!.onsetMs).toBeLessThan(1);
    expect(pcm.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0)).toBeLessThan(0.95);
  });

  it("is rendered once", () => {
    expect(renderTone(row.priority, sampleRate)).toBe(pcm);
  });
});

it("is louder and higher the more urgent", () => {
  const tones = ALARM_ROWS.map(({ priority }) => renderTone(priority, 16_000));
  const peaks = tones.map((pcm) => Math.max(...pcm));
  const pitches = tones.map((pcm) => fundamentalOf(pcm.slice(0, 1_600), 16_000).hz);
  for (const measure of [peaks, pitches]) {
    expect(measure[0]).toBeGreaterThan(measure[1]!);
    expect(measure[1]).toBeGreaterThan(measure[2]!);
  }
});
