import { fail, ok, type Result } from "../core/result.ts";

export type RawSound = { readonly channels: readonly Float32Array[]; readonly rateHz: number };

const FORMAT_INTEGER = 1;
const FORMAT_FLOAT = 3;
const FORMAT_EXTENSIBLE = 0xfffe;
const UNSTATED_SIZE = 0xffff_ff00;

type Format = { readonly kind: number; readonly channels: number; readonly rateHz: number; readonly bits: number };

/**
 * Reads a RIFF WAVE file: 8, 16, 24 or 32-bit integers, 32 or 64-bit floats, any number of channels, any rate.
 * The error is a reason in words. Not for: compressed WAVE, RF64.
 * Source: the public WAVE format description (chunks `fmt ` and `data`, little-endian).
 */
export function readWav(bytes: Uint8Array): Result<RawSound, string> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let format: Format | undefined;
  let at = 12;
  while (at + 8 <= bytes.length) {
    const id = String.fromCharCode(...bytes.subarray(at, at + 4));
    const size = view.getUint32(at + 4, true);
    const from = at + 8;
    if (id === "fmt ") {
      if (size < 16 || from + 16 > bytes.length) return fail("its format chunk is cut short");
      format = readFormat(view, from, size);
    }
    if (id === "data") {
      if (format === undefined) return fail("its sound comes before its format");
      // A writer that could not seek back leaves the size at 0 or at the maximum: take what is there.
      const sizeIsStated = size !== 0 && size < UNSTATED_SIZE;
      if (sizeIsStated && from + size > bytes.length) return fail("it is cut short");
      return readSamples(view, from, sizeIsStated ? size : bytes.length - from, format);
    }
    at = from + size + (size % 2);
  }
  return fail("it holds no sound");
}

function readFormat(view: DataView, from: number, size: number): Format {
  const stated = view.getUint16(from, true);
  const kind = stated === FORMAT_EXTENSIBLE && size >= 26 ? view.getUint16(from + 24, true) : stated;
  const channels = view.getUint16(from + 2, true);
  return { kind, channels, rateHz: view.getUint32(from + 4, true), bits: view.getUint16(from + 14, true) };
}

function readSamples(view: DataView, from: number, length: number, format: Format): Result<RawSound, string> {
  const read = sampleReader(view, format);
  if (read === undefined) return fail(`its encoding is not known (format ${format.kind}, ${format.bits} bits)`);
  if (format.channels === 0) return fail("it states no channels");
  const bytesEach = format.bits / 8;
  const count = Math.floor(length / (bytesEach * format.channels));
  const channels = Array.from({ length: format.channels }, () => new Float32Array(count));
  channels.forEach((channel, c) => {
    for (let i = 0; i < count; i++) channel[i] = read(from + (i * format.channels + c) * bytesEach);
  });
  return ok({ channels, rateHz: format.rateHz });
}

function sampleReader(view: DataView, format: Format): ((at: number) => number) | undefined {
  if (format.kind === FORMAT_FLOAT) {
    if (format.bits === 32) return (at) => view.getFloat32(at, true);
    if (format.bits === 64) return (at) => view.getFloat64(at, true);
  }
  if (format.kind === FORMAT_INTEGER) {
    if (format.bits === 8) return (at) => (view.getUint8(at) - 128) / 128;
    if (format.bits === 16) return (at) => view.getInt16(at, true) / 32768;
    if (format.bits === 24) return (at) => (view.getUint8(at) + view.getInt16(at + 1, true) * 256) / 8388608;
    if (format.bits === 32) return (at) => view.getInt32(at, true) / 2147483648;
  }
  return undefined;
}
