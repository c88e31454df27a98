import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { serviceFault, type Recognition, type SpeechService } from "../../../src/adapters/speech/speechService.ts";
import { createWebSpeechRecogniser } from "../../../src/adapters/speech/webSpeechRecogniser.ts";
import type { HearingEvent, Recogniser } from "../../../src/app/ports.ts";
import { fail, ok } from "../../../src/core/result.ts";

class FakeRecognition implements Recognition {
  lang = "";
  continuous = false;
  interimResults = true;
  maxAlternatives = 9;
  processLocally = false;
  onstart: Recognition["onstart"] = null;
  onend: Recognition["onend"] = null;
  onerror: Recognition["onerror"] = null;
  onresult: Recognition["onresult"] = null;
  onspeechstart: Recognition["onspeechstart"] = null;
  onspeechend: Recognition["onspeechend"] = null;
  calls: string[] = [];

  start(): void {
    this.calls.push("start");
  }
  stop(): void {
    this.calls.push("stop");
  }
  abort(): void {
    this.calls.push("abort");
  }
  fire(name: "onstart" | "onend" | "onspeechstart" | "onspeechend"): void {
    this[name]?.call(this as unknown as SpeechRecognition, new Event(name.slice(2)));
  }
  fail(error: SpeechRecognitionErrorEvent["error"]): void {
    this.onerror?.call(this as unknown as SpeechRecognition, { error } as SpeechRecognitionErrorEvent);
  }
  hear(transcript: string, isFinal = true): void {
    const results = [Object.assign([{ transcript, confidence: 0.9 }], { isFinal })];
    const event = { resultIndex: 0, results } as unknown as SpeechRecognitionEvent;
    this.onresult?.call(this as unknown as SpeechRecognition, event);
  }
}

let made: FakeRecognition[];
let events: HearingEvent[];
const last = (): FakeRecognition => made.at(-1)!;
const told = (): string[] => events.map((e) => (e.kind === "fault" ? `fault ${e.error.kind}` : e.kind));

function recogniserOf(options: { onDevice?: boolean; agreed?: boolean; make?: SpeechService["make"] }): Recogniser {
  const recogniser = createWebSpeechRecogniser(
    {
      make:
        "make" in options
          ? options.make
          : () => {
              made.push(new FakeRecognition());
              return last();
            },
      onDevice: () => Promise.resolve(options.onDevice ?? false),
    },
    { lang: "en-GB", audioMayLeaveDevice: options.agreed ?? false },
  );
  recogniser.onEvent((event) => events.push(event));
  return recogniser;
}

async function listening(options: Parameters<typeof recogniserOf>[0] = { onDevice: true }): Promise<Recogniser> {
  const recogniser = recogniserOf(options);
  const started = recogniser.start();
  await vi.advanceTimersByTimeAsync(0);
  last().fire("onstart");
  expect(await started).toEqual(ok(undefined));
  return recogniser;
}

beforeEach(() => {
  vi.useFakeTimers();
  made = [];
  events = [];
});
afterEach(() => vi.useRealTimers());

describe("start settles", () => {
  test("refused while the sound would leave the device and nobody agreed", async () => {
    const result = await recogniserOf({}).start();
    expect(result).toMatchObject({ ok: false, error: { kind: "not-supported" } });
    expect(made).toEqual([]);
  });

  test("with agreement, not claiming to stay on the device", async () => {
    await listening({ agreed: true });
    expect(last()).toMatchObject({ processLocally: false, lang: "en-GB", continuous: true, interimResults: false });
  });

  test("on the device, without asking, and bound to it", async () => {
    await listening({ onDevice: true });
    expect(last().processLocally).toBe(true);
  });

  test("where the browser has none", async () => {
    expect(await recogniserOf({ make: undefined }).start()).toMatchObject({ error: { kind: "not-supported" } });
  });

  test("when the browser throws", async () => {
    const recogniser = recogniserOf({
      onDevice: true,
      make: () => {
        const recognition = new FakeRecognition();
        recognition.start = () => {
          throw new Error("busy");
        };
        return recognition;
      },
    });
    expect(await recogniser.start()).toEqual(fail({ kind: "not-supported", detail: "busy" }));
  });

  test("when the user says no", async () => {
    const started = recogniserOf({ onDevice: true }).start();
    await vi.advanceTimersByTimeAsync(0);
    last().fail("not-allowed");
    expect(await started).toEqual(fail({ kind: "microphone-refused" }));
  });

  test("when it ends before it begins, when nothing happens, when stopped or disposed", async () => {
    const early = recogniserOf({ onDevice: true }).start();
    await vi.advanceTimersByTimeAsync(0);
    last().fire("onend");
    expect(await early).toMatchObject({ error: { kind: "not-supported" } });

    const never = recogniserOf({ onDevice: true }).start();
    await vi.advanceTimersByTimeAsync(60_000);
    expect(await never).toEqual(fail({ kind: "timed-out", afterMs: 60_000 }));

    for (const act of ["stop", "dispose"] as const) {
      const recogniser = recogniserOf({ onDevice: true });
      const started = recogniser.start();
      recogniser[act]();
      expect(await started).toEqual(fail({ kind: "disposed" }));
    }
    expect(vi.getTimerCount()).toBe(0);
  });
});

describe("while listening", () => {
  test("final words are given, one candidate without scores; others are not", async () => {
    await listening();
    last().hear("blood", false);
    last().hear(" BP 120/80 ");
    expect(events.at(-1)).toMatchObject({
      utterance: { by: "browser", candidates: [{ words: "BP 120/80", score: 0 }] },
    });
    expect(events.filter(({ kind }) => kind === "heard")).toHaveLength(1);
  });

  test("it starts again when the service ends, ever later while it gives nothing", async () => {
    await listening();
    for (const waitMs of [250, 500, 1_000]) {
      const before = made.length;
      last().fire("onend");
      await vi.advanceTimersByTimeAsync(waitMs - 1);
      expect(made).toHaveLength(before);
      await vi.advanceTimersByTimeAsync(1);
      expect(made).toHaveLength(before + 1);
    }
    last().hear("status");
    last().fire("onend");
    await vi.advanceTimersByTimeAsync(250);
    expect(made).toHaveLength(5);
  });

  test("it is off while our own voice sounds, and for 250 ms after", async () => {
    const recogniser = await listening();
    const first = last();
    first.fire("onspeechstart");
    recogniser.setSpeaking(true);
    first.hear("pressure one ten"); // a straggler from before
    expect(first.calls).toEqual(["start", "abort"]);
    expect(told()).toEqual(["listening", "speechStarted", "speechEnded"]);
    recogniser.setSpeaking(false);
    await vi.advanceTimersByTimeAsync(249);
    expect(made).toHaveLength(1);
    await vi.advanceTimersByTimeAsync(1);
    expect(made).toHaveLength(2);
  });

  test("called: it hears all, as in open listening, with the call word in its text", async () => {
    const recogniser = await listening();
    recogniser.setMode("called");
    last().hear("Tragus, status");
    expect(events.at(-1)).toMatchObject({ utterance: { by: "browser", candidates: [{ words: "Tragus, status" }] } });
    expect(made).toHaveLength(1);
  });

  test("held: it runs from press to release", async () => {
    const recogniser = await listening();
    recogniser.setMode("held");
    expect(last().calls).toEqual(["start", "abort"]);
    recogniser.hold(true);
    expect(made).toHaveLength(2);
    recogniser.hold(false);
    last().hear("status");
    last().fire("onend");
    await vi.advanceTimersByTimeAsync(10_000);
    expect(last().calls).toEqual(["start", "stop"]);
    expect(made).toHaveLength(2);
    expect(told()).toEqual(["listening", "heard"]);
  });

  test("a service that cannot be reached is a fault once, until it gives words again", async () => {
    await listening({ agreed: true });
    for (let i = 0; i < 2; i++) {
      last().fail("network");
      last().fire("onend");
      await vi.advanceTimersByTimeAsync(8_000);
    }
    last().hear("status");
    expect(told()).toEqual(["listening", "fault load-failed", "recovered", "heard"]);
  });

  test("permission withdrawn ends it", async () => {
    await listening();
    last().fail("not-allowed");
    expect(told()).toEqual(["listening", "fault microphone-refused", "stopped"]);
    expect(vi.getTimerCount()).toBe(0);
  });
});

test.each([
  ["no-speech", undefined],
  ["aborted", undefined],
  ["audio-capture", "microphone-lost"],
  ["service-not-allowed", "microphone-refused"],
  ["network", "load-failed"],
  ["language-not-supported", "not-supported"],
] as const)("%s means %s", (error, kind) => {
  expect(serviceFault(error)?.kind).toBe(kind);
});
