type Out = { readonly isTTY?: boolean; write(text: string): unknown };

const WIDTH = 30;
const REDRAW_MS = 100;
/** Without a terminal, a line for each so many files. */
const EVERY = 1000;
const CLEAR = "\r\u001b[K";

/** Shows on standard error how far the work is: a bar in a terminal, else a plain count now and then. */
export class Progress {
  readonly #out: Out;
  readonly #total: number;
  readonly #nowMs: () => number;
  #done = 0;
  #drawnAtMs = -Infinity;
  #isDrawn = false;

  constructor(out: Out, total: number, nowMs: () => number) {
    this.#out = out;
    this.#total = total;
    this.#nowMs = nowMs;
  }

  /** One more file is done. */
  step(): void {
    this.#done += 1;
    const { isTTY = false } = this.#out;
    if (isTTY && this.#nowMs() - this.#drawnAtMs >= REDRAW_MS) this.#draw();
    if (!isTTY && this.#done % EVERY === 0) this.#out.write(`${this.#count()}\n`);
  }

  /** Takes the bar away, so that something can be printed in its place; the next step draws it again. */
  clear(): void {
    if (this.#isDrawn) this.#out.write(CLEAR);
    this.#isDrawn = false;
  }

  #count(): string {
    return `${this.#done} of ${this.#total} files read`;
  }

  #draw(): void {
    const filled = Math.round((WIDTH * this.#done) / this.#total);
    this.#out.write(`${CLEAR}[${"#".repeat(filled)}${".".repeat(WIDTH - filled)}] ${this.#count()}`);
    this.#drawnAtMs = this.#nowMs();
    this.#isDrawn = true;
  }
}
