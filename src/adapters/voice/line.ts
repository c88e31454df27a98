import { shapeForNoise } from "./shapeForNoise.ts";
import type { Sound } from "./wav.ts";

/** How a line came to its end. Stalled: the sound device stopped taking sound, and time ran out. */
export type LineEnd = "ended" | "stopped" | "stalled";

/** Sounds played one after the other without a gap of their own. */
export interface Line {
  /** A tone or a mark, as it was rendered, after what is already there, or at once. */
  addTone(sound: Sound, pauseAfterMs: number): void;
  /** Words in the same way, shaped for noise. */
  addWords(sound: Sound, pauseAfterMs: number): void;
  /** Nothing more will be added. */
  finish(): void;
  /** Silence within 6 ms. */
  stop(): void;
  readonly settled: Promise<LineEnd>;
}

export type LineOptions = {
  /** Nothing sounds earlier, on the clock of the context. */
  readonly notBeforeS?: number;
  /** Louder or softer than usual. Nothing clips: a tone is then less loud than was asked. */
  readonly gainDb?: number;
};

/** A start in the past is played late and unevenly; this much ahead is safe and not heard. */
const LEAD_S = 0.005;
/** A cut wave clicks; a fall this short does not. */
const FALL_S = 0.005;
/** How long after its due end a sound may still be running: `onended` has been seen 140 ms late. */
const GRACE_MS = 1_500;
/** Largest sample of a tone, of full scale. */
const TONE_CEILING = 0.95;

export function createLine(context: BaseAudioContext, { notBeforeS = 0, gainDb = 0 }: LineOptions = {}): Line {
  const fader = context.createGain();
  fader.connect(context.destination);
  let shaper: AudioNode | undefined;
  const sources: AudioBufferSourceNode[] = [];
  let nextAtS = notBeforeS;
  let endsAtS = 0;
  let finished = false;
  let over = false;
  let running = 0;
  let guard: ReturnType<typeof setTimeout> | undefined;
  let resolve: (end: LineEnd) => void;
  const settled = new Promise<LineEnd>((settle) => (resolve = settle));

  const settle = (end: LineEnd) => {
    clearTimeout(guard);
    over = true;
    resolve(end);
  };
  const halt = (end: LineEnd) => {
    if (over) return;
    const nowS = context.currentTime;
    fader.gain.setValueAtTime(1, nowS);
    fader.gain.linearRampToValueAtTime(0, nowS + FALL_S);
    for (const source of sources) source.stop(nowS + FALL_S);
    settle(end);
  };
  const settleIfDone = () => {
    if (running > 0) return;
    if (finished && !over) settle("ended");
    if (over) fader.disconnect();
  };
  const add = ({ pcm, sampleRate }: Sound, pauseAfterMs: number, into: () => AudioNode) => {
    if (finished || over || pcm.length === 0) return;
    const buffer = context.createBuffer(1, pcm.length, sampleRate);
    buffer.getChannelData(0).set(pcm);
    const source = context.createBufferSource();
    source.buffer = buffer;
    source.connect(into());
    const startAtS = Math.max(nextAtS, context.currentTime + LEAD_S);
    endsAtS = startAtS + buffer.duration;
    nextAtS = endsAtS + pauseAfterMs / 1000;
    running++;
    source.onended = () => {
      running--;
      settleIfDone();
    };
    sources.push(source);
    source.start(startAtS);
  };
  const level = (gain: number): AudioNode => {
    const node = context.createGain();
    node.gain.value = gain;
    node.connect(fader);
    return node;
  };

  return {
    addTone: (sound, pauseAfterMs) => {
      const peak = sound.pcm.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
      add(sound, pauseAfterMs, () => level(Math.min(10 ** (gainDb / 20), TONE_CEILING / peak)));
    },
    addWords: (sound, pauseAfterMs) =>
      add(sound, pauseAfterMs, () => (shaper ??= shapeForNoise(context, fader, gainDb))),
    finish: () => {
      if (finished || over) return;
      finished = true;
      guard = setTimeout(() => halt("stalled"), Math.max(0, endsAtS - context.currentTime) * 1000 + GRACE_MS);
      settleIfDone();
    },
    stop: () => halt("stopped"),
    settled,
  };
}
