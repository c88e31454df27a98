export type SoundBuffer = {
  append(block: Float32Array): void;
  /** Samples appended so far: the position of the next one. */
  end(): number;
  /** A copy from one position to another (exclusive). What is no longer or not yet there is left out. */
  cut(from: number, to: number): Float32Array;
};

/**
 * Remembers the last `capacity` samples by their position since the start, without growing.
 * Errors: none. Not for: several channels.
 */
export function createSoundBuffer(capacity: number): SoundBuffer {
  const ring = new Float32Array(capacity);
  let end = 0;
  return {
    append(block) {
      for (let i = Math.max(0, block.length - capacity); i < block.length; i++) ring[(end + i) % capacity] = block[i]!;
      end += block.length;
    },
    end: () => end,
    cut(from, to) {
      const first = Math.max(from, end - capacity, 0);
      const piece = new Float32Array(Math.max(0, Math.min(to, end) - first));
      for (let i = 0; i < piece.length; i++) piece[i] = ring[(first + i) % capacity]!;
      return piece;
    },
  };
}
