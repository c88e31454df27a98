import { writeFileSync } from "node:fs";

const HEADER_BYTES = 44;
const BYTES_PER_SAMPLE = 2;

/** Writes one channel of 16-bit PCM. Samples are in -1…1; what lies outside is clipped. */
export function writeWav(path: string, pcm: Float32Array, sampleRateHz: number): void {
  const dataBytes = pcm.length * BYTES_PER_SAMPLE;
  const wav = Buffer.alloc(HEADER_BYTES + dataBytes);
  wav.write("RIFF", 0, "latin1");
  wav.writeUInt32LE(HEADER_BYTES - 8 + dataBytes, 4);
  wav.write("WAVEfmt ", 8, "latin1");
  wav.writeUInt32LE(16, 16); // length of the format block
  wav.writeUInt16LE(1, 20); // integer PCM
  wav.writeUInt16LE(1, 22); // channels
  wav.writeUInt32LE(sampleRateHz, 24);
  wav.writeUInt32LE(sampleRateHz * BYTES_PER_SAMPLE, 28);
  wav.writeUInt16LE(BYTES_PER_SAMPLE, 32);
  wav.writeUInt16LE(8 * BYTES_PER_SAMPLE, 34);
  wav.write("data", 36, "latin1");
  wav.writeUInt32LE(dataBytes, 40);
  pcm.forEach((sample, i) => {
    wav.writeInt16LE(Math.round(Math.max(-1, Math.min(1, sample)) * 32767), HEADER_BYTES + i * BYTES_PER_SAMPLE);
  });
  writeFileSync(path, wav);
}

/**
 * Strings sounds of one sample rate together, with silence before each and after the last.
 *
 * @param gapsS silences in seconds, one more than there are sounds: before the first, between, after the last.
 */
export function joinWithSilence(
  sounds: readonly Float32Array[],
  gapsS: readonly number[],
  sampleRateHz: number,
): Float32Array {
  if (gapsS.length !== sounds.length + 1) {
    throw new Error(
      `${String(sounds.length)} sounds need ${String(sounds.length + 1)} gaps, got ${String(gapsS.length)}`,
    );
  }
  const gaps = gapsS.map((gapS) => Math.round(gapS * sampleRateHz));
  const total = gaps.reduce((sum, n) => sum + n, 0) + sounds.reduce((sum, sound) => sum + sound.length, 0);
  const joined = new Float32Array(total);
  let at = gaps[0] ?? 0;
  sounds.forEach((sound, i) => {
    joined.set(sound, at);
    at += sound.length + (gaps[i + 1] ?? 0);
  });
  return joined;
}
