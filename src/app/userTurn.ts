import type { Mouth } from "./mouth.ts";

/**
 * Tells our voice when the user talks and when he is done. He is done once what he said has been answered, not when his
 * sound ends: what waited to be said may be untrue by then.
 */
export class UserTurn {
  /** Counts the utterances that began: an answer to an earlier one does not end a later one. */
  #begun = 0;
  #isToEnd = false;
  #answering: Promise<void> | undefined;
  readonly #mouth: Mouth;

  constructor(mouth: Mouth) {
    this.#mouth = mouth;
  }

  start(): void {
    this.#begun++;
    this.#isToEnd = false;
    this.#mouth.tell({ kind: "userStarted" });
  }

  /** The sound has ended. If nothing is heard of it, it was no word, and the next tick ends the turn. */
  soundEnded(): void {
    this.#isToEnd = true;
  }

  /** Words were heard and are being answered; they are done with when that settles. */
  answered(answering: Promise<void>): void {
    const turn = this.#begun;
    this.#answering = answering;
    void answering.finally(() => {
      if (this.#answering === answering) this.#answering = undefined;
      if (turn === this.#begun) this.end();
    });
  }

  tick(): void {
    if (this.#isToEnd && this.#answering === undefined) this.end();
  }

  end(): void {
    this.#isToEnd = false;
    this.#mouth.tell({ kind: "userEnded" });
  }
}
