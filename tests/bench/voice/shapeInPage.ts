import { shapeForNoise } from "../../../src/adapters/voice/shapeForNoise.ts";

/** 32-bit samples in base64, as they pass between Node and a page. */
export type PackedSound = { readonly bytes: string; readonly rateHz: number };

/** As sound devices have it. */
const DEVICE_RATE_HZ = 48_000;
/** For the look-ahead and what filters still ring. */
const TAIL_S = 0.05;

/** Runs in a page: each sound through the graph that the app plays its words through. */
export async function shapeSounds(sounds: readonly PackedSound[]): Promise<readonly PackedSound[]> {
  const shaped: PackedSound[] = [];
  for (const { bytes, rateHz } of sounds) {
    const pcm = new Float32Array(Uint8Array.from(atob(bytes), (letter) => letter.charCodeAt(0)).buffer);
    const length = Math.ceil((pcm.length / rateHz + TAIL_S) * DEVICE_RATE_HZ);
    const context = new OfflineAudioContext(1, length, DEVICE_RATE_HZ);
    const source = context.createBufferSource();
    source.buffer = context.createBuffer(1, pcm.length, rateHz);
    source.buffer.copyToChannel(pcm, 0);
    source.connect(shapeForNoise(context, context.destination, 0));
    source.start();
    const rendered = (await context.startRendering()).getChannelData(0);
    shaped.push({ bytes: pack(new Uint8Array(rendered.buffer)), rateHz: DEVICE_RATE_HZ });
  }
  return shaped;
}

function pack(bytes: Uint8Array): string {
  let text = "";
  for (let i = 0; i < bytes.length; i += 32_768) text += String.fromCharCode(...bytes.subarray(i, i + 32_768));
  return btoa(text);
}
