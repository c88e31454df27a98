const FRAME = 160; // 10 ms at 16 kHz
const WITHIN = 100; // 20 dB
const LOOK_FRAMES = 15;
const LOUD_FRAMES = 6;
const AUDIBLE = 0.01;

/** Where a voice at a known level first is over −40 dBFS. A smack of the lips before it would count. */
export const firstAudible = (pcm: Float32Array): number => pcm.findIndex((x) => Math.abs(x) > AUDIBLE);

/**
 * Where speech begins, whatever its level: the first 10 ms within 20 dB of the loudest, if six of the fifteen frames from
 * there on are. People's recordings begin with clicks, a third of a second before the first word.
 */
export function speechOnset(pcm: Float32Array): number {
  const energies: number[] = [];
  for (let at = 0; at + FRAME <= pcm.length; at += FRAME)
    energies.push(pcm.subarray(at, at + FRAME).reduce((sum, x) => sum + x * x, 0));
  const floor = energies.reduce((a, b) => Math.max(a, b), 0) / WITHIN;
  const loud = energies.map((energy) => energy >= floor);
  const first = loud.findIndex(
    (isLoud, i) => isLoud && loud.slice(i, i + LOOK_FRAMES).filter(Boolean).length >= LOUD_FRAMES,
  );
  return FRAME * Math.max(0, first);
}
