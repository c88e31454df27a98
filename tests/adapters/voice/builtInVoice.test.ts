import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { fail, ok } from "../../../src/core/result.ts";
import type { Spoken } from "../../../src/app/ports.ts";
import { createBuiltInVoice } from "../../../src/adapters/voice/builtInVoice.ts";
import { renderMark } from "../../../src/adapters/voice/marks.ts";
import { renderTone } from "../../../src/adapters/voice/tones.ts";
import { FakeAudioContext } from "./fakeAudio.ts";
import { answerAtOnce, fakeWorkers, PHRASE_MS } from "./fakeWorker.ts";

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

function setUp(workers = fakeWorkers()) {
  const contexts = [new FakeAudioContext(), new FakeAudioContext()] as const;
  const [context] = contexts;
  let opened = 0;
  const page = new EventTarget();
  const speaker = createBuiltInVoice({
    wasmUrl: "/voice/flite.wasm",
    makeWorker: workers.makeWorker,
    makeContext: () => contexts[opened++] as unknown as AudioContext,
    page,
  });
  /** Says something and keeps when it started and how it settled. */
  const say = (text: string, tone?: "high" | "medium" | "low", manner: Omit<Spoken, "text" | "tone"> = {}) => {
    const seen = { startedAtS: undefined as number | undefined, starts: 0, outcomes: [] as unknown[], settledAtS: 0 };
    void speaker
      .say({ text, ...manner, ...(tone ? { tone } : {}) }, () => {
        seen.starts++;
        seen.startedAtS = context.currentTime;
      })
      .then((outcome) => {
        seen.outcomes.push(outcome);
        seen.settledAtS = context.currentTime;
      });
    return seen;
  };
  return { context, contexts, page, speaker, workers, say };
}

describe("saying", () => {
  it("starts with the first phrase, plays them in order with pauses, and settles at the end of the last", async () => {
    const { context, workers, say } = setUp();
    const seen = say("Ninety five. Two minutes old.");
    await context.pass(3_000);
    expect(workers.texts).toEqual(["Ninety five.", "Two minutes old."]);
    const [first, second] = context.played;
    expect(first!.pcm[0]).toBeCloseTo(0.012);
    expect(second!.pcm[0]).toBeCloseTo(0.016);
    expect(second!.fromS - first!.untilS).toBeCloseTo(0.15);
    expect(seen.starts).toBe(1);
    expect(seen.startedAtS).toBeLessThanOrEqual(first!.fromS);
    expect(seen.outcomes).toEqual([ok("ended")]);
    expect(seen.settledAtS).toBeGreaterThanOrEqual(second!.untilS);
    expect(seen.settledAtS - second!.untilS).toBeLessThan(0.03);
  });

  it("sounds the first phrase while the second is still being made", async () => {
    const workers = fakeWorkers((request) => {
      const met = answerAtOnce(request);
      return request.op === "synthesise" && request.text.startsWith("Two") && typeof met === "object"
        ? { ...met, afterMs: 1_000 }
        : met;
    });
    const { context, say } = setUp(workers);
    say("Ninety five. Two minutes old.");
    await context.pass(500);
    expect(context.played).toHaveLength(1);
    await context.pass(1_000);
    expect(context.played).toHaveLength(2);
    expect(context.played[1]!.fromS).toBeGreaterThanOrEqual(1);
  });

  it("ends without a start when there is nothing to say", async () => {
    const { context, say } = setUp();
    const seen = say("…");
    await context.pass(100);
    expect(seen).toMatchObject({ starts: 0, outcomes: [ok("ended")] });
  });

  it("is one utterance at a time: the next cancels the one that sounds", async () => {
    const { context, say } = setUp();
    const first = say("Ninety five.");
    await context.pass(200);
    const second = say("Negative.");
    await context.pass(2_000);
    expect(first.outcomes).toEqual([ok("cancelled")]);
    expect(second.outcomes).toEqual([ok("ended")]);
    expect(context.played[0]!.untilS).toBeLessThan(context.played[1]!.fromS + 0.011);
  });

  it("reports a start callback that throws, and falls silent", async () => {
    const { context, speaker } = setUp();
    const saying = speaker.say({ text: "Ninety five." }, () => {
      throw new Error("from the caller");
    });
    await context.pass(100);
    expect(await saying).toMatchObject({ ok: false, error: { detail: "Error: from the caller" } });
    expect(context.silentFromS).toBeLessThan(0.1);
  });
});

describe("cancelling", () => {
  it("is silent within 10 ms, and settles once", async () => {
    const { context, speaker, say } = setUp();
    const seen = say("Ninety five. Two minutes old.", "high");
    await context.pass(300);
    const cancelledAtS = context.currentTime;
    speaker.cancel();
    speaker.cancel();
    await context.pass(3_000);
    expect(context.silentFromS).toBeLessThanOrEqual(cancelledAtS + 0.01);
    expect(context.gainFalls.every((atS) => atS <= cancelledAtS + 0.01)).toBe(true);
    expect(seen.outcomes).toEqual([ok("cancelled")]);
  });

  it.each([0, 5, 20])("keeps words from sounding that were still being made %i ms after the call", async (afterMs) => {
    const workers = fakeWorkers((request) => {
      const met = answerAtOnce(request);
      return typeof met === "object" ? { ...met, afterMs: 50 } : met;
    });
    const { context, speaker, say } = setUp(workers);
    const seen = say("Ninety five.");
    await context.pass(afterMs);
    speaker.cancel();
    await context.pass(2_000);
    expect(context.played).toEqual([]);
    expect(seen).toMatchObject({ starts: 0, outcomes: [ok("cancelled")] });
  });
});

describe("an alert", () => {
  it("sounds its tone first, then its words", async () => {
    const { context, say } = setUp();
    const seen = say("MAP under seventy.", "medium");
    await context.pass(3_000);
    expect(context.played[0]!.pcm).toEqual(renderTone("medium", 48_000));
    expect(context.played[1]!.fromS - context.played[0]!.untilS).toBeCloseTo(0.12);
    expect(seen).toMatchObject({ starts: 1, outcomes: [ok("ended")] });
    expect(seen.startedAtS).toBeLessThan(0.02);
  });

  it("sounds its tone at once while the voice is still loading", async () => {
    const workers = fakeWorkers((request) => {
      const met = answerAtOnce(request);
      return request.op === "load" && typeof met === "object" ? { ...met, afterMs: 5_000 } : met;
    });
    const { context, say } = setUp(workers);
    const seen = say("MAP under seventy.", "high");
    await context.pass(100);
    expect(context.played.map((sound) => sound.pcm.length)).toEqual([renderTone("high", 48_000).length]);
    await context.pass(7_000);
    expect(context.played).toHaveLength(2);
    expect(seen.outcomes).toEqual([ok("ended")]);
  });

  it("sounds its tone to the end when the voice has failed, and then says so", async () => {
    const missing = { kind: "load-failed", asset: "/voice/flite.wasm", detail: "status 404" } as const;
    const { context, say } = setUp(fakeWorkers(() => ({ afterMs: 0, result: fail(missing) })));
    const seen = say("MAP under seventy.", "high");
    await context.pass(4_000);
    const [tone] = context.played;
    expect(tone!.untilS - tone!.fromS).toBeCloseTo(renderTone("high", 48_000).length / 48_000);
    expect(seen.outcomes).toEqual([fail(missing)]);
    expect(seen.settledAtS).toBeGreaterThanOrEqual(tone!.untilS);
  });
});

describe("a tone without words", () => {
  it.each([{}, { withinMs: 3_900 }])("is all that sounds, and needs no voice (%j)", async (manner) => {
    const { context, workers, say } = setUp(fakeWorkers(() => "silent"));
    const seen = say("", "medium", manner);
    await context.pass(1_500);
    expect(context.played.map(({ pcm }) => pcm)).toEqual([renderTone("medium", 48_000)]);
    expect(seen).toMatchObject({ starts: 1, outcomes: [ok("ended")] });
    expect(workers.made).toBe(0);
  });
});

describe("how it is said", () => {
  it("hands the pace to the voice, within its limits, and leaves the tone as it is", async () => {
    const { context, workers, say } = setUp();
    for (const pace of [undefined, 0.8, 0, 9, NaN]) {
      say("Ninety five.", "low", pace === undefined ? {} : { pace });
      await context.pass(3_000);
    }
    const paces = workers.asked.flatMap(({ request }) => (request.op === "synthesise" ? [request.manner.pace] : []));
    expect(paces).toEqual([1, 0.8, 0.6, 1.5, 1]);
    const tones = context.played.filter((_played, i) => i % 2 === 0);
    expect(tones.map(({ pcm }) => pcm)).toEqual(Array.from({ length: 5 }, () => renderTone("low", 48_000)));
  });

  it.each([
    [undefined, 1],
    [-6, 0.501],
    [3, 1.413],
    [-90, 0.1],
    [NaN, 1],
    [90, 0.95 / 0.5], // no more than a tone can be without being cut off
  ])("plays a tone at %s dB times %d", async (gainDb, times) => {
    const { context, say } = setUp();
    say("", "low", gainDb === undefined ? {} : { gainDb });
    await context.pass(1_000);
    expect(context.played[0]!.through).toBeCloseTo(times, 3);
  });

  it("shapes words for noise, and no tone or mark", async () => {
    const { context, speaker, say } = setUp();
    say("Ninety five.", "low");
    speaker.mark("heard");
    await context.pass(2_000);
    const through = context.played.map((played) => (played.through === "filter" ? "shaped" : "plain"));
    expect(through.toSorted()).toEqual(["plain", "plain", "shaped"]);
    expect(context.played.find((played) => played.through === "filter")!.pcm[0]).toBeCloseTo(0.012);
  });
});

describe("failing", () => {
  it.each([
    ["dies each time", "dies", { kind: "worker-died", detail: "out of memory" }, 2],
    ["never answers", "silent", { kind: "timed-out", afterMs: 4_000 }, 1],
  ] as const)(
    "sounds the tone and says so when the worker %s, and says the next words",
    async (_how, met, error, died) => {
      const workers = fakeWorkers((request, worker) =>
        request.op === "synthesise" && worker < died ? met : answerAtOnce(request),
      );
      const { context, say } = setUp(workers);
      const seen = say("MAP under seventy.", "high");
      await context.pass(7_000);
      expect(context.played.map(({ pcm }) => pcm)).toEqual([renderTone("high", 48_000)]);
      expect(seen).toMatchObject({ starts: 1, outcomes: [fail(error)] });
      const next = say("Ninety five.");
      await context.pass(1_500);
      expect(next).toMatchObject({ starts: 1, outcomes: [ok("ended")] });
      expect(workers.made).toBe(died + 1);
    },
  );

  it("takes another sound device after one that took no more sound", async () => {
    const { contexts, say } = setUp();
    const [first] = contexts;
    await first.pass(60_000); // it has been in use for a while
    say("Ninety five.");
    await first.pass(50);
    first.deaf = true;
    await first.pass(PHRASE_MS + 2_000);
    expect(first.closed).toBe(true);
    const next = say("Ninety five.", "low");
    await contexts[1].pass(2_500);
    expect(next.outcomes).toEqual([ok("ended")]);
    expect(contexts[1].played).toHaveLength(2);
    expect(contexts[1].played[0]!.fromS).toBeLessThan(0.5);
  });

  it("settles by a time limit while the voice goes on loading for the next words", async () => {
    const workers = fakeWorkers((request) => {
      const met = answerAtOnce(request);
      return request.op === "load" && typeof met === "object" ? { ...met, afterMs: 20_000 } : met;
    });
    const { context, say } = setUp(workers);
    const late = say("Ninety five.");
    await context.pass(9_000);
    expect(late.outcomes).toEqual([fail({ kind: "timed-out", afterMs: 8_000 })]);
    await context.pass(12_000);
    const next = say("Affirm.");
    await context.pass(1_000);
    expect(next.outcomes).toEqual([ok("ended")]);
    expect(workers.made).toBe(1);
  });

  it("says so when the browser blocks sound, and works after a touch", async () => {
    const { context, page, say } = setUp();
    context.blocked = true;
    const seen = say("Ninety five.", "high");
    await context.pass(600);
    expect(seen).toMatchObject({ starts: 0, outcomes: [fail({ kind: "audio-blocked" })] });
    context.blocked = false;
    page.dispatchEvent(new Event("pointerdown"));
    expect(context.state).toBe("running");
    const next = say("Ninety five.");
    await context.pass(1_000);
    expect(next.outcomes).toEqual([ok("ended")]);
  });

  it("settles when the device stops taking sound", async () => {
    const { context, say } = setUp();
    const seen = say("Ninety five.");
    await context.pass(50);
    context.deaf = true;
    await context.pass(PHRASE_MS + 2_000);
    expect(seen.outcomes).toEqual([fail({ kind: "audio-blocked" })]);
  });

  it("settles at disposal, closes the device, and refuses what comes after", async () => {
    const { context, speaker, workers, say } = setUp();
    const seen = say("Ninety five.");
    await context.pass(100);
    speaker.dispose();
    const later = say("Affirm.");
    await context.pass(100);
    const disposed = fail({ kind: "disposed" });
    expect([...seen.outcomes, ...later.outcomes, await speaker.warmUp()]).toEqual([disposed, disposed, disposed]);
    expect(context.closed).toBe(true);
    expect(workers.terminated).toBe(1);
  });
});

describe("warming up", () => {
  it("loads the voice and opens the device without a sound", async () => {
    const { context, speaker, workers } = setUp();
    expect(workers.made).toBe(0);
    const warming = speaker.warmUp();
    await context.pass(50);
    expect(await warming).toEqual(ok(undefined));
    expect(workers.made).toBe(1);
    expect(context.played).toEqual([]);
  });

  it("loads the voice even where sound is blocked, and says that it is", async () => {
    const { context, speaker, workers } = setUp();
    context.blocked = true;
    const warming = speaker.warmUp();
    await context.pass(500);
    expect(await warming).toEqual(fail({ kind: "audio-blocked" }));
    expect(workers.asked).toHaveLength(1);
  });
});

describe("a mark", () => {
  it("sounds without a voice, beside what is being said", async () => {
    const { context, speaker, say } = setUp(fakeWorkers(() => "silent"));
    say("MAP under seventy.", "low");
    await context.pass(50);
    speaker.mark("heard");
    await context.pass(200);
    const [tone, mark] = context.played;
    expect(mark!.pcm).toEqual(renderMark("heard", 48_000));
    expect(mark!.fromS).toBeLessThan(tone!.untilS);
  });

  it("is left out, not put off, where sound is blocked", async () => {
    const { context, speaker } = setUp();
    context.blocked = true;
    speaker.mark("refused");
    await context.pass(500);
    context.blocked = false;
    await context.resume();
    await context.pass(500);
    expect(context.played).toEqual([]);
  });
});
