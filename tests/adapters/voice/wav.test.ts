import { describe, expect, it } from "vitest";
import { WaveFile } from "wavefile";
import { readWav } from "../../../src/adapters/voice/wav.ts";

// Judge: files written by the general library `wavefile`.
const write = (channels: number, bits: string, samples: number[] | number[][]) => {
  const file = new WaveFile();
  file.fromScratch(channels, 22_050, bits, samples);
  return file;
};

describe("readWav", () => {
  it("reads mono 16-bit samples as fractions of full scale", () => {
    const read = readWav(write(1, "16", [0, 16_384, -32_768, 32_767]).toBuffer());
    expect(read).toEqual({
      ok: true,
      value: { pcm: new Float32Array([0, 0.5, -1, 32_767 / 32_768]), sampleRate: 22_050 },
    });
  });

  it("skips chunks that it does not know, odd lengths included", () => {
    const file = write(1, "16", [1_000, -1_000]);
    file.setTag("ICMT", "odd");
    expect(readWav(file.toBuffer())).toMatchObject({ ok: true, value: { sampleRate: 22_050 } });
  });

  const REFUSED: readonly [string, Uint8Array, string][] = [
    ["an empty file", new Uint8Array(0), "not a RIFF WAVE file"],
    ["a page", new TextEncoder().encode("<!doctype html><title>Not found</title>"), "not a RIFF WAVE file"],
    ["stereo", write(2, "16", [[0], [0]]).toBuffer(), "not mono 16-bit PCM"],
    ["24 bits", write(1, "24", [0]).toBuffer(), "not mono 16-bit PCM"],
    ["a file cut off in its header", write(1, "16", [0]).toBuffer().subarray(0, 30), "no data chunk"],
  ];
  it.each(REFUSED)("refuses %s", (_what, bytes, error) => {
    expect(readWav(bytes)).toEqual({ ok: false, error });
  });

  it("reads what there is of a file cut off in its samples", () => {
    const whole = write(1, "16", [1, 2, 3, 4]).toBuffer();
    expect(readWav(whole.subarray(0, whole.length - 4))).toMatchObject({ value: { pcm: { length: 2 } } });
  });
});
