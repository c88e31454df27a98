import { FIRST_EARS, stepEars, type Ears, type EarsEffect, type EarsInput } from "./ears.ts";
import type { Clock, GrammarState, HearingEvent, Recogniser } from "./ports.ts";

export type HearerParts = {
  readonly clock: Clock;
  readonly recogniser: Recogniser;
  readonly onEvent: (event: HearingEvent) => void;
  readonly onEffect: (effect: Exclude<EarsEffect, { readonly kind: "hold" }>) => void;
  /** How we listen is another way now. */
  readonly onChange: () => void;
};

/** The ears with the engine they listen with, which may be replaced by another that then listens in the same way. */
export class Hearer {
  #ears = FIRST_EARS;
  #grammar: GrammarState = "open";
  #recogniser: Recogniser;
  #unsubscribe: () => void;
  readonly #p: HearerParts;

  constructor(parts: HearerParts) {
    this.#p = parts;
    this.#recogniser = parts.recogniser;
    this.#unsubscribe = parts.recogniser.onEvent(parts.onEvent);
  }

  get ears(): Ears {
    return this.#ears;
  }

  get recogniser(): Recogniser {
    return this.#recogniser;
  }

  /** An answer is asked for. */
  get isAsking(): boolean {
    return this.#grammar.startsWith("asked");
  }

  replace(recogniser: Recogniser, isSpeaking: boolean): void {
    this.#unsubscribe();
    this.#recogniser.dispose();
    this.#recogniser = recogniser;
    this.#unsubscribe = recogniser.onEvent(this.#p.onEvent);
    recogniser.setMode(this.#ears.mode);
    recogniser.useGrammar(this.#grammar);
    recogniser.setSpeaking(isSpeaking);
    this.step({ kind: "stopped" });
  }

  useGrammar(state: GrammarState): void {
    if (state !== this.#grammar) this.#recogniser.useGrammar(state);
    this.#grammar = state;
  }

  step(input: EarsInput): void {
    const [ears, effects] = stepEars(this.#ears, input);
    const isSame = ears.mode === this.#ears.mode && ears.holding === this.#ears.holding;
    this.#ears = ears;
    for (const effect of effects) {
      if (effect.kind === "hold") this.#recogniser.hold(effect.down);
      else this.#p.onEffect(effect);
    }
    if (!isSame || effects.length > 0 || input.kind === "stopped") this.#p.onChange();
  }

  /** Our own voice sounds from now on, or is silent. */
  voice(sounding: boolean): void {
    this.#recogniser.setSpeaking(sounding);
    this.step({ kind: "ownVoice", sounding, waits: this.isAsking, atMs: this.#p.clock.nowMs() });
  }
}
