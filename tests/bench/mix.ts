const FRAME = 320; // 20 ms at 16 kHz
/** A frame this far under the loudest one is a pause, not speech. */
const PAUSE_BELOW_LOUDEST = 1e-3; // −30 dB

const meanSquare = (pcm: Float32Array, from = 0, to = pcm.length): number => {
  let sum = 0;
  for (let i = from; i < to; i++) sum += pcm[i]! ** 2;
  return to > from ? sum / (to - from) : 0;
};

/** Mean square of the sound while somebody speaks: the frames of 20 ms within 30 dB of the loudest. Unweighted. */
export function speechPower(pcm: Float32Array): number {
  const frames: number[] = [];
  for (let at = 0; at + FRAME <= pcm.length; at += FRAME) frames.push(meanSquare(pcm, at, at + FRAME));
  const floor = frames.reduce((a, b) => Math.max(a, b), 0) * PAUSE_BELOW_LOUDEST;
  const spoken = frames.filter((power) => power > floor);
  return spoken.reduce((a, b) => a + b, 0) / Math.max(1, spoken.length);
}

/** The same sound at so many dB under full scale, measured while speaking. Silence stays silence. */
export function atLevel(pcm: Float32Array, dbfs: number): Float32Array {
  const power = speechPower(pcm);
  if (power === 0) return pcm;
  const gain = Math.sqrt(10 ** (dbfs / 10) / power);
  return pcm.map((x) => x * gain);
}

/** So many samples of a noise, from a place in it, again and again where it is too short. */
export function loopFrom(noise: Float32Array, from: number, length: number): Float32Array {
  const out = new Float32Array(length);
  for (let i = 0; i < length; i++) out[i] = noise[(from + i) % noise.length]!;
  return out;
}

/** Silence on both sides. */
export function pad(pcm: Float32Array, before: number, after: number): Float32Array {
  const out = new Float32Array(before + pcm.length + after);
  out.set(pcm, before);
  return out;
}

/**
 * Speech with noise under it. The ratio is that of the speech while speaking to the whole of the noise, unweighted,
 * full band: the measure of the recordings with noise that this benchmark also reads.
 *
 * @param noise as long as `speech`.
 */
export function mixAt(speech: Float32Array, noise: Float32Array, snrDb: number): Float32Array {
  const noisePower = meanSquare(noise);
  if (noisePower === 0) return speech;
  const gain = Math.sqrt(speechPower(speech) / noisePower / 10 ** (snrDb / 10));
  return speech.map((x, i) => x + noise[i]! * gain);
}
