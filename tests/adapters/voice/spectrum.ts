/** Strength of one frequency in a stretch of sound, dB against full scale: a Hann-windowed discrete Fourier sum. */
export function levelDb(pcm: Float32Array, hz: number, sampleRate: number): number {
  let re = 0;
  let im = 0;
  pcm.forEach((sample, i) => {
    const windowed = sample * (0.5 - 0.5 * Math.cos((2 * Math.PI * i) / pcm.length));
    re += windowed * Math.cos((2 * Math.PI * hz * i) / sampleRate);
    im -= windowed * Math.sin((2 * Math.PI * hz * i) / sampleRate);
  });
  return 10 * Math.log10((re * re + im * im) / (pcm.length / 4) ** 2 + 1e-12);
}

export type Burst = { readonly onsetMs: number; readonly lengthMs: number };

/** Stretches of sound parted by at least 10 ms of digital silence. */
export function burstsOf(pcm: Float32Array, sampleRate: number): readonly Burst[] {
  const gap = sampleRate / 100;
  const bursts: { first: number; last: number }[] = [];
  pcm.forEach((sample, i) => {
    if (sample === 0) return;
    const open = bursts.at(-1);
    if (open && i - open.last < gap) open.last = i;
    else bursts.push({ first: i, last: i });
  });
  const toMs = (samples: number) => (samples * 1000) / sampleRate;
  return bursts.map(({ first, last }) => ({ onsetMs: toMs(first), lengthMs: toMs(last - first) }));
}
