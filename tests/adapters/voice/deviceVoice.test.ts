import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { fail, ok } from "../../../src/core/result.ts";
import type { Spoken } from "../../../src/app/ports.ts";
import { createDeviceVoice, localVoices } from "../../../src/adapters/voice/deviceVoice.ts";
import { FakeAudioContext } from "./fakeAudio.ts";

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const voice = (voiceURI: string, localService: boolean) => ({
  voiceURI,
  localService,
  lang: "en-GB",
  name: voiceURI,
  default: false,
});
const HERE = voice("here", true);
const AWAY = voice("away", false);

type Utterance = {
  text: string;
  voice: SpeechSynthesisVoice | null;
  lang: string;
  rate: number;
  volume: number;
  onstart: (() => void) | null;
  onend: (() => void) | null;
  onerror: ((event: { error: string }) => void) | null;
};

/** How the fake device meets an utterance: start and end in ms, an error, or nothing, as a headless browser does. */
type Manner = { readonly startMs: number; readonly endMs?: number } | { readonly error: string } | "nothing";

function setUp(manner: Manner, voices = [HERE, AWAY], voiceUri = HERE.voiceURI) {
  const context = new FakeAudioContext();
  const spoken: Utterance[] = [];
  const synthesis = {
    getVoices: () => voices,
    cancel: vi.fn(),
    speak: (utterance: Utterance) => {
      spoken.push(utterance);
      if (manner === "nothing") return;
      if ("error" in manner) return void setTimeout(() => utterance.onerror?.(manner), 10);
      setTimeout(() => utterance.onstart?.(), manner.startMs);
      if (manner.endMs !== undefined) setTimeout(() => utterance.onend?.(), manner.endMs);
    },
  };
  const speaker = createDeviceVoice({
    synthesis: synthesis as unknown as SpeechSynthesis,
    voiceUri,
    makeUtterance: (text) =>
      ({
        text,
        voice: null,
        lang: "",
        rate: 1,
        volume: 1,
        onstart: null,
        onend: null,
        onerror: null,
      }) as unknown as SpeechSynthesisUtterance,
    makeContext: () => context as unknown as AudioContext,
    page: new EventTarget(),
  });
  const say = (text: string, tone?: "low", manner: Omit<Spoken, "text" | "tone"> = {}) => {
    const seen = { starts: 0, outcomes: [] as unknown[] };
    void speaker
      .say({ text, ...manner, ...(tone ? { tone } : {}) }, () => seen.starts++)
      .then((outcome) => seen.outcomes.push(outcome));
    return seen;
  };
  return { context, synthesis, speaker, spoken, say };
}

it("offers only voices that work without a network", () => {
  const { synthesis } = setUp("nothing");
  expect(localVoices(synthesis as unknown as SpeechSynthesis)).toEqual([HERE]);
});

describe("saying with a device's voice", () => {
  it("uses the chosen voice, and settles at its end", async () => {
    const { context, spoken, say } = setUp({ startMs: 50, endMs: 900 });
    const seen = say("Ninety five.");
    await context.pass(100);
    expect(seen).toEqual({ starts: 1, outcomes: [] });
    await context.pass(1_000);
    expect(seen).toEqual({ starts: 1, outcomes: [ok("ended")] });
    expect(spoken).toMatchObject([{ text: "Ninety five.", voice: HERE, lang: "en-GB" }]);
  });

  it.each([
    ["is gone", []],
    ["sends text away", [AWAY]],
  ])("refuses when the chosen voice %s", async (_why, voices) => {
    const { context, speaker, spoken, say } = setUp({ startMs: 50 }, voices, AWAY.voiceURI);
    const seen = say("Ninety five.");
    await context.pass(100);
    const missing = fail({ kind: "load-failed", asset: "away", detail: "no such voice on this device" });
    expect(seen).toEqual({ starts: 0, outcomes: [missing] });
    expect(await speaker.warmUp()).toEqual(missing);
    expect(spoken).toEqual([]);
  });

  it("settles when the device reports nothing at all", async () => {
    const { context, synthesis, say } = setUp("nothing");
    const seen = say("Ninety five.");
    await context.pass(3_100);
    expect(seen).toEqual({ starts: 0, outcomes: [fail({ kind: "timed-out", afterMs: 3_000 })] });
    expect(synthesis.cancel).toHaveBeenCalled();
  });

  it("settles when the device never reports the end", async () => {
    const { context, say } = setUp({ startMs: 50 });
    const seen = say("Affirm.");
    await context.pass(7_000);
    expect(seen).toEqual({ starts: 1, outcomes: [fail({ kind: "timed-out", afterMs: 6_400 })] });
  });

  it.each([
    ["interrupted", ok("cancelled")],
    ["canceled", ok("cancelled")],
    ["synthesis-failed", fail({ kind: "worker-died", detail: "the device's voice: synthesis-failed" })],
  ])("settles on the device's error %s", async (error, outcome) => {
    const { context, say } = setUp({ error });
    const seen = say("Ninety five.");
    await context.pass(100);
    expect(seen.outcomes).toEqual([outcome]);
  });

  it("cancels at once and settles once", async () => {
    const { context, synthesis, speaker, say } = setUp({ startMs: 50, endMs: 2_000 });
    const seen = say("Ninety five.");
    await context.pass(100);
    speaker.cancel();
    expect(synthesis.cancel).toHaveBeenCalledTimes(1);
    await context.pass(3_000);
    expect(seen.outcomes).toEqual([ok("cancelled")]);
  });

  it("sounds an alert's tone before the device's words, and starts only once", async () => {
    const { context, spoken, say } = setUp({ startMs: 50, endMs: 500 });
    const seen = say("MAP under seventy.", "low");
    await context.pass(100);
    expect(context.played).toHaveLength(1);
    expect(spoken).toEqual([]);
    await context.pass(2_000);
    expect(spoken).toHaveLength(1);
    expect(seen).toEqual({ starts: 1, outcomes: [ok("ended")] });
  });

  it("sounds a tone without words, whether or not there is a voice", async () => {
    const { context, spoken, say } = setUp("nothing", []);
    const seen = say("", "low");
    await context.pass(1_000);
    expect(context.played).toHaveLength(1);
    expect(spoken).toEqual([]);
    expect(seen).toEqual({ starts: 1, outcomes: [ok("ended")] });
  });

  it("says the words where the page's own sound is blocked, and that the tone was missing", async () => {
    const { context, spoken, say } = setUp({ startMs: 50, endMs: 500 });
    context.blocked = true;
    const seen = say("MAP under seventy.", "low");
    await context.pass(2_000);
    expect(spoken).toHaveLength(1);
    expect(seen).toEqual({ starts: 1, outcomes: [fail({ kind: "audio-blocked" })] });
  });

  it.each([
    [{}, 1, 1],
    [{ pace: 0.8, gainDb: -6 }, 0.8, 0.501],
    [{ pace: 7, gainDb: 6 }, 1.5, 1], // no device is louder than its loudest
    [{ pace: NaN, gainDb: NaN }, 1, 1],
  ])("asks the device for %j as rate %d and volume %d", async (manner, rate, volume) => {
    const { context, spoken, say } = setUp({ startMs: 50, endMs: 500 });
    say("Ninety five.", undefined, manner);
    await context.pass(1_000);
    expect(spoken[0]!.rate).toBeCloseTo(rate, 3);
    expect(spoken[0]!.volume).toBeCloseTo(volume, 3);
  });

  it("says no words when it was cancelled during the tone", async () => {
    const { context, speaker, spoken, say } = setUp({ startMs: 50, endMs: 500 });
    const seen = say("MAP under seventy.", "low");
    await context.pass(100);
    speaker.cancel();
    await context.pass(2_000);
    expect(spoken).toEqual([]);
    expect(seen.outcomes).toEqual([ok("cancelled")]);
  });

  it("settles at disposal and refuses what comes after", async () => {
    const { context, speaker, say } = setUp({ startMs: 50, endMs: 500 });
    const seen = say("Ninety five.");
    await context.pass(100);
    speaker.dispose();
    const later = say("Affirm.");
    await context.pass(100);
    const disposed = fail({ kind: "disposed" });
    expect([...seen.outcomes, ...later.outcomes]).toEqual([disposed, disposed]);
  });
});
