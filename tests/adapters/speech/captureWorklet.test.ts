import { afterEach, beforeEach, expect, test, vi } from "vitest";

type Processor = {
  readonly port: { onmessage: (event: { data: object }) => void };
  process(inputs: Float32Array[][]): boolean;
};

let make: new () => Processor;
beforeEach(async () => {
  // The globals of the audio thread, as far as the worklet uses them.
  vi.stubGlobal(
    "AudioWorkletProcessor",
    class {
      port = {};
    },
  );
  vi.stubGlobal("registerProcessor", (_: string, processor: new () => Processor) => (make = processor));
  vi.resetModules();
  await import("../../../src/adapters/speech/captureWorklet.ts");
});
afterEach(() => vi.unstubAllGlobals());

function connected(): { processor: Processor; blocks: Float32Array[] } {
  const blocks: Float32Array[] = [];
  const processor = new make();
  processor.port.onmessage({ data: { to: { postMessage: (block: Float32Array) => blocks.push(block) } } });
  return { processor, blocks };
}

test.each([128, 100, 256])("quanta of %i samples arrive whole and in order", (size) => {
  const { processor, blocks } = connected();
  const sound = Float32Array.from({ length: size * 40 }, (_, i) => i);
  for (let at = 0; at < sound.length; at += size)
    expect(processor.process([[sound.subarray(at, at + size)]])).toBe(true);
  const arrived = blocks.flatMap((block) => [...block]);
  expect(arrived.length).toBeGreaterThan(sound.length - 256 - size);
  expect(arrived).toEqual([...sound.subarray(0, arrived.length)]);
  expect(Math.max(...blocks.map(({ length }) => length))).toBeLessThanOrEqual(256);
});

test("sound waits for no more than a third of a frame of voice activity, at any rate of a device", () => {
  const { processor, blocks } = connected();
  processor.process([[new Float32Array(128)]]);
  processor.process([[new Float32Array(128)]]);
  // 256 samples at 24 kHz, the slowest of common devices but telephone headsets: 10.7 of 32 ms.
  expect(blocks.map(({ length }) => length)).toEqual([256]);
});

test("it waits for a port, outlives a missing input, and ends when told", () => {
  const processor = new make();
  expect(processor.process([[new Float32Array(128)]])).toBe(true);
  expect(processor.process([[]])).toBe(true);
  processor.port.onmessage({ data: {} });
  expect(processor.process([[new Float32Array(128)]])).toBe(false);
});

test("a new port starts with a fresh block", () => {
  const { processor, blocks } = connected();
  processor.process([[new Float32Array(128).fill(1)]]);
  const fresh: Float32Array[] = [];
  processor.port.onmessage({ data: { to: { postMessage: (block: Float32Array) => fresh.push(block) } } });
  for (let i = 0; i < 2; i++) processor.process([[new Float32Array(128).fill(2)]]);
  expect(blocks).toEqual([]);
  expect(fresh).toEqual([new Float32Array(256).fill(2)]);
});
