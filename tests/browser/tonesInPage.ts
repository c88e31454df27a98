import { createLine, type Line } from "../../src/adapters/voice/line.ts";
import { renderMark } from "../../src/adapters/voice/marks.ts";
import { renderTone } from "../../src/adapters/voice/tones.ts";

/** What a page is to play into an offline context, and for how long. */
export type Playing = {
  readonly sampleRate: number;
  readonly lastsS: number;
  readonly gainDb?: number;
  readonly sound:
    | { readonly tone: "high" | "medium" | "low" }
    | { readonly mark: "heard" | "asked" | "refused" | "called" }
    /** A steady wave handed in as if it were words. */
    | { readonly wordsHz: number; readonly peak: number };
  /** When it is stopped. */
  readonly stopAtS?: number;
  /** When its spectrum is taken. */
  readonly spectrumAtS?: number;
};

/** 32-bit samples in base64: what would reach the device, and the spectrum in dB, empty where it was not asked for. */
export type Played = { readonly bytes: string; readonly spectrumBytes: string };

const FFT_SIZE = 2_048;

/** Runs in a page: plays through the app's own line. */
export async function playOffline(playing: Playing): Promise<Played> {
  const { sampleRate, lastsS, gainDb = 0, sound, stopAtS, spectrumAtS } = playing;
  const context = new OfflineAudioContext(1, Math.round(lastsS * sampleRate), sampleRate);
  const line = createLine(context, { gainDb });
  addTo(line, sound, sampleRate, lastsS);
  line.finish();
  if (stopAtS !== undefined)
    void context.suspend(stopAtS).then(() => {
      line.stop();
      return context.resume();
    });
  const rendered = await context.startRendering();
  return {
    bytes: pack(rendered.getChannelData(0)),
    spectrumBytes: pack(spectrumAtS === undefined ? new Float32Array(0) : await spectrumOf(rendered, spectrumAtS)),
  };
}

/** By the browser's own Fourier transform. */
async function spectrumOf(played: AudioBuffer, atS: number): Promise<Float32Array> {
  const context = new OfflineAudioContext(1, played.length, played.sampleRate);
  const analyser = context.createAnalyser();
  analyser.fftSize = FFT_SIZE;
  analyser.smoothingTimeConstant = 0;
  const source = context.createBufferSource();
  source.buffer = played;
  source.connect(analyser).connect(context.destination);
  source.start();
  const spectrum = new Float32Array(analyser.frequencyBinCount);
  void context.suspend(atS).then(() => {
    analyser.getFloatFrequencyData(spectrum);
    return context.resume();
  });
  await context.startRendering();
  return spectrum;
}

function pack(samples: Float32Array): string {
  const bytes = new Uint8Array(samples.buffer, samples.byteOffset, samples.byteLength);
  let text = "";
  for (let i = 0; i < bytes.length; i += 32_768) text += String.fromCharCode(...bytes.subarray(i, i + 32_768));
  return btoa(text);
}

function addTo(line: Line, sound: Playing["sound"], sampleRate: number, lastsS: number): void {
  if ("tone" in sound) line.addTone({ pcm: renderTone(sound.tone, sampleRate), sampleRate }, 0);
  else if ("mark" in sound) line.addTone({ pcm: renderMark(sound.mark, sampleRate), sampleRate }, 0);
  else {
    const pcm = Float32Array.from(
      { length: lastsS * sampleRate },
      (_none, i) => sound.peak * Math.sin((2 * Math.PI * sound.wordsHz * i) / sampleRate),
    );
    line.addWords({ pcm, sampleRate }, 0);
  }
}
