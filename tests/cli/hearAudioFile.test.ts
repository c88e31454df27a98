import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import wavefile from "wavefile";
import { afterAll, describe, expect, test } from "vitest";
import { readAudioFile } from "../../src/cli/audioFile.ts";

const folder = mkdtempSync(join(tmpdir(), "tragus-audio-"));
afterAll(() => rmSync(folder, { recursive: true }));

function file(name: string, bytes: Uint8Array | string): string {
  const path = join(folder, name);
  writeFileSync(path, bytes);
  return path;
}

/** Outside judge: the files are written by `wavefile`, an independent library. */
function writeWav(name: string, channels: readonly number[][], rateHz: number, bitDepth: string): string {
  const full =
    bitDepth === "8" ? 127.5 : bitDepth.endsWith("f") || bitDepth === "64" ? 1 : 2 ** (Number(bitDepth) - 1) - 1;
  const scaled = channels.map((channel) =>
    channel.map((x) => (bitDepth === "8" ? Math.round(x * 127.5 + 127.5) : full === 1 ? x : Math.round(x * full))),
  );
  const wav = new wavefile.WaveFile();
  wav.fromScratch(channels.length, rateHz, bitDepth, channels.length === 1 ? scaled[0]! : scaled);
  return file(name, wav.toBuffer());
}

const tone = (rateHz: number, hz = 440): number[] =>
  Array.from({ length: rateHz / 2 }, (_, i) => 0.5 * Math.sin((2 * Math.PI * hz * i) / rateHz));

async function read(path: string): Promise<Float32Array> {
  const result = await readAudioFile(path);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

describe("WAV", () => {
  test.each([
    ["8", 0.01],
    ["16", 1e-3],
    ["24", 1e-3],
    ["32", 1e-3],
    ["32f", 1e-3],
    ["64", 1e-3],
  ])("%s bits", async (bits, within) => {
    const sound = await read(writeWav(`bits-${bits}.wav`, [tone(16_000)], 16_000, bits));
    const expected = tone(16_000);
    expect(sound).toHaveLength(8_000);
    expect(Math.max(...sound.map((x, i) => Math.abs(x - expected[i]!)))).toBeLessThan(within);
  });

  test.each([8_000, 11_025, 22_050, 44_100, 48_000, 96_000])("%i Hz comes out at 16 kHz", async (rateHz) => {
    const sound = await read(writeWav(`rate-${rateHz}.wav`, [tone(rateHz)], rateHz, "16"));
    const expected = tone(16_000);
    expect(Math.abs(sound.length - 8_000)).toBeLessThanOrEqual(1);
    for (let i = 1_000; i < 7_000; i++) expect(Math.abs(sound[i]! - expected[i]!)).toBeLessThan(2e-3);
  });

  test("two channels are averaged", async () => {
    const silent = tone(16_000).map(() => 0);
    const sound = await read(writeWav("stereo.wav", [tone(16_000), silent], 16_000, "16"));
    expect(Math.max(...sound)).toBeCloseTo(0.25, 2);
  });

  test("chunks around the sound are passed over, odd ones too", async () => {
    const plain = readFileSync(writeWav("plain.wav", [tone(16_000)], 16_000, "16"));
    const note = new Uint8Array([...Buffer.from("note"), 3, 0, 0, 0, 65, 66, 67, 0]);
    const path = file("chunks.wav", Buffer.concat([plain.subarray(0, 12), note, plain.subarray(12), note]));
    expect(await read(path)).toEqual(await read(join(folder, "plain.wav")));
  });

  test("a size that was never filled in means the rest of the file", async () => {
    const bytes = readFileSync(writeWav("streamed.wav", [tone(16_000)], 16_000, "16"));
    bytes.writeUInt32LE(0xffff_ffff, bytes.indexOf("data") + 4);
    expect(await read(file("streamed.wav", bytes))).toHaveLength(8_000);
  });
});

describe("what is refused, in one line that names the file", () => {
  const wav = (change: (bytes: Buffer) => void): Buffer => {
    const bytes = readFileSync(writeWav("base.wav", [tone(16_000)], 16_000, "16"));
    change(bytes);
    return bytes;
  };
  test.each<[string, string, () => Uint8Array | string]>([
    ["text", "not-audio", () => "one ten over sixty"],
    ["nothing", "not-audio", () => ""],
    ["RIFF that is no WAVE", "not-audio", () => wav((b) => b.write("AVI ", 8))],
    ["a compressed WAVE", "damaged", () => wav((b) => b.writeUInt16LE(2, 20))],
    ["no channels", "damaged", () => wav((b) => b.writeUInt16LE(0, 22))],
    ["an impossible rate", "odd-rate", () => wav((b) => b.writeUInt32LE(1_000, 24))],
    ["a WAVE cut off in its head", "damaged", () => wav(() => undefined).subarray(0, 20)],
    ["a WAVE without sound", "damaged", () => wav(() => undefined).subarray(0, 36)],
    ["a WAVE that stops early", "damaged", () => wav(() => undefined).subarray(0, 9_000)],
    ["an empty WAVE", "empty", () => wav((b) => b.writeUInt32LE(0, 40)).subarray(0, 44)],
    ["a broken FLAC", "damaged", () => "fLaC and then nothing that a decoder could read"],
  ])("%s", async (name, kind, bytes) => {
    const path = file(`${name}.bin`, bytes());
    const result = await readAudioFile(path);
    expect(result).toMatchObject({ ok: false, error: { kind } });
    if (result.ok) return;
    expect(result.error.message.startsWith(`${path}: `)).toBe(true);
    expect(result.error.message).not.toContain("\n");
  });

  test("a missing file, and a folder", async () => {
    expect(await readAudioFile(join(folder, "none.wav"))).toMatchObject({ error: { kind: "missing" } });
    expect(await readAudioFile(folder)).toMatchObject({ error: { kind: "unreadable" } });
  });

  test("numbers that are none", async () => {
    const bytes = readFileSync(writeWav("nan.wav", [[0.1, 0.2, 0.3]], 16_000, "32f"));
    bytes.writeFloatLE(NaN, bytes.length - 4);
    expect(await readAudioFile(file("nan.wav", bytes))).toMatchObject({ error: { kind: "damaged" } });
  });
});

const RECORDINGS = resolve(import.meta.dirname, "../../../shared/audio");
describe.skipIf(!existsSync(RECORDINGS))("FLAC (skipped where there are no recordings beside the project)", () => {
  // Outside judge: the lengths that the recordings' own list states.
  const rows = readFileSync(join(RECORDINGS, "noise-manifest.csv"), "utf8")
    .split("\n")
    .slice(1, 4)
    .map((line) => line.split(","))
    .map(([name, , , , seconds]) => [name!, Number(seconds)] as const);
  test.each(rows)("%s is %d s long", async (name, seconds) => {
    const sound = await read(join(RECORDINGS, name));
    expect(Math.abs(sound.length / 16_000 - seconds)).toBeLessThan(0.01);
    expect(Math.max(...sound.subarray(0, 100_000))).toBeGreaterThan(0.001);
  });

  test("one that stops in mid-frame is refused", async () => {
    const bytes = readFileSync(join(RECORDINGS, rows[0]![0]));
    expect(await readAudioFile(file("cut.flac", bytes.subarray(0, bytes.length / 2)))).toMatchObject({
      error: { kind: "damaged" },
    });
  });
});
