import { showSpeakerError, VOICE_AGAIN } from "./hearingWords.ts";
import type { Clock, Mark, Speaker, SpeakerError, Spoken } from "./ports.ts";
import { emptyVoiceQueue, queueVoice, type NewItem, type QueueItem, type VoiceInput } from "./voiceQueue.ts";

/** What is to be done when words that sounded have ended or were cut off. */
export type WordsEnd = (how: "ended" | "cut") => void;

export type MouthParts = {
  readonly clock: Clock;
  /** How this is to be said now. */
  readonly mannerOf: (item: QueueItem) => Pick<Spoken, "pace" | "gainDb">;
  /** Our voice sounds from now on, or is silent. */
  readonly onSounding: (sounding: boolean) => void;
  /** These words begin to sound. */
  readonly onWords: (item: QueueItem) => WordsEnd;
  /** These words can only be read. */
  readonly onMute: (text: string) => void;
  /** These alerts were not said in time. */
  readonly onUnsaid: (alertIds: readonly string[]) => void;
  /** What is wrong with the voice, to be shown; empty when it works. */
  readonly onState: (text: string) => void;
};

/**
 * The one voice: what is to be said goes in, and the queue decides when. Errors: shown, as they cannot be said; that words
 * fail is told once, by a mark of its own where sound is to be had, and that they work again is shown once.
 */
export class Mouth {
  #speaker: Speaker;
  #queue = emptyVoiceQueue;
  #isMute = false;
  readonly #on: MouthParts;

  constructor(speaker: Speaker, parts: MouthParts) {
    this.#speaker = speaker;
    this.#on = parts;
  }

  get isSpeaking(): boolean {
    return this.#queue.speaking !== undefined;
  }

  /** Speaks with another voice from now on; the old one is given up. */
  replace(speaker: Speaker): Promise<void> {
    this.#speaker.dispose();
    this.#speaker = speaker;
    return this.warmUp();
  }

  async warmUp(): Promise<void> {
    const warm = await this.#speaker.warmUp();
    if (!warm.ok) return this.#fail(warm.error);
    this.#isMute = false;
    this.#on.onState("");
  }

  mark(mark: Mark): void {
    this.#speaker.mark(mark);
  }

  tell(input: VoiceInput): void {
    const [queue, effects] = queueVoice(this.#queue, input, this.#on.clock.nowMs());
    this.#queue = queue;
    for (const effect of effects) {
      if (effect.kind === "silence") this.#speaker.cancel();
      else if (effect.kind === "unsaid") this.#on.onUnsaid(effect.alertIds);
      else void this.#speak(effect.item);
    }
  }

  say(...items: readonly NewItem[]): void {
    if (items.length > 0) this.tell({ kind: "say", items });
  }

  /** These alerts no longer hold. */
  withdraw(...withdrawn: readonly string[]): void {
    this.tell({ kind: "say", items: [], withdrawn });
  }

  dispose(): void {
    this.#speaker.dispose();
  }

  async #speak(item: QueueItem): Promise<void> {
    const { text, priority, withinMs } = item;
    const tone = priority === "none" ? {} : { tone: priority };
    const brisk = withinMs === undefined ? {} : { withinMs };
    let onEnd: WordsEnd | undefined;
    const said = await this.#speaker.say(
      { text, ...tone, ...brisk, ...this.#on.mannerOf(item) },
      () => this.#on.onSounding(true),
      () => (onEnd = this.#on.onWords(item)),
    );
    onEnd?.(said.ok && said.value === "ended" ? "ended" : "cut");
    if (said.ok) {
      if (onEnd !== undefined) this.#works();
    } else if (said.error.kind !== "disposed") {
      this.#fail(said.error);
      this.#on.onMute(text);
    }
    this.tell({ kind: "ended", id: item.id });
    if (!this.isSpeaking) this.#on.onSounding(false);
  }

  #fail(error: SpeakerError): void {
    this.#on.onState(showSpeakerError(error));
    // Where sound is blocked as a whole, a mark cannot tell it.
    if (!this.#isMute && error.kind !== "audio-blocked") this.mark("mute");
    this.#isMute = true;
  }

  /** The voice that is heard again tells it by itself; the screen says it until the words after these. */
  #works(): void {
    this.#on.onState(this.#isMute ? VOICE_AGAIN : "");
    this.#isMute = false;
  }
}
