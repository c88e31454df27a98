import { beforeAll, describe, expect, it } from "vitest";
import { createFlite, type Flite } from "../../../src/adapters/voice/synthesise.ts";
import { fliteWasm } from "./flite.ts";

let flite: Flite;
beforeAll(async () => {
  flite = await createFlite({ wasmBytes: fliteWasm() });
});

const say = (...args: Parameters<Flite["synthesise"]>) => {
  const said = flite.synthesise(...args);
  if (!said.ok) throw new Error(said.error.detail);
  return { ...said.value, seconds: said.value.pcm.length / said.value.sampleRate };
};

/** Root mean square of a stretch given in seconds. */
const loudness = (pcm: Float32Array, from: number, to: number) => {
  const part = pcm.slice(from, to);
  return Math.sqrt(part.reduce((sum, sample) => sum + sample * sample, 0) / part.length);
};

describe("the built-in voice", () => {
  it("speaks: sound within bounds, neither silent nor clipped", () => {
    const { pcm, sampleRate } = say("Pressure one ten over sixty.");
    const peak = pcm.reduce((max, sample) => Math.max(max, Math.abs(sample)), 0);
    expect(sampleRate).toBe(16_000);
    expect(peak).toBeGreaterThan(0.2);
    expect(peak).toBeLessThan(1);
    expect(loudness(pcm, 0, pcm.length)).toBeGreaterThan(0.02);
  });

  it("starts and ends within 30 ms of its sound", () => {
    const { pcm, sampleRate } = say("Affirm.");
    const first = pcm.findIndex((sample) => Math.abs(sample) > 0.005);
    const last = pcm.findLastIndex((sample) => Math.abs(sample) > 0.005);
    expect((first / sampleRate) * 1000).toBeLessThan(30);
    expect(((pcm.length - last) / sampleRate) * 1000).toBeLessThan(30);
  });

  it("is shorter in proportion when it speaks faster", () => {
    const text = "Pressure one ten over sixty, MAP seventy seven, thirteen under ninety.";
    const ratio = say(text, { stretch: 0.65 }).seconds / say(text, { stretch: 1 }).seconds;
    expect(ratio).toBeGreaterThan(0.6);
    expect(ratio).toBeLessThan(0.7);
  });

  it("is longer at a slow pace, shorter at a fast one, and never faster than numbers stay clear", () => {
    const text = "Pressure one ten over sixty, MAP seventy seven, thirteen under ninety.";
    const seconds = (options: Parameters<Flite["synthesise"]>[1]) => say(text, options).seconds;
    expect(seconds({ pace: 1 })).toBe(seconds({}));
    expect(seconds({ pace: 0.75 }) / seconds({ pace: 1 })).toBeGreaterThan(1.25);
    expect(seconds({ pace: 1.1 }) / seconds({ pace: 1 })).toBeLessThan(0.95);
    expect(seconds({ pace: 1.5 })).toBe(seconds({ stretch: 0.64 }));
  });

  it("goes by its time limit only where that makes it faster", () => {
    const text = "MAP seventy seven, CPP fifty five.";
    const at = (pace: number, withinMs: number) => say(text, { pace, withinMs }).seconds;
    expect(at(0.75, 60_000)).toBeGreaterThan(1.2 * at(1, 60_000));
    expect(at(0.75, 100)).toBe(at(1, 100));
    expect(at(1.5, 60_000)).toBe(at(1, 100));
  });

  it("reads one vital back in under 4 s", () => {
    expect(say("Pressure one hundred and ten over sixty eight.").seconds).toBeLessThan(4);
    expect(say("Glucose eleven point four millimoles per litre.").seconds).toBeLessThan(4);
  });

  it.each([
    ["slt", 16_000],
    ["awb", 16_000],
    ["kal16", 16_000],
    ["kal", 8_000],
  ] as const)("has another voice, %s, at %i Hz", (voice, sampleRate) => {
    const said = say("Ninety five.", { voice });
    expect(said.sampleRate).toBe(sampleRate);
    expect(said.seconds).toBeGreaterThan(0.3);
    expect(Buffer.from(said.pcm.buffer).equals(Buffer.from(say("Ninety five.").pcm.buffer))).toBe(false);
  });

  it("says the same text the same way each time", () => {
    expect(say("Ninety five.").pcm).toEqual(say("Ninety five.").pcm);
  });

  it("joins phrases with a pause", () => {
    const [one, two, both] = ["Ninety five.", "Two minutes old.", "Ninety five. Two minutes old."].map((text) =>
      say(text),
    );
    expect(both!.seconds).toBeCloseTo(one!.seconds + 0.15 + two!.seconds, 3);
  });

  it.each(["", "…", "?!"])("gives no samples for %j", (text) => {
    expect(flite.synthesise(text)).toMatchObject({ ok: true, value: { pcm: new Float32Array(0) } });
  });

  it("will not be made from bytes that are no program", async () => {
    await expect(createFlite({ wasmBytes: new TextEncoder().encode("<!doctype html>") })).rejects.toThrow();
  });
});
