import { fail, ok, type Result } from "../../core/result.ts";
import type { Speaker, SpeakerError, Spoken } from "../../app/ports.ts";
import { createAudioOut, type AudioOut } from "./audioOut.ts";
import { gainDbOf, paceOf } from "./delivery.ts";
import type { Line } from "./line.ts";
import { createUtterances, type Outcome } from "./oneAtATime.ts";
import { splitPhrases } from "./splitPhrases.ts";
import { renderTone } from "./tones.ts";
import { createVoiceClient, type VoiceClient, type WorkerLike } from "./voiceClient.ts";

export type BuiltInVoiceParts = {
  /** Where flite.wasm is served. */
  readonly wasmUrl: string;
  readonly makeWorker: () => WorkerLike;
  readonly makeContext: () => AudioContext;
  readonly page: EventTarget;
};

/** Words later than this after they were asked for are stale; the voice goes on loading for the next ones. */
const FIRST_SOUND_LIMIT_MS = 8_000;
const TONE_TO_WORDS_MS = 120;
/** Two utterances are not to be taken for one. Ours. */
const BETWEEN_S = 0.3;

/** The voice that comes with the app, as it is put together in a page: a module worker and Web Audio. */
export const builtInVoiceInPage = (wasmUrl: string): Speaker =>
  createBuiltInVoice({
    wasmUrl,
    makeWorker: () => new Worker(new URL("./fliteWorker.ts", import.meta.url), { type: "module" }),
    makeContext: () => new AudioContext({ latencyHint: "interactive" }),
    page: window,
  });

/**
 * A speaker that needs nothing but the app's own files. Loading waits for `warmUp` or the first words.
 *
 * One utterance at a time: saying another cancels the one that sounds. `onStart` is called when the first sound,
 * tone or word, is handed to the device. A tone needs no voice: it sounds while the voice is loading or has failed,
 * and only then is the failure reported. What failed is tried afresh with the next words: a dead worker is replaced, and
 * so is a sound device that took no more sound. After `cancel` the device is silent within 6 ms.
 */
export function createBuiltInVoice({ wasmUrl, makeWorker, makeContext, page }: BuiltInVoiceParts): Speaker {
  const audio = createAudioOut(makeContext, page);
  const voice = createVoiceClient(makeWorker, wasmUrl);
  const utterances = createUtterances();
  let disposed = false;
  let quietUntilS = 0;

  return {
    warmUp: async () => {
      if (disposed) return fail({ kind: "disposed" });
      const [loaded, opened] = await Promise.all([voice.load(), audio.open()]);
      return !loaded.ok || opened.ok ? loaded : opened;
    },
    say: (spoken, onStart, onWords) => {
      if (disposed) return Promise.resolve(fail({ kind: "disposed" }));
      const turn = createTurn(audio, voice, quietUntilS, (endedAtS) => (quietUntilS = endedAtS + BETWEEN_S));
      return utterances.next(
        () => turn.run(spoken, onStart, onWords),
        () => turn.stop(),
      );
    },
    mark: (mark) => {
      if (!disposed) audio.mark(mark);
    },
    cancel: () => {
      utterances.end(ok("cancelled"));
      audio.silence();
    },
    dispose: () => {
      disposed = true;
      utterances.end(fail({ kind: "disposed" }));
      voice.dispose();
      audio.dispose();
    },
  };
}

/** One utterance from tone to last word. Its result counts only if nothing settled it earlier. */
function createTurn(audio: AudioOut, voice: VoiceClient, notBeforeS: number, onEnd: (atS: number) => void) {
  let line: Line | undefined;
  let stopped = false;

  const run = async (spoken: Spoken, onStart: () => void, onWords: (() => void) | undefined): Promise<Outcome> => {
    const opened = await audio.open();
    if (!opened.ok) return opened;
    if (stopped) return ok("cancelled");
    const { sampleRate } = opened.value;
    // A device that was made anew counts from zero.
    const waitUntilS = Math.min(notBeforeS, opened.value.currentTime + BETWEEN_S);
    const out = (line = audio.line(opened.value, { notBeforeS: waitUntilS, gainDb: gainDbOf(spoken) }));
    let started = false;
    const startOnce = () => {
      if (!started) onStart();
      started = true;
    };
    if (spoken.tone) {
      out.addTone({ pcm: renderTone(spoken.tone, sampleRate), sampleRate }, TONE_TO_WORDS_MS);
      startOnce();
    }
    let failure: Result<never, SpeakerError> | undefined;
    let worded = false;
    const phrases = splitPhrases(spoken.text);
    const { withinMs } = spoken;
    const manner = { pace: paceOf(spoken), ...(withinMs === undefined ? {} : { withinMs }) };
    const inOneGo = withinMs !== undefined && phrases.length > 0;
    for (const phrase of inOneGo ? [{ text: spoken.text, pauseAfterMs: 0 }] : phrases) {
      const made = await within(FIRST_SOUND_LIMIT_MS, voice.synthesise(phrase.text, manner));
      if (stopped) return ok("cancelled");
      if (!made.ok) {
        failure = made;
        break;
      }
      out.addWords(made.value, phrase.pauseAfterMs);
      startOnce();
      if (!worded) onWords?.();
      worded = true;
    }
    out.finish();
    const end = await out.settled;
    if (end === "ended") onEnd(opened.value.currentTime);
    if (failure) return failure;
    return end === "stalled" ? fail({ kind: "audio-blocked" }) : ok(end === "ended" ? "ended" : "cancelled");
  };

  return {
    run,
    stop: () => {
      stopped = true;
      line?.stop();
    },
  };
}

function within<T>(limitMs: number, work: Promise<Result<T, SpeakerError>>): Promise<Result<T, SpeakerError>> {
  return new Promise((resolve) => {
    const timer = setTimeout(() => resolve(fail({ kind: "timed-out", afterMs: limitMs })), limitMs);
    void work.then((result) => {
      clearTimeout(timer);
      resolve(result);
    });
  });
}
