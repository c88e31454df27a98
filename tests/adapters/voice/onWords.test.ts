import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { createBuiltInVoice } from "../../../src/adapters/voice/builtInVoice.ts";
import type { Spoken } from "../../../src/app/ports.ts";
import { fail } from "../../../src/core/result.ts";
import { FakeAudioContext } from "./fakeAudio.ts";
import { answerAtOnce, fakeWorkers } from "./fakeWorker.ts";

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const dead = fakeWorkers(() => ({ afterMs: 0, result: fail({ kind: "worker-died", detail: "test" }) }));

it.each<readonly [string, Spoken, ReturnType<typeof fakeWorkers>, starts: number, words: number]>([
  ["words of two phrases", { text: "Ninety five. Two minutes old." }, fakeWorkers(answerAtOnce), 1, 1],
  ["words after a tone", { text: "Ninety five.", tone: "high" }, fakeWorkers(answerAtOnce), 1, 1],
  ["a tone alone", { text: "", tone: "high" }, fakeWorkers(answerAtOnce), 1, 0],
  ["a tone whose words fail", { text: "Ninety five.", tone: "high" }, dead, 1, 0],
  ["words that fail", { text: "Ninety five." }, dead, 0, 0],
])("tells the beginning of sound and that of words apart: %s", async (_name, spoken, workers, starts, words) => {
  const context = new FakeAudioContext();
  const speaker = createBuiltInVoice({
    wasmUrl: "/voice/flite.wasm",
    makeWorker: workers.makeWorker,
    makeContext: () => context as unknown as AudioContext,
    page: new EventTarget(),
  });
  const onStart = vi.fn();
  const onWords = vi.fn();
  void speaker.say(spoken, onStart, onWords);
  await context.pass(4_000);
  expect([onStart.mock.calls.length, onWords.mock.calls.length]).toEqual([starts, words]);
});
