import { readFile } from "node:fs/promises";
import { FLACDecoder } from "@wasm-audio-decoders/flac";
import { fail, ok, type Result } from "../core/result.ts";
import { resample } from "../listener/resample.ts";
import { readWav, type RawSound } from "./audioFileWav.ts";

const LISTENER_RATE_HZ = 16_000;
const LOWEST_RATE_HZ = 8_000;
const HIGHEST_RATE_HZ = 192_000;

export type AudioFileError = {
  readonly kind: "missing" | "unreadable" | "not-audio" | "damaged" | "empty" | "odd-rate";
  readonly message: string;
};

/**
 * Reads a WAV or FLAC file as the listener wants it: one channel, 16 kHz, −1 to 1. Channels are averaged.
 * Errors carry one line for people, with the path. Not for: other formats.
 */
export async function readAudioFile(path: string): Promise<Result<Float32Array, AudioFileError>> {
  let bytes: Uint8Array;
  try {
    bytes = await readFile(path);
  } catch (error) {
    const missing = (error as NodeJS.ErrnoException).code === "ENOENT";
    if (missing) return fail({ kind: "missing", message: `${path}: no such file` });
    return fail({ kind: "unreadable", message: `${path}: cannot be read (${(error as Error).message})` });
  }
  const magic = String.fromCharCode(...bytes.subarray(0, 4));
  const form = String.fromCharCode(...bytes.subarray(8, 12));
  if (magic !== "fLaC" && !(magic === "RIFF" && form === "WAVE"))
    return fail({ kind: "not-audio", message: `${path}: not a WAV or FLAC file` });
  const sound = magic === "fLaC" ? await readFlac(bytes) : readWav(bytes);
  if (!sound.ok) return fail({ kind: "damaged", message: `${path}: ${sound.error}` });
  return toListenerSound(path, sound.value);
}

async function readFlac(bytes: Uint8Array): Promise<Result<RawSound, string>> {
  const decoder = new FLACDecoder();
  try {
    await decoder.ready;
    const decoded = await decoder.decodeFile(bytes);
    const firstError = decoded.errors[0];
    // Half a number is another number: a file with a damaged or missing frame is refused, not read around.
    if (firstError !== undefined) return fail(`it is damaged (${firstError.message})`);
    if (decoded.samplesDecoded === 0) return fail("nothing in it can be decoded");
    const stated = statedFlacSamples(bytes);
    if (stated !== 0 && decoded.samplesDecoded !== stated) return fail("it is cut short");
    return ok({ channels: decoded.channelData, rateHz: decoded.sampleRate });
  } catch (error) {
    return fail(`it cannot be decoded (${error instanceof Error ? error.message : String(error)})`);
  } finally {
    decoder.free();
  }
}

/** Samples a channel as the file's first block states them, 0 when it does not. Source: RFC 9639, section 8.2. */
function statedFlacSamples(bytes: Uint8Array): number {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return bytes.length < 26 ? 0 : (view.getUint8(21) & 0x0f) * 2 ** 32 + view.getUint32(22);
}

function toListenerSound(path: string, sound: RawSound): Result<Float32Array, AudioFileError> {
  const first = sound.channels[0];
  if (first === undefined || first.length === 0) return fail({ kind: "empty", message: `${path}: holds no sound` });
  if (!Number.isInteger(sound.rateHz) || sound.rateHz < LOWEST_RATE_HZ || sound.rateHz > HIGHEST_RATE_HZ)
    return fail({ kind: "odd-rate", message: `${path}: sample rate ${sound.rateHz} Hz is not supported` });
  const mono = new Float32Array(first.length);
  for (const channel of sound.channels)
    for (let i = 0; i < mono.length; i++) mono[i] = mono[i]! + channel[i]! / sound.channels.length;
  if (!mono.every(Number.isFinite))
    return fail({ kind: "damaged", message: `${path}: holds values that are not numbers` });
  return ok(resample(mono, sound.rateHz, LISTENER_RATE_HZ));
}
