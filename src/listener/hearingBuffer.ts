export type SoundBuffer = {
  append(block: Float32Array): void;
  /** Samples appended so far: the position of the next one. */
  end(): number;
  /** A copy from one position to another (exclusive). What is no longer or not yet there is left out. */
  cut(from: number, to: number): Float32Array;
  /** Fills `target` with the sound from a position on, all of which must be there. */
  read(from: number, target: Float32Array): void;
};

/**
 * Remembers the last `capacity` samples by their position since the start, without growing.
 * Errors: none. Not for: several channels.
 */
export function createSoundBuffer(capacity: number): SoundBuffer {
  const ring = new Float32Array(capacity);
  let end = 0;
  const read = (from: number, target: Float32Array): void => {
    for (let i = 0; i < target.length; i++) target[i] = ring[(from + i) % capacity]!;
  };
  return {
    append(block) {
      for (let i = Math.max(0, block.length - capacity); i < block.length; i++) {
        const sample = block[i]!;
        // One number that is none would spoil all that the models hear from then on.
        ring[(end + i) % capacity] = Number.isFinite(sample) ? sample : 0;
      }
      end += block.length;
    },
    end: () => end,
    cut(from, to) {
      const first = Math.max(from, end - capacity, 0);
      const piece = new Float32Array(Math.max(0, Math.min(to, end) - first));
      read(first, piece);
      return piece;
    },
    read,
  };
}
