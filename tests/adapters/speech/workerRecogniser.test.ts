import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import type { Microphone } from "../../../src/adapters/speech/microphone.ts";
import { createWorkerRecogniser } from "../../../src/adapters/speech/workerRecogniser.ts";
import type { HearingEvent, Recogniser, RecogniserError } from "../../../src/app/ports.ts";
import { fail, ok, type Result } from "../../../src/core/result.ts";
import { FakeListenerWorker } from "./fakeListenerWorker.ts";

const LEVEL: HearingEvent = { kind: "level", levelDb: -30, noiseDb: -60, inSpeech: false };
const LIMITS = {
  loadTimeoutMs: 10_000,
  startTimeoutMs: 20_000,
  answerTimeoutMs: 3_000,
  pingEveryMs: 1_000,
  soundMissingMs: 3_000,
  restartAfterMs: [0, 1_000],
  microphoneRetryMs: 2_000,
};

class FakeMicrophone implements Microphone {
  readonly rateHz = 48_000;
  connected = 0;
  resumed = 0;
  stopped = false;
  readonly lose: () => void;
  constructor(lose: () => void) {
    this.lose = lose;
  }
  connect(): void {
    this.connected++;
  }
  resume(): void {
    this.resumed++;
  }
  stop(): void {
    this.stopped = true;
  }
}

type Opened = Result<Microphone, RecogniserError>;

let workers: FakeListenerWorker[];
let microphones: FakeMicrophone[];
/** What the next question for the microphone is answered with; undefined: a microphone. */
let answers: (Opened | Promise<Opened> | undefined)[];
let events: HearingEvent[];
let recogniser: Recogniser;

const worker = (): FakeListenerWorker => workers.at(-1)!;
const microphone = (): FakeMicrophone => microphones.at(-1)!;
const told = (): string[] =>
  events.filter(({ kind }) => kind !== "level").map((e) => (e.kind === "fault" ? `fault ${e.error.kind}` : e.kind));

beforeEach(() => {
  vi.useFakeTimers();
  workers = [];
  microphones = [];
  answers = [];
  events = [];
  recogniser = createWorkerRecogniser({
    makeWorker: () => {
      workers.push(new FakeListenerWorker());
      return worker();
    },
    openMicrophone: async (onLost) => {
      const answer = await answers.shift();
      if (answer !== undefined) return answer;
      microphones.push(new FakeMicrophone(onLost));
      return ok(microphone());
    },
    assets: { runtime: "r", network: "n", vad: "v" },
    language: { sources: { case: "…" }, dictionaryText: "…" },
    limits: LIMITS,
  });
  recogniser.onEvent((event) => events.push(event));
});
afterEach(() => {
  recogniser.dispose();
  expect(vi.getTimerCount()).toBe(0); // nothing is left behind, in any of the tests
  vi.useRealTimers();
});

async function listening(): Promise<void> {
  const started = recogniser.start();
  await vi.advanceTimersByTimeAsync(0);
  worker().say({ op: "ready" });
  expect(await started).toEqual(ok(undefined));
}

/** Time passes while sound arrives. */
async function pass(ms: number): Promise<void> {
  for (let left = ms; left > 0; left -= 200) {
    worker().say({ op: "event", event: LEVEL });
    await vi.advanceTimersByTimeAsync(Math.min(200, left));
  }
}

describe("start settles", () => {
  test("when worker and microphone are there, whichever comes last", async () => {
    expect(worker().ops()).toEqual(["load"]); // loading does not wait for start
    await listening();
    expect(worker().ops()).toEqual(["load", "grammar", "mode", "speaking", "sound"]);
    expect(microphone().connected).toBe(1);
    expect(told()).toEqual(["listening"]);
  });

  test("when the worker was ready long before", async () => {
    worker().say({ op: "ready" });
    expect(await recogniser.start()).toEqual(ok(undefined));
    expect(microphone().connected).toBe(1);
  });

  test.each<[string, RecogniserError]>([
    ["the user says no", { kind: "microphone-refused" }],
    ["there is no microphone", { kind: "microphone-lost" }],
    ["the browser cannot", { kind: "not-supported", detail: "no AudioWorklet" }],
  ])("when %s", async (_, error) => {
    answers.push(fail(error));
    expect(await recogniser.start()).toEqual(fail(error));
    expect(told()).toEqual([]);
  });

  test("when opening the microphone throws", async () => {
    answers.push(Promise.reject(new Error("odd")));
    expect(await recogniser.start()).toEqual(fail({ kind: "not-supported", detail: "Error: odd" }));
  });

  test("when the worker cannot load, and the microphone is released", async () => {
    const started = recogniser.start();
    await vi.advanceTimersByTimeAsync(0);
    const error = { kind: "load-failed", asset: "n", detail: "404" } as const;
    worker().say({ op: "failed", error });
    expect(await started).toEqual(fail(error));
    expect(worker().terminated).toBe(true);
    expect(microphone().stopped).toBe(true);
  });

  test("when the worker crashes while loading", async () => {
    const started = recogniser.start();
    worker().crash("bad program");
    expect(await started).toEqual(fail({ kind: "worker-died", detail: "bad program" }));
  });

  test("when the worker never gets ready", async () => {
    const started = recogniser.start();
    await vi.advanceTimersByTimeAsync(10_000);
    expect(await started).toEqual(fail({ kind: "timed-out", afterMs: 10_000 }));
  });

  test("when nobody answers the browser's question, and a late yes is turned off again", async () => {
    let answer: (opened: Opened) => void = () => undefined;
    answers.push(new Promise((resolve) => (answer = resolve)));
    worker().say({ op: "ready" });
    const started = recogniser.start();
    await pass(20_000);
    expect(await started).toEqual(fail({ kind: "timed-out", afterMs: 20_000 }));
    const late = new FakeMicrophone(() => undefined);
    answer(ok(late));
    await vi.advanceTimersByTimeAsync(0);
    expect(late.stopped).toBe(true);
  });

  test.each([
    ["stop", () => recogniser.stop()],
    ["dispose", () => recogniser.dispose()],
  ])("when %s comes first", async (_, act) => {
    const started = recogniser.start();
    act();
    expect(await started).toEqual(fail({ kind: "disposed" }));
  });

  test("twice at once with one microphone", async () => {
    worker().say({ op: "ready" });
    expect(await Promise.all([recogniser.start(), recogniser.start()])).toEqual([ok(undefined), ok(undefined)]);
    expect(microphones).toHaveLength(1);
  });

  test("with an error after disposal", async () => {
    recogniser.dispose();
    expect(await recogniser.start()).toEqual(fail({ kind: "disposed" }));
    expect(worker().terminated).toBe(true);
  });

  test("again after a failed load, with a new worker", async () => {
    worker().crash("bad program");
    expect(workers).toHaveLength(1);
    await listening();
    expect(workers).toHaveLength(2);
  });
});

describe("while listening", () => {
  beforeEach(listening);

  test("what the worker hears is passed on, until stop", () => {
    const heard: HearingEvent = { kind: "heard", utterance: { by: "listener", candidates: [], endedAtMs: 1 } };
    worker().say({ op: "event", event: heard });
    expect(events).toContainEqual(heard);
    recogniser.stop();
    worker().say({ op: "event", event: heard });
    expect(told()).toEqual(["listening", "heard", "stopped"]);
    expect(microphone().stopped).toBe(true);
  });

  test("settings reach the worker, and the next worker too", async () => {
    recogniser.useGrammar("asked");
    recogniser.setMode("held");
    recogniser.setSpeaking(true);
    recogniser.hold(true);
    expect(worker().ops().slice(-4)).toEqual(["grammar", "mode", "speaking", "hold"]);
    worker().crash("out of memory");
    await vi.advanceTimersByTimeAsync(0);
    worker().say({ op: "ready" });
    expect(worker().got).toEqual([
      expect.objectContaining({ op: "load" }),
      { op: "grammar", state: "asked" },
      { op: "mode", mode: "held" },
      { op: "speaking", speaking: true },
      expect.objectContaining({ op: "sound", rateHz: 48_000 }),
    ]);
    expect(told()).toEqual(["listening", "fault worker-died", "recovered"]);
    expect(microphone().connected).toBe(2);
  });

  test.each([
    ["a crash", (w: FakeListenerWorker) => w.crash("boom"), "worker-died"],
    ["an unreadable message", (w: FakeListenerWorker) => w.sendUnreadable(), "worker-died"],
    [
      "a model that failed",
      (w: FakeListenerWorker) => w.say({ op: "failed", error: { kind: "worker-died", detail: "model" } }),
      "worker-died",
    ],
  ])("%s ends the speech that was under way", async (_, breakIt, kind) => {
    worker().say({ op: "event", event: { kind: "speechStarted", atMs: 1 } });
    breakIt(worker());
    expect(told()).toEqual(["listening", "speechStarted", "speechEnded", `fault ${kind}`]);
    await vi.advanceTimersByTimeAsync(0);
  });

  test("a worker that hangs is replaced", async () => {
    await pass(5_000);
    worker().answering = false;
    await vi.advanceTimersByTimeAsync(4_100);
    expect(workers).toHaveLength(2);
    expect(told().slice(0, 2)).toEqual(["listening", "fault timed-out"]);
  });

  test("a worker that cannot be replaced ends listening", async () => {
    for (let i = 0; i < 3; i++) {
      worker().crash("again");
      await vi.advanceTimersByTimeAsync(1_000);
    }
    expect(workers).toHaveLength(3);
    expect(told()).toEqual(["listening", "fault worker-died", "fault worker-died", "stopped"]);
    expect(microphone().stopped).toBe(true);
  });

  test("a lost microphone is asked for until it is back", async () => {
    const first = microphone();
    answers.push(fail({ kind: "microphone-lost" }), undefined);
    first.lose();
    expect(first.stopped).toBe(true);
    await vi.advanceTimersByTimeAsync(4_000);
    expect(microphones).toHaveLength(2);
    expect(microphone().connected).toBe(1);
    expect(told()).toEqual(["listening", "fault microphone-lost", "recovered"]);
  });

  test("a microphone that is refused the second time ends listening", async () => {
    answers.push(fail({ kind: "microphone-refused" }));
    microphone().lose();
    await vi.advanceTimersByTimeAsync(2_000);
    expect(told()).toEqual(["listening", "fault microphone-lost", "fault microphone-refused", "stopped"]);
  });

  test("no sound at all is a fault, once, and the context is woken", async () => {
    await pass(2_000);
    await vi.advanceTimersByTimeAsync(9_000);
    expect(told()).toEqual(["listening", "fault microphone-silent"]);
    expect(microphone().resumed).toBeGreaterThan(1);
    worker().say({ op: "event", event: LEVEL });
    expect(told()).toEqual(["listening", "fault microphone-silent", "recovered"]);
  });

  test("a dead microphone is a fault until there is sound", async () => {
    worker().say({ op: "microphone", silentForMs: 3_000 });
    await pass(5_000); // levels go on, of nothing
    expect(told()).toEqual(["listening", "fault microphone-silent"]);
    worker().say({ op: "microphone", silentForMs: undefined });
    expect(told().at(-1)).toBe("recovered");
  });

  test("a voice too faint to be trusted is a fault at the third utterance, until one is not", () => {
    const speak = (levelDb: number): void => {
      const shape = { lengthMs: 1_100, levelDb, noiseDb: -90, clipped: false };
      const utterance = { by: "listener", candidates: [], shape, endedAtMs: 0 } as const;
      worker().say({ op: "event", event: { kind: "heard", utterance } });
    };
    const faults = (): string[] => told().filter((kind) => kind !== "heard" && kind !== "listening");
    for (const levelDb of [-65, -65, -30, -65, -65]) speak(levelDb);
    expect(faults()).toEqual([]);
    speak(-65);
    speak(-65);
    expect(faults()).toEqual(["fault voice-faint"]);
    speak(-30);
    expect(faults()).toEqual(["fault voice-faint", "recovered"]);
  });

  test("recovery is told only when everything works", async () => {
    worker().say({ op: "microphone", silentForMs: 3_000 });
    worker().crash("boom");
    await vi.advanceTimersByTimeAsync(0);
    worker().say({ op: "ready" });
    expect(told()).toEqual(["listening", "fault microphone-silent", "fault worker-died"]);
    worker().say({ op: "event", event: LEVEL });
    expect(told().at(-1)).toBe("recovered");
  });

  test("nobody hears after unsubscribing", () => {
    const mine = vi.fn();
    recogniser.onEvent(mine)();
    worker().say({ op: "event", event: LEVEL });
    expect(mine).not.toHaveBeenCalled();
  });

  test("it starts again after stop, with the same worker", async () => {
    recogniser.stop();
    expect(await recogniser.start()).toEqual(ok(undefined));
    expect(workers).toHaveLength(1);
    expect(microphones).toHaveLength(2);
    expect(told()).toEqual(["listening", "stopped", "listening"]);
  });
});
