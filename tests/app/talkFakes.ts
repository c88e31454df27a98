import { createManualClock } from "../../src/adapters/clock/manualClock.ts";
import { createMemoryFactStore } from "../../src/adapters/storage/memoryFactStore.ts";
import type { AppContext } from "../../src/app/context.ts";
import { Conversation } from "../../src/app/conversation.ts";
import type {
  FactStore,
  HearingEvent,
  ListeningMode,
  ProfileStore,
  Recogniser,
  RecogniserError,
  Speaker,
  SpeakerError,
  Spoken,
  Utterance,
} from "../../src/app/ports.ts";
import { Session } from "../../src/app/session.ts";
import type { TalkState } from "../../src/app/talkState.ts";
import { fail, ok, type Result } from "../../src/core/result.ts";
import { testContext } from "./playCase.ts";

const example = testContext();
/** Of an approved protocol nothing is said at the start; what is said of the example has its own test. */
const approved: AppContext = { ...example, protocol: { ...example.protocol, status: "approved" } };

/** Ears that hear what the test says, and keep a list of what was asked of them. */
export class FakeRecogniser implements Recogniser {
  readonly calls: string[] = [];
  startsWith: Result<void, RecogniserError> = ok(undefined);
  #listeners: ((event: HearingEvent) => void)[] = [];

  start(): Promise<Result<void, RecogniserError>> {
    this.calls.push("start");
    return Promise.resolve(this.startsWith);
  }
  stop = (): void => void this.calls.push("stop");
  useGrammar = (state: string): void => void this.calls.push(`grammar ${state}`);
  setMode = (mode: ListeningMode): void => void this.calls.push(`mode ${mode}`);
  hold = (down: boolean): void => void this.calls.push(`hold ${down}`);
  setSpeaking = (speaking: boolean): void => void this.calls.push(`speaking ${speaking}`);
  dispose = (): void => void this.calls.push("dispose");
  onEvent(listener: (event: HearingEvent) => void): () => void {
    this.#listeners.push(listener);
    return () => (this.#listeners = this.#listeners.filter((l) => l !== listener));
  }
  send(event: HearingEvent): void {
    for (const listener of this.#listeners) listener(event);
  }
  hears(words: string): void {
    const utterance: Utterance = { by: "listener", candidates: [{ words, score: 0 }], endedAtMs: 0 };
    this.send({ kind: "heard", utterance: { ...utterance, free: { score: 0, phones: 10 } } });
  }
}

/** A mouth whose words start and end when the test says so. */
export class FakeSpeaker implements Speaker {
  readonly told: string[] = [];
  warm: Result<void, SpeakerError> = ok(undefined);
  failsToSay = false;
  #sounding: ((how: "ended" | "cancelled") => void) | undefined;
  #onStart: (() => void) | undefined;
  readonly manners: (readonly [pace: number | undefined, gainDb: number | undefined])[] = [];
  fails: SpeakerError = { kind: "worker-died", detail: "test" };

  warmUp(): Promise<Result<void, SpeakerError>> {
    return Promise.resolve(this.warm);
  }
  say(spoken: Spoken, onStart: () => void, onWords?: () => void): Promise<Result<"ended" | "cancelled", SpeakerError>> {
    this.manners.push([spoken.pace, spoken.gainDb]);
    this.told.push(spoken.tone === undefined ? spoken.text : `${spoken.tone}: ${spoken.text}`);
    if (this.failsToSay) return Promise.resolve(fail(this.fails));
    this.#onStart = () => {
      onStart();
      if (spoken.text !== "") onWords?.();
    };
    return new Promise((resolve) => (this.#sounding = (how) => resolve(ok(how))));
  }
  mark = (mark: string): void => void this.told.push(`mark ${mark}`);
  dispose = (): void => void this.told.push("dispose");
  cancel(): void {
    this.told.push("silence");
    this.#sounding?.("cancelled");
  }
  starts(): void {
    this.#onStart?.();
  }
  async ends(): Promise<void> {
    this.#sounding?.("ended");
    await settle();
  }
}

/** Keeps nothing, and says that all went well. */
const forgetfulProfiles: ProfileStore = {
  load: () => Promise.resolve(ok(undefined)),
  save: () => Promise.resolve(ok(undefined)),
  clear: () => Promise.resolve(ok(undefined)),
};

/** Lets everything that waits for nothing but its turn happen. */
export const settle = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 2));

let cases = 0;

export async function conversation(
  store: FactStore = createMemoryFactStore(),
  recogniser = new FakeRecogniser(),
  context = approved,
  profiles = forgetfulProfiles,
) {
  const clock = createManualClock(1_800_000_000_000);
  const speaker = new FakeSpeaker();
  const shown: TalkState[] = [];
  const session = new Session({ context, store, newCaseId: () => `c${(cases += 1)}` });
  const levels: number[] = [];
  const talk = new Conversation({
    session,
    clock,
    speaker,
    recogniser,
    profiles,
    onChange: (state) => void shown.push(state),
    onMeter: (meter) => void levels.push(meter.levelDb),
  });
  await talk.start();
  await settle();
  const passMs = async (ms: number): Promise<void> => {
    clock.advanceTo(clock.nowMs() + ms);
    await settle();
  };
  const last = (): TalkState | undefined => shown.at(-1);
  return { talk, session, clock, speaker, recogniser, levels, last, passMs };
}
