import type { Page } from "playwright-core";

/** A buffer that the page gave to its sound device. */
export type PlayedSound = {
  /** When it sounds, in seconds on the clock of its AudioContext. */
  readonly atS: number;
  /** When it was scheduled, `performance.now()` of the page. */
  readonly scheduledAtMs: number;
  /** How long after that it begins to sound, ms. */
  readonly startsInMs: number;
  readonly sampleRate: number;
  readonly pcm: Float32Array;
};

/** An end of speech as the page learnt of it. */
export type SpeechEnd = {
  /** When the speech itself ended, Unix ms. */
  readonly atMs: number;
  /** When the page was told, `performance.now()`. */
  readonly toldAtMs: number;
};

type InPage = { atS: number; scheduledAtMs: number; startsInMs: number; sampleRate: number; bytes: string };

declare global {
  interface Window {
    playedSounds: InPage[];
    speechEnds: SpeechEnd[];
    /** When the page was given what was heard in an utterance, `performance.now()`. */
    heardAtMs: number[];
  }
}

/**
 * Runs in the page before its own scripts: notes every sound that is scheduled, and every end of speech and every
 * utterance that the worker reports.
 */
export function recordSound(): void {
  window.playedSounds = [];
  window.speechEnds = [];
  window.heardAtMs = [];
  const { start } = AudioBufferSourceNode.prototype;
  AudioBufferSourceNode.prototype.start = function (this: AudioBufferSourceNode, when = 0, ...rest: number[]) {
    if (this.buffer !== null) {
      const bytes = new Uint8Array(this.buffer.getChannelData(0).slice().buffer);
      let text = "";
      for (let i = 0; i < bytes.length; i += 32_768) text += String.fromCharCode(...bytes.subarray(i, i + 32_768));
      window.playedSounds.push({
        atS: Math.max(when, this.context.currentTime),
        scheduledAtMs: performance.now(),
        startsInMs: 1000 * Math.max(0, when - this.context.currentTime),
        sampleRate: this.buffer.sampleRate,
        bytes: btoa(text),
      });
    }
    return start.call(this, when, ...rest);
  };
  const Original = Worker;
  window.Worker = class extends Original {
    constructor(url: string | URL, options?: WorkerOptions) {
      super(url, options);
      this.addEventListener("message", ({ data }: MessageEvent<{ event?: { kind?: string; atMs?: number } }>) => {
        const { kind, atMs } = data?.event ?? {};
        if (kind === "speechEnded" && atMs !== undefined) window.speechEnds.push({ atMs, toldAtMs: performance.now() });
        if (kind === "heard") window.heardAtMs.push(performance.now());
      });
    }
  };
}

/** Everything scheduled so far, in the order in which it was scheduled. */
export async function playedSounds(page: Page): Promise<readonly PlayedSound[]> {
  const sounds = await page.evaluate(() => window.playedSounds);
  return sounds.map(({ bytes, ...rest }) => ({
    ...rest,
    pcm: new Float32Array(new Uint8Array(Buffer.from(bytes, "base64")).buffer),
  }));
}
