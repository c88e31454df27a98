import { fail, ok, type Result } from "../../core/result.ts";

/** Mono sound, samples in -1..1. */
export type Sound = { readonly pcm: Float32Array; readonly sampleRate: number };

const HEADER_BYTES = 12;
const CHUNK_HEADER_BYTES = 8;
const INT16_FULL_SCALE = 32768;

/**
 * Reads the mono 16-bit PCM that the synthesiser writes.
 *
 * Errors: a sentence saying what was not as expected. Not for sound files from anywhere else.
 * Source: RIFF WAVE, "fmt " and "data" chunks, little-endian.
 */
export function readWav(bytes: Uint8Array): Result<Sound, string> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const tag = (at: number) => String.fromCharCode(...bytes.subarray(at, at + 4));
  if (bytes.byteLength < HEADER_BYTES || tag(0) !== "RIFF" || tag(8) !== "WAVE") return fail("not a RIFF WAVE file");
  let sampleRate: number | undefined;
  let at = HEADER_BYTES;
  while (at + CHUNK_HEADER_BYTES <= bytes.byteLength) {
    const sizeBytes = view.getUint32(at + 4, true);
    const start = at + CHUNK_HEADER_BYTES;
    if (tag(at) === "fmt " && start + 16 <= bytes.byteLength) {
      const [format, channels, bits] = [0, 2, 14].map((offset) => view.getUint16(start + offset, true));
      if (format !== 1 || channels !== 1 || bits !== 16) return fail("not mono 16-bit PCM");
      sampleRate = view.getUint32(start + 4, true);
    }
    if (tag(at) === "data") {
      if (sampleRate === undefined) return fail("no format before the data");
      return ok({ pcm: readSamples(view, start, Math.min(sizeBytes, bytes.byteLength - start)), sampleRate });
    }
    at = start + sizeBytes + (sizeBytes % 2);
  }
  return fail("no data chunk");
}

function readSamples(view: DataView, start: number, sizeBytes: number): Float32Array {
  const pcm = new Float32Array(Math.floor(sizeBytes / 2));
  for (let i = 0; i < pcm.length; i++) pcm[i] = view.getInt16(start + 2 * i, true) / INT16_FULL_SCALE;
  return pcm;
}
