import type { HearingEvent, ListeningMode, Recogniser, RecogniserError } from "../../app/ports.ts";
import { fail, ok, type Result } from "../../core/result.ts";
import { serviceFault, type Recognition, type SpeechService } from "./speechService.ts";

const START_TIMEOUT_MS = 60_000; // the user may have to answer a question first
const GATE_TAIL_MS = 250;
const FIRST_WAIT_MS = 250;
const LONGEST_WAIT_MS = 8_000;

export type WebSpeechOptions = {
  /** BCP 47, e.g. "en-GB". */
  readonly lang: string;
  /** The user was told that the browser sends the sound away, and agreed. */
  readonly audioMayLeaveDevice: boolean;
};

/**
 * Engine 2: the browser's own speech recognition, off unless chosen. Recognises on the device where the browser can;
 * otherwise `start` refuses, unless the user agreed that the sound leaves the device. Gives words without scores.
 *
 * Every `start` settles: running, refused, failed, a time limit, `stop` or disposal. The service ends by itself every few
 * seconds and is started again, ever more slowly while it gives nothing. While our own voice sounds it is switched off,
 * so there is no barge-in. Not for: the grammar states, which it does not know.
 */
export function createWebSpeechRecogniser(service: SpeechService, options: WebSpeechOptions): Recogniser {
  const listeners = new Set<(event: HearingEvent) => void>();
  const emit = (event: HearingEvent): void => listeners.forEach((listener) => listener(event));

  let phase: "off" | "starting" | "on" | "disposed" = "off";
  let starting: Promise<Result<void, RecogniserError>> | undefined;
  let settleStart: ((result: Result<void, RecogniserError>) => void) | undefined;
  let recognition: Recognition | undefined;
  let onDevice = false;
  let mode: ListeningMode = "open";
  let held = false;
  let speaking = false;
  let waitMs = FIRST_WAIT_MS;
  let faulty = false;
  let inSpeech = false;
  let speechEndedAtMs: number | undefined;
  let startLimit: ReturnType<typeof setTimeout> | undefined;
  let restart: ReturnType<typeof setTimeout> | undefined;

  const wanted = (): boolean => phase === "on" && !speaking && (mode !== "held" || held);

  const run = (): void => {
    clearTimeout(restart);
    if (recognition !== undefined || service.make === undefined) return;
    const made = service.make();
    made.lang = options.lang;
    made.continuous = true;
    made.interimResults = false;
    made.maxAlternatives = 1;
    if (onDevice) made.processLocally = true;
    made.onstart = () => {
      if (phase === "starting") began();
    };
    made.onspeechstart = () => {
      inSpeech = true;
      emit({ kind: "speechStarted", atMs: Date.now() });
    };
    made.onspeechend = () => {
      speechEndedAtMs = Date.now();
      endSpeech(speechEndedAtMs);
    };
    made.onresult = (event) => giveWords(event);
    made.onerror = (event) => {
      const error = serviceFault(event.error);
      if (error !== undefined) fault(error);
    };
    made.onend = () => ended();
    recognition = made;
    try {
      made.start();
    } catch (error) {
      recognition = undefined;
      fault({ kind: "not-supported", detail: error instanceof Error ? error.message : String(error) });
    }
  };

  const endSpeech = (atMs: number): void => {
    if (inSpeech) emit({ kind: "speechEnded", atMs });
    inSpeech = false;
  };

  const began = (): void => {
    phase = "on";
    clearTimeout(startLimit);
    settleStart?.(ok(undefined));
    emit({ kind: "listening" });
    if (!wanted()) abort();
  };

  const giveWords = (event: SpeechRecognitionEvent): void => {
    if (phase !== "on" || speaking) return;
    for (let i = event.resultIndex; i < event.results.length; i++) {
      const result = event.results[i];
      const words = result?.isFinal === true ? result[0]?.transcript.trim() : undefined;
      if (words === undefined || words === "") continue;
      waitMs = FIRST_WAIT_MS;
      if (faulty) emit({ kind: "recovered" });
      faulty = false;
      const endedAtMs = speechEndedAtMs ?? Date.now();
      emit({ kind: "heard", utterance: { by: "browser", candidates: [{ words, score: 0 }], endedAtMs } });
    }
    speechEndedAtMs = undefined;
  };

  const fault = (error: RecogniserError): void => {
    if (phase === "starting" || error.kind === "microphone-refused" || error.kind === "not-supported")
      return end(error);
    if (phase !== "on" || faulty) return;
    faulty = true;
    emit({ kind: "fault", error });
  };

  const ended = (): void => {
    recognition = undefined;
    endSpeech(Date.now());
    if (phase === "starting") return end({ kind: "not-supported", detail: "it ended before it began" });
    if (!wanted()) return;
    restart = setTimeout(run, waitMs);
    waitMs = Math.min(2 * waitMs, LONGEST_WAIT_MS);
  };

  const abort = (): void => {
    clearTimeout(restart);
    const running = recognition;
    recognition = undefined;
    if (running === undefined) return;
    running.onstart = running.onend = running.onerror = running.onresult = null;
    running.onspeechstart = running.onspeechend = null;
    running.abort();
    endSpeech(Date.now());
  };

  const end = (error: RecogniserError | undefined): void => {
    const before = phase;
    phase = before === "disposed" ? before : "off";
    clearTimeout(startLimit);
    abort();
    faulty = false;
    if (before === "starting") settleStart?.(fail(error ?? { kind: "disposed" }));
    if (before !== "on") return;
    if (error !== undefined) emit({ kind: "fault", error });
    emit({ kind: "stopped" });
  };

  const begin = async (): Promise<void> => {
    if (service.make === undefined)
      return end({ kind: "not-supported", detail: "this browser has no speech recognition" });
    onDevice = await service.onDevice(options.lang);
    if (phase !== "starting") return;
    if (!onDevice && !options.audioMayLeaveDevice)
      return end({ kind: "not-supported", detail: "the sound would leave the device, and nobody has agreed to that" });
    run();
  };

  return {
    start() {
      if (phase === "disposed") return Promise.resolve(fail({ kind: "disposed" }));
      if (phase === "on") return Promise.resolve(ok(undefined));
      if (phase === "starting" && starting !== undefined) return starting;
      phase = "starting";
      starting = new Promise((resolve) => (settleStart = resolve));
      startLimit = setTimeout(() => end({ kind: "timed-out", afterMs: START_TIMEOUT_MS }), START_TIMEOUT_MS);
      void begin();
      return starting;
    },
    stop: () => end(undefined),
    useGrammar: () => undefined,
    setMode(next) {
      mode = next;
      held = false;
      if (phase === "on" && wanted()) run();
      else if (phase === "on") abort();
    },
    hold(down) {
      if (mode !== "held" || down === held) return;
      held = down;
      if (phase !== "on") return;
      if (down) run();
      else recognition?.stop(); // what was said up to now is still given out
    },
    setSpeaking(next) {
      if (next === speaking) return;
      speaking = next;
      if (speaking) return abort();
      if (phase === "on") restart = setTimeout(() => wanted() && run(), GATE_TAIL_MS);
    },
    onEvent(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    dispose() {
      end(undefined);
      phase = "disposed";
    },
  };
}
