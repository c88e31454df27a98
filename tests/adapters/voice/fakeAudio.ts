import { vi } from "vitest";

/** A sound as the device would play it, in seconds of its own clock. */
export type Played = {
  readonly pcm: Float32Array;
  readonly fromS: number;
  untilS: number;
  /** Whether it went through a filter; else the gain that it was played at. */
  readonly through: "filter" | number;
};

type FakeNode = { readonly isFilter: boolean; readonly gain: { value: number } };

/**
 * Stands in for AudioContext: keeps what was scheduled, moves its clock only when told, and reports the end of each
 * sound. `state` is what `resume` can make of it: a blocked one never answers, as browsers do.
 */
export class FakeAudioContext {
  state: AudioContextState = "suspended";
  currentTime = 0;
  sampleRate = 48_000;
  destination = {};
  played: Played[] = [];
  gainFalls: number[] = [];
  blocked = false;
  deaf = false;
  closed = false;
  readonly #ends: { played: Played; source: { onended: (() => void) | null }; told: boolean }[] = [];

  resume(): Promise<void> {
    if (this.blocked) return new Promise(() => undefined);
    this.state = "running";
    return Promise.resolve();
  }

  close(): Promise<void> {
    this.closed = true;
    return Promise.resolve();
  }

  createGain() {
    const falls = this.gainFalls;
    return {
      isFilter: false,
      gain: {
        value: 1,
        setValueAtTime: () => undefined,
        linearRampToValueAtTime: (_to: number, atS: number) => falls.push(atS),
      },
      connect: <T>(next: T) => next,
      disconnect: () => undefined,
    };
  }

  createBiquadFilter() {
    return { isFilter: true, frequency: { value: 0 }, gain: { value: 0 }, connect: <T>(next: T) => next };
  }

  createDynamicsCompressor() {
    const [threshold, knee, ratio, attack, release] = Array.from({ length: 5 }, () => ({ value: 0 }));
    return { threshold, knee, ratio, attack, release, connect: <T>(next: T) => next };
  }

  createWaveShaper() {
    return { curve: null, connect: <T>(next: T) => next };
  }

  createBuffer(_channels: number, length: number, sampleRate: number) {
    const pcm = new Float32Array(length);
    return { duration: length / sampleRate, getChannelData: () => pcm };
  }

  createBufferSource() {
    let into: FakeNode | undefined;
    const source = {
      buffer: undefined as ReturnType<FakeAudioContext["createBuffer"]> | undefined,
      onended: null as (() => void) | null,
      connect: (node: FakeNode) => void (into = node),
      start: (atS: number) => {
        const { duration, getChannelData } = source.buffer!;
        const fromS = Math.max(atS, this.currentTime);
        const through = into!.isFilter ? "filter" : into!.gain.value;
        const played = { pcm: getChannelData(), fromS, untilS: fromS + duration, through } as const;
        this.#ends.push({ played, source, told: false });
        this.played.push(this.#ends.at(-1)!.played);
      },
      stop: (atS: number) => {
        const own = this.#ends.find((end) => end.source === source)!;
        own.played.untilS = Math.max(own.played.fromS, Math.min(own.played.untilS, atS));
      },
    };
    return source;
  }

  /** Lets time pass, for sound and timers alike. */
  async pass(ms: number): Promise<void> {
    const untilS = this.currentTime + ms / 1000;
    while (this.currentTime < untilS - 1e-9) {
      const stepS = Math.min(0.01, untilS - this.currentTime);
      if (!this.deaf) this.currentTime += stepS;
      for (const end of this.#ends) {
        if (end.told || end.played.untilS > this.currentTime) continue;
        end.told = true;
        end.source.onended?.();
      }
      await vi.advanceTimersByTimeAsync(stepS * 1000);
      if (this.deaf) return void (await vi.advanceTimersByTimeAsync(ms - stepS * 1000));
    }
  }

  /** The end of the last sound that sounded at all: one stopped before its start never does. */
  get silentFromS(): number {
    return Math.max(0, ...this.played.map(({ fromS, untilS }) => (untilS > fromS ? untilS : 0)));
  }
}
