/** 200 kB and less of memory at a time, so that growing never copies what is there. */
const ROWS_A_CHUNK = 1024;

/** Rows of as many numbers each, eight bytes a number: what is kept of very many cases. */
export class NumberRows {
  readonly #width: number;
  readonly #chunks: Float64Array[] = [];
  #length = 0;

  constructor(width: number) {
    this.#width = width;
  }

  get length(): number {
    return this.#length;
  }

  /** @returns the place of the new row, from 0. */
  add(numbers: readonly number[]): number {
    const row = this.#length;
    if (row % ROWS_A_CHUNK === 0) this.#chunks.push(new Float64Array(ROWS_A_CHUNK * this.#width).fill(NaN));
    this.#length += 1;
    for (let column = 0; column < this.#width; column++) this.set(row, column, numbers[column] ?? NaN);
    return row;
  }

  /** NaN where there is no such row. */
  at(row: number, column: number): number {
    return this.#chunks[Math.floor(row / ROWS_A_CHUNK)]?.[(row % ROWS_A_CHUNK) * this.#width + column] ?? NaN;
  }

  set(row: number, column: number, number: number): void {
    const chunk = this.#chunks[Math.floor(row / ROWS_A_CHUNK)];
    if (chunk !== undefined) chunk[(row % ROWS_A_CHUNK) * this.#width + column] = number;
  }
}
