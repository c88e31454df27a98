export type SoundWatch = {
  /** Sound arrived. */
  seen(): void;
  close(): void;
};

/**
 * Notices that no sound arrives at all: a suspended audio context, a dead audio thread.
 *
 * @param limitMs  how long without sound is a fault. Counted in ticks, so that a page asleep accuses nobody.
 * @param onMissing every tick from then on, with the time so far, until sound is seen.
 */
export function watchSound(limitMs: number, tickMs: number, onMissing: (forMs: number) => void): SoundWatch {
  let ticks = 0;
  const timer = setInterval(() => {
    ticks++;
    if (ticks * tickMs > limitMs) onMissing(ticks * tickMs);
  }, tickMs);
  return {
    seen() {
      ticks = 0;
    },
    close: () => clearInterval(timer),
  };
}
