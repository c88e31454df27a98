import { fail, ok, type Result } from "../../core/result.ts";
import type { Speaker, SpeakerError, Spoken } from "../../app/ports.ts";
import { createAudioOut, type AudioOut } from "./audioOut.ts";
import { gainDbOf, paceOf } from "./delivery.ts";
import { createUtterances, type Outcome } from "./oneAtATime.ts";
import { renderTone } from "./tones.ts";

export type DeviceVoiceParts = {
  readonly synthesis: SpeechSynthesis;
  /** `voiceURI` of the voice that the user chose from `localVoices`. */
  readonly voiceUri: string;
  readonly makeUtterance: (text: string) => SpeechSynthesisUtterance;
  readonly makeContext: () => AudioContext;
  readonly page: EventTarget;
};

// speechSynthesis may report nothing at all (a headless browser has no voices and fails in silence).
const START_LIMIT_MS = 3_000;
/** Slower than any voice speaks, so that only a lost end event runs into it. */
const END_LIMIT_MS_PER_CHARACTER = 200;
const END_LIMIT_MS = 5_000;

/** The device's voices that work without a network. Others would send text away, and are never used. */
export const localVoices = (synthesis: SpeechSynthesis): readonly SpeechSynthesisVoice[] =>
  synthesis.getVoices().filter((voice) => voice.localService === true);

/** Tells which local voices there are, now and whenever the device finds more of them. */
export function watchLocalVoices(
  tell: (voices: readonly { readonly id: string; readonly name: string }[]) => void,
): void {
  if (!("speechSynthesis" in globalThis)) return;
  const now = () => tell(localVoices(speechSynthesis).map(({ voiceURI, name }) => ({ id: voiceURI, name })));
  speechSynthesis.addEventListener("voiceschanged", now);
  now();
}

/** The chosen voice of the device in a page. */
export const deviceVoiceInPage = (voiceUri: string): Speaker =>
  createDeviceVoice({
    synthesis: speechSynthesis,
    voiceUri,
    makeUtterance: (text) => new SpeechSynthesisUtterance(text),
    makeContext: () => new AudioContext({ latencyHint: "interactive" }),
    page: window,
  });

/**
 * A speaker over a voice of the device, for a user who has chosen one; never a default. Tones and marks are ours.
 *
 * One utterance at a time, as with the built-in voice. `onStart` is called at the tone, or when the device reports
 * its start. Words can be softer than usual but not louder, as a device's voice is at its loudest already, and they are
 * not shaped for noise. Text is not respelled: these voices have their own dictionaries, and their sound cannot be
 * checked. Where the page's own sound is blocked the words are said all the same, and the missing tone is reported.
 */
export function createDeviceVoice(parts: DeviceVoiceParts): Speaker {
  const { synthesis, voiceUri } = parts;
  const audio = createAudioOut(parts.makeContext, parts.page);
  const utterances = createUtterances();
  let disposed = false;

  const chosen = (): Result<SpeechSynthesisVoice, SpeakerError> => {
    if (disposed) return fail({ kind: "disposed" });
    const voice = localVoices(synthesis).find(({ voiceURI }) => voiceURI === voiceUri);
    return voice ? ok(voice) : fail({ kind: "load-failed", asset: voiceUri, detail: "no such voice on this device" });
  };

  const run = async (
    spoken: Spoken,
    onStart: () => void,
    onWords: (() => void) | undefined,
    isCurrent: () => boolean,
  ): Promise<Outcome> => {
    let started = false;
    const startOnce = () => {
      if (!started && isCurrent()) onStart();
      started = true;
    };
    const toned = spoken.tone ? await soundTone(audio, spoken, isCurrent, startOnce) : ok(undefined);
    if (!isCurrent()) return ok("cancelled");
    if (spoken.text === "") return toned.ok ? ok("ended") : toned;
    const voice = chosen();
    if (!voice.ok) return voice;
    const uttered = await utter(parts, voice.value, spoken, () => {
      startOnce();
      if (isCurrent()) onWords?.();
    });
    return toned.ok ? uttered : toned;
  };

  return {
    warmUp: async () => {
      const voice = chosen();
      return voice.ok ? ok(undefined) : voice;
    },
    say: (spoken, onStart, onWords) =>
      utterances.next(
        (isCurrent) => run(spoken, onStart, onWords, isCurrent),
        () => {
          audio.silence();
          synthesis.cancel();
        },
      ),
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
      audio.dispose();
    },
  };
}

async function soundTone(
  audio: AudioOut,
  spoken: Spoken,
  isCurrent: () => boolean,
  onStart: () => void,
): Promise<Result<void, SpeakerError>> {
  const opened = await audio.open();
  if (!opened.ok || !isCurrent()) return opened.ok ? ok(undefined) : opened;
  const line = audio.line(opened.value, { gainDb: gainDbOf(spoken) });
  const { sampleRate } = opened.value;
  if (spoken.tone) line.addTone({ pcm: renderTone(spoken.tone, sampleRate), sampleRate }, 0);
  line.finish();
  onStart();
  return (await line.settled) === "stalled" ? fail({ kind: "audio-blocked" }) : ok(undefined);
}

function utter(
  { synthesis, makeUtterance }: DeviceVoiceParts,
  voice: SpeechSynthesisVoice,
  spoken: Spoken,
  onStart: () => void,
): Promise<Outcome> {
  const { text } = spoken;
  return new Promise((resolve) => {
    const utterance = makeUtterance(text);
    let timer: ReturnType<typeof setTimeout>;
    const settle = (outcome: Outcome) => {
      clearTimeout(timer);
      resolve(outcome);
    };
    const limit = (ms: number) => {
      clearTimeout(timer);
      timer = setTimeout(() => settle(fail({ kind: "timed-out", afterMs: ms })), ms);
    };
    utterance.voice = voice;
    utterance.lang = voice.lang;
    utterance.rate = paceOf(spoken);
    utterance.volume = Math.min(1, 10 ** (gainDbOf(spoken) / 20));
    utterance.onstart = () => {
      onStart();
      limit(END_LIMIT_MS + text.length * END_LIMIT_MS_PER_CHARACTER);
    };
    utterance.onend = () => settle(ok("ended"));
    utterance.onerror = ({ error }) =>
      settle(
        error === "canceled" || error === "interrupted"
          ? ok("cancelled")
          : fail({ kind: "worker-died", detail: `the device's voice: ${error}` }),
      );
    limit(START_LIMIT_MS);
    synthesis.speak(utterance);
  });
}
