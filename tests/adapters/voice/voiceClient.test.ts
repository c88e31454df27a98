import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { fail } from "../../../src/core/result.ts";
import { createVoiceClient } from "../../../src/adapters/voice/voiceClient.ts";
import { answerAtOnce, fakeWorkers } from "./fakeWorker.ts";

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const URL = "/voice/flite.wasm";
const USUAL = { pace: 1 };

/** What a promise came to, once all timers due within the time have run. */
async function after<T>(ms: number, promise: Promise<T>): Promise<T> {
  await vi.advanceTimersByTimeAsync(ms);
  return Promise.race([promise, Promise.reject(new Error(`not settled after ${ms} ms`))]);
}

describe("the voice worker", () => {
  it("is not started before it is needed", () => {
    const workers = fakeWorkers();
    createVoiceClient(workers.makeWorker, URL);
    expect(workers.made).toBe(0);
  });

  it("loads once, from the given place, for any number of requests", async () => {
    const workers = fakeWorkers();
    const voice = createVoiceClient(workers.makeWorker, URL);
    await after(
      10,
      Promise.all([
        voice.load(),
        voice.load(),
        voice.synthesise("Affirm.", USUAL),
        voice.synthesise("Negative.", USUAL),
      ]),
    );
    expect(workers.asked.map(({ request }) => (request.op === "load" ? request.wasmUrl : request.text))).toEqual([
      URL,
      "Affirm.",
      "Negative.",
    ]);
  });

  it("matches answers by request when they come out of order", async () => {
    const workers = fakeWorkers((request) => {
      const met = answerAtOnce(request);
      return typeof met === "object" && request.op === "synthesise" && request.text === "Slow."
        ? { ...met, afterMs: 50 }
        : met;
    });
    const voice = createVoiceClient(workers.makeWorker, URL);
    const [slow, quick] = await after(
      100,
      Promise.all([voice.synthesise("Slow.", USUAL), voice.synthesise("Much quicker.", USUAL)]),
    );
    expect(slow.ok && slow.value.pcm[0]).toBeCloseTo(0.005);
    expect(quick.ok && quick.value.pcm[0]).toBeCloseTo(0.013);
  });

  it("is restarted when it dies, and asked once more", async () => {
    const workers = fakeWorkers((request, worker) =>
      request.op === "synthesise" && worker === 0 ? "dies" : answerAtOnce(request),
    );
    const said = await after(100, createVoiceClient(workers.makeWorker, URL).synthesise("Affirm.", USUAL));
    expect(said.ok).toBe(true);
    expect(workers.made).toBe(2);
    expect(workers.terminated).toBe(1);
  });

  it("is given up after dying twice, and tried again at the next request", async () => {
    const workers = fakeWorkers((request, worker) =>
      request.op === "synthesise" && worker < 2 ? "dies" : answerAtOnce(request),
    );
    const voice = createVoiceClient(workers.makeWorker, URL);
    expect(await after(100, voice.synthesise("Affirm.", USUAL))).toEqual(
      fail({ kind: "worker-died", detail: "out of memory" }),
    );
    expect((await after(100, voice.synthesise("Affirm.", USUAL))).ok).toBe(true);
  });

  it("settles by a time limit when it never answers, and is terminated", async () => {
    const workers = fakeWorkers((request) => (request.op === "synthesise" ? "silent" : answerAtOnce(request)));
    const said = await after(5_000, createVoiceClient(workers.makeWorker, URL).synthesise("Affirm.", USUAL));
    expect(said).toEqual(fail({ kind: "timed-out", afterMs: 4_000 }));
    expect(workers.terminated).toBe(1);
  });

  it("tells why it could not load, and loads when asked again", async () => {
    const missing = { kind: "load-failed", asset: URL, detail: "status 404" } as const;
    let loads = 0;
    const workers = fakeWorkers((request) =>
      request.op === "load" && loads++ === 0 ? { afterMs: 0, result: fail(missing) } : answerAtOnce(request),
    );
    const voice = createVoiceClient(workers.makeWorker, URL);
    expect(await after(10, voice.load())).toEqual(fail(missing));
    expect((await after(10, voice.load())).ok).toBe(true);
  });

  it("settles everything at disposal, and refuses what comes after", async () => {
    const workers = fakeWorkers(() => "silent");
    const voice = createVoiceClient(workers.makeWorker, URL);
    const [loading, saying] = [voice.load(), voice.synthesise("Affirm.", USUAL)];
    voice.dispose();
    const disposed = fail({ kind: "disposed" });
    expect(await after(0, Promise.all([loading, saying, voice.synthesise("Negative.", USUAL)]))).toEqual([
      disposed,
      disposed,
      disposed,
    ]);
    expect(workers.made).toBe(1);
    expect(workers.terminated).toBe(1);
  });

  it("settles when a worker cannot even be made", async () => {
    const voice = createVoiceClient(() => {
      throw new Error("workers are not allowed here");
    }, URL);
    expect(await after(0, voice.load())).toMatchObject({ ok: false, error: { kind: "worker-died" } });
  });
});
