import { afterEach, describe, expect, test } from "vitest";
import { createListenerHost, type GraphName, type LoadedListener } from "../../../src/adapters/speech/listenerHost.ts";
import type { FromListener, ToListener } from "../../../src/adapters/speech/listenerMessages.ts";
import { fail, ok } from "../../../src/core/result.ts";
import type { FrameJudge } from "../../../src/listener/vadTrim.ts";

const ASSETS = { runtime: "r", network: "n", vad: "v" };
const LANGUAGE = { sources: {}, dictionaryText: "" };
const RATE_HZ = 48_000;

const judge: FrameJudge = {
  judge: (frame) => Promise.resolve(frame.some((x) => Math.abs(x) > 0.1) ? 0.95 : 0.02),
  reset: () => undefined,
  another: () => judge,
};

const loadedWith = (listen: LoadedListener["listen"], prepare = (_: GraphName): void => undefined): LoadedListener => ({
  prepare,
  vad: judge,
  listen,
});

const ports: MessagePort[] = [];
afterEach(() => {
  for (const port of ports.splice(0)) port.close();
});

/** A host, what it posted, and a way to wait for a message. */
function setUp(load: Parameters<typeof createListenerHost>[0]["load"]) {
  const posted: FromListener[] = [];
  const waiting: (() => void)[] = [];
  const receive = createListenerHost({
    load,
    post: (message) => {
      posted.push(message);
      for (const wake of waiting.splice(0)) wake();
    },
    nowMs: () => 5_000_000,
  });
  const until = async (found: (message: FromListener) => boolean): Promise<FromListener> => {
    for (;;) {
      const message = posted.find(found);
      if (message !== undefined) return message;
      await new Promise<void>((resolve) => waiting.push(resolve));
    }
  };
  const speak = (receiver: (message: ToListener) => void): void => {
    const { port1, port2 } = new MessageChannel();
    ports.push(port1, port2);
    receiver({ op: "sound", port: port2, rateHz: RATE_HZ });
    // A second of a 300 Hz tone at 48 kHz between seconds of background.
    const sound = Float32Array.from({ length: 3 * RATE_HZ }, (_, i) => {
      const loud = i >= RATE_HZ && i < 2 * RATE_HZ ? 0.8 : 0.01;
      return loud * Math.sin((2 * Math.PI * 300 * i) / RATE_HZ);
    });
    for (let at = 0; at < sound.length; at += 1024) port1.postMessage(sound.slice(at, at + 1024));
  };
  return { posted, receive, until, speak };
}

const isHeard = (message: FromListener): boolean => message.op === "event" && message.event.kind === "heard";

describe("the host in the worker", () => {
  test("loads, resamples, hears, and answers with the grammar that holds then", async () => {
    const states: string[] = [];
    const lengths: number[] = [];
    const { receive, until, speak } = setUp(() =>
      Promise.resolve(
        ok(
          loadedWith((state, pcm) => {
            states.push(state);
            lengths.push(pcm.length / 16_000);
            return Promise.resolve({ candidates: [{ words: "status", score: -1 }], free: { score: -1, phones: 6 } });
          }),
        ),
      ),
    );
    receive({ op: "load", assets: ASSETS, language: LANGUAGE });
    await until(({ op }) => op === "ready");
    receive({ op: "grammar", state: "asked" });
    speak(receive);
    expect(await until(isHeard)).toMatchObject({
      event: {
        utterance: { by: "listener", candidates: [{ words: "status", score: -1 }], free: { score: -1, phones: 6 } },
      },
    });
    expect(states).toEqual(["asked"]);
    expect(lengths[0]).toBeCloseTo(1.6, 1);
  });

  test("in called listening hears with that grammar in every state, openly, and has it ready before", async () => {
    const graphs: string[] = [];
    const prepared: string[] = [];
    const { receive, until, speak } = setUp(() =>
      Promise.resolve(
        ok(
          loadedWith(
            (graph) => {
              graphs.push(graph);
              return Promise.resolve({ candidates: [] });
            },
            (graph) => void prepared.push(graph),
          ),
        ),
      ),
    );
    receive({ op: "load", assets: ASSETS, language: LANGUAGE });
    await until(({ op }) => op === "ready");
    receive({ op: "mode", mode: "called" });
    receive({ op: "grammar", state: "asked" });
    expect(prepared).toEqual(["open", "called"]);
    speak(receive);
    await until(isHeard);
    expect(graphs).toEqual(["called"]);
  });

  test("a grammar that cannot be made ready is told", async () => {
    const { receive, until } = setUp(() =>
      Promise.resolve(
        ok(
          loadedWith(
            () => Promise.resolve({ candidates: [] }),
            (graph) => {
              if (graph === "called") throw new Error("no such rule");
            },
          ),
        ),
      ),
    );
    receive({ op: "load", assets: ASSETS, language: LANGUAGE });
    await until(({ op }) => op === "ready");
    receive({ op: "mode", mode: "called" });
    expect(await until(({ op }) => op === "failed")).toMatchObject({ error: { kind: "worker-died" } });
  });

  test("answers a ping while it loads", () => {
    const { receive, posted } = setUp(() => new Promise(() => undefined));
    receive({ op: "load", assets: ASSETS, language: LANGUAGE });
    receive({ op: "ping" });
    expect(posted).toEqual([{ op: "pong" }]);
  });

  test("keeps the mode that was set before the sound came", async () => {
    const { receive, until, posted, speak } = setUp(() =>
      Promise.resolve(ok(loadedWith(() => Promise.resolve({ candidates: [] })))),
    );
    receive({ op: "load", assets: ASSETS, language: LANGUAGE });
    await until(({ op }) => op === "ready");
    receive({ op: "mode", mode: "held" });
    speak(receive);
    // In held mode nothing but levels may come: wait for most of the sound's.
    await until(() => posted.filter((m) => m.op === "event" && m.event.kind === "level").length >= 14);
    expect(posted.some((m) => m.op === "event" && m.event.kind !== "level")).toBe(false);
  });

  test.each([
    [
      "a load that fails",
      () => Promise.resolve(fail({ kind: "load-failed", asset: "n", detail: "404" } as const)),
      { kind: "load-failed", asset: "n", detail: "404" },
    ],
    ["a load that throws", () => Promise.reject(new Error("odd")), { kind: "worker-died", detail: "Error: odd" }],
  ])("%s is told", async (_, load, error) => {
    const { receive, until } = setUp(load);
    receive({ op: "load", assets: ASSETS, language: LANGUAGE });
    expect(await until(({ op }) => op === "failed")).toEqual({ op: "failed", error });
  });

  test("a listener that fails on an utterance is told", async () => {
    const { receive, until, speak } = setUp(() =>
      Promise.resolve(ok(loadedWith(() => Promise.reject(new Error("out of memory"))))),
    );
    receive({ op: "load", assets: ASSETS, language: LANGUAGE });
    await until(({ op }) => op === "ready");
    speak(receive);
    expect(await until(({ op }) => op === "failed")).toEqual({
      op: "failed",
      error: { kind: "worker-died", detail: "out of memory" },
    });
  });
});
