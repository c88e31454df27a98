import { showSpeakerError } from "./hearingWords.ts";
import type { Mark, Speaker } from "./ports.ts";
import { emptyVoiceQueue, queueVoice, type QueueItem, type VoiceInput } from "./voiceQueue.ts";

export type MouthParts = {
  /** Our voice sounds from now on, or is silent. */
  readonly onSounding: (sounding: boolean) => void;
  /** These words are heard now. */
  readonly onSaying: (text: string) => void;
  /** What is wrong with the voice, to be shown; empty when it works. */
  readonly onState: (text: string) => void;
};

/** The one voice: what is to be said goes in, and the queue decides when. Errors: shown, as they cannot be said. */
export class Mouth {
  #speaker: Speaker;
  #queue = emptyVoiceQueue;
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
    this.#on.onState(warm.ok ? "" : showSpeakerError(warm.error));
  }

  mark(mark: Mark): void {
    this.#speaker.mark(mark);
  }

  tell(input: VoiceInput): void {
    const [queue, effects] = queueVoice(this.#queue, input);
    this.#queue = queue;
    for (const effect of effects) {
      if (effect.kind === "silence") this.#speaker.cancel();
      else void this.#speak(effect.item);
    }
  }

  dispose(): void {
    this.#speaker.dispose();
  }

  async #speak(item: QueueItem): Promise<void> {
    const tone = item.priority === "none" ? {} : { tone: item.priority };
    const brisk = item.withinMs === undefined ? {} : { withinMs: item.withinMs };
    const said = await this.#speaker.say({ text: item.text, ...tone, ...brisk }, () => {
      this.#on.onSounding(true);
      this.#on.onSaying(item.text);
    });
    if (!said.ok) this.#on.onState(showSpeakerError(said.error));
    this.tell({ kind: "ended", id: item.id });
    if (!this.isSpeaking) this.#on.onSounding(false);
  }
}
