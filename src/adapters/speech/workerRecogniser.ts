import type {
  GrammarState,
  HearingEvent,
  ListeningMode,
  Recogniser,
  RecogniserError,
  Utterance,
} from "../../app/ports.ts";
import { fail, ok, type Result } from "../../core/result.ts";
import { isFaint } from "../../listener/faintVoice.ts";
import { createFaultBoard } from "./faultBoard.ts";
import { openListenerLink, type ListenerLink, type WorkerLike } from "./listenerLink.ts";
import type { FromListener, ListenerAssets, ListenerLanguage } from "./listenerMessages.ts";
import type { Microphone } from "./microphone.ts";
import { RECOGNISER_LIMITS, type RecogniserLimits } from "./recogniserLimits.ts";
import { watchSound, type SoundWatch } from "./soundWatch.ts";

/** One may be somebody far away. */
const FAINT_IN_A_ROW = 3;

export type WorkerRecogniserParts = {
  readonly makeWorker: () => WorkerLike;
  readonly openMicrophone: (onLost: () => void) => Promise<Result<Microphone, RecogniserError>>;
  readonly assets: ListenerAssets;
  readonly language: ListenerLanguage;
  readonly limits?: Partial<RecogniserLimits>;
};

/**
 * Engine 1: the listener in a worker, the microphone through the audio thread. The worker starts to load at once, before
 * `start` asks for the microphone, and stays loaded after `stop`.
 *
 * `start` settles always: listening, or the first error of worker or microphone, a time limit, `stop` or disposal (both
 * `disposed`). Later troubles are `fault` events: a dead worker is replaced and told its settings again, a lost microphone
 * is asked for again; `recovered` follows when all works. When neither helps, the last fault is followed by `stopped`.
 */
export function createWorkerRecogniser(parts: WorkerRecogniserParts): Recogniser {
  const limits = { ...RECOGNISER_LIMITS, ...parts.limits };
  const listeners = new Set<(event: HearingEvent) => void>();
  const emit = (event: HearingEvent): void => listeners.forEach((listener) => listener(event));
  const faults = createFaultBoard(emit);
  const settings = { grammar: "open" as GrammarState, mode: "open" as ListeningMode, speaking: false };

  let phase: "off" | "starting" | "on" | "disposed" = "off";
  let starting: Promise<Result<void, RecogniserError>> | undefined;
  let settleStart: ((result: Result<void, RecogniserError>) => void) | undefined;
  let link: ListenerLink | undefined;
  let restarts = 0;
  let microphone: Microphone | undefined;
  let silent = false;
  let inSpeech = false;
  let faintInARow = 0;
  let watch: SoundWatch | undefined;
  /** Counts starts and losses: an answer that belongs to an earlier one is thrown away. */
  let attempt = 0;
  const timers = new Set<ReturnType<typeof setTimeout>>();

  const later = (act: () => void, ms: number): void => {
    const timer = setTimeout(() => {
      timers.delete(timer);
      act();
    }, ms);
    timers.add(timer);
  };

  const openLink = (): void => {
    link = openListenerLink({
      makeWorker: parts.makeWorker,
      load: { op: "load", assets: parts.assets, language: parts.language },
      limits,
      onReady: joinWorkerAndMicrophone,
      onMessage: receive,
      onDead: replaceWorker,
    });
  };

  const joinWorkerAndMicrophone = (): void => {
    if (link?.isReady() !== true) return;
    link.post({ op: "grammar", state: settings.grammar });
    link.post({ op: "mode", mode: settings.mode });
    link.post({ op: "speaking", speaking: settings.speaking });
    if (microphone === undefined) return;
    const { port1, port2 } = new MessageChannel();
    microphone.connect(port1);
    link.post({ op: "sound", port: port2, rateHz: microphone.rateHz }, [port2]);
    silent = false; // the new hearing judges the microphone afresh
    watch ??= watchSound(limits.soundMissingMs, limits.soundMissingMs / 3, missSound);
    watch.seen();
    if (phase === "starting") {
      phase = "on";
      settleStart?.(ok(undefined));
      emit({ kind: "listening" });
    }
    faults.clear("worker");
    faults.clear("microphone");
  };

  const missSound = (forMs: number): void => {
    microphone?.resume();
    // With a worker that is dead or hangs no sound can arrive: that is another fault, told on its own.
    if (link?.isAnswering() === true && microphone !== undefined)
      faults.raise("sound", { kind: "microphone-silent", forMs: Math.round(forMs) });
  };

  const receive = (message: Extract<FromListener, { readonly op: "event" | "microphone" }>): void => {
    if (phase !== "on") return;
    watch?.seen();
    if (message.op === "event") {
      if (message.event.kind === "level" && !silent) faults.clear("sound");
      if (message.event.kind === "heard") {
        restarts = 0;
        judgeVoice(message.event.utterance);
      }
      if (message.event.kind === "speechStarted") inSpeech = true;
      if (message.event.kind === "speechEnded") inSpeech = false;
      return emit(message.event);
    }
    silent = message.silentForMs !== undefined;
    if (message.silentForMs === undefined) faults.clear("sound");
    else faults.raise("sound", { kind: "microphone-silent", forMs: message.silentForMs });
  };

  const judgeVoice = ({ shape }: Utterance): void => {
    if (shape === undefined) return;
    faintInARow = isFaint(shape) ? faintInARow + 1 : 0;
    if (faintInARow === 0) faults.clear("voice");
    else if (faintInARow >= FAINT_IN_A_ROW) faults.raise("voice", { kind: "voice-faint" });
  };

  /** What was being said is gone with the part that heard it; whoever waits for its end must not wait for ever. */
  const breakOffSpeech = (): void => {
    if (inSpeech) emit({ kind: "speechEnded", atMs: Date.now() });
    inSpeech = false;
  };

  const replaceWorker = (error: RecogniserError): void => {
    link = undefined;
    if (phase === "starting") return end(error);
    breakOffSpeech();
    if (phase !== "on") return; // nobody is listening: `start` makes a new one
    faults.raise("worker", error);
    const wait = limits.restartAfterMs[restarts++];
    if (wait === undefined) return end(error);
    later(openLink, wait);
  };

  const takeMicrophone = async (): Promise<void> => {
    const mine = ++attempt;
    const lost = (): void => {
      if (mine !== attempt || phase !== "on") return;
      releaseMicrophone();
      faults.raise("microphone", { kind: "microphone-lost" });
      later(() => void takeMicrophone(), limits.microphoneRetryMs);
    };
    const opened = await parts
      .openMicrophone(lost)
      .catch((error: unknown): Result<Microphone, RecogniserError> =>
        fail({ kind: "not-supported", detail: String(error) }),
      );
    if (mine !== attempt || phase === "off" || phase === "disposed") {
      if (opened.ok) opened.value.stop(); // answered after nobody wanted it any more
      return;
    }
    if (opened.ok) {
      microphone = opened.value;
      return joinWorkerAndMicrophone();
    }
    if (phase === "starting" || opened.error.kind !== "microphone-lost") return end(opened.error);
    later(() => void takeMicrophone(), limits.microphoneRetryMs);
  };

  const releaseMicrophone = (): void => {
    attempt++;
    breakOffSpeech();
    watch?.close();
    watch = undefined;
    microphone?.stop();
    microphone = undefined;
  };

  /** Listening is over, for this reason or because the user wants it. */
  const end = (error: RecogniserError | undefined): void => {
    const before = phase;
    phase = before === "disposed" ? before : "off";
    for (const timer of timers) clearTimeout(timer);
    timers.clear();
    releaseMicrophone();
    faults.reset();
    restarts = 0;
    faintInARow = 0;
    if (before === "starting") settleStart?.(fail(error ?? { kind: "disposed" }));
    if (before !== "on") return;
    if (error !== undefined) emit({ kind: "fault", error });
    emit({ kind: "stopped" });
  };

  openLink();

  return {
    start() {
      if (phase === "disposed") return Promise.resolve(fail({ kind: "disposed" }));
      if (phase === "on") return Promise.resolve(ok(undefined));
      if (phase === "starting" && starting !== undefined) return starting;
      phase = "starting";
      starting = new Promise((resolve) => (settleStart = resolve));
      const afterMs = limits.startTimeoutMs;
      later(() => phase === "starting" && end({ kind: "timed-out", afterMs }), afterMs);
      if (link === undefined) openLink();
      void takeMicrophone();
      return starting;
    },
    stop: () => end(undefined),
    useGrammar(state) {
      settings.grammar = state;
      link?.post({ op: "grammar", state });
    },
    setMode(mode) {
      settings.mode = mode;
      link?.post({ op: "mode", mode });
    },
    hold: (down) => link?.post({ op: "hold", down }),
    setSpeaking(speaking) {
      settings.speaking = speaking;
      link?.post({ op: "speaking", speaking });
    },
    onEvent(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    dispose() {
      end(undefined);
      phase = "disposed";
      link?.close();
      link = undefined;
    },
  };
}
