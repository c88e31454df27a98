import { loadNodeModels } from "../../src/adapters/speech/nodeListener.ts";
import { createHearing } from "../../src/listener/hearing.ts";
import type { FrameJudge } from "../../src/listener/vadTrim.ts";
import { RATE_HZ, ROOT } from "./lab.ts";

const BLOCK_SAMPLES = 512;
const REPORTS = 8;

/** Three seconds of sound, two of them speech to the made-up judge, so that utterances begin and end as in a long case. */
const isLoud = (at: number): boolean => at % (3 * RATE_HZ) < 2 * RATE_HZ;
const madeJudge: FrameJudge = {
  judge: (frame) => Promise.resolve(Math.abs(frame[0]!) > 0.1 ? 0.95 : 0.02),
  reset: () => undefined,
  another: () => madeJudge,
};

function heapMiB(): string {
  // `node --expose-gc` gives the call; without it a figure would be chance.
  if (globalThis.gc === undefined) throw new Error("run with NODE_OPTIONS=--expose-gc");
  globalThis.gc();
  const { heapUsed, external } = process.memoryUsage();
  return ((heapUsed + external) / 2 ** 20).toFixed(2);
}

async function listenFor(name: string, vad: FrameJudge, seconds: number): Promise<void> {
  let heard = 0;
  const hearing = createHearing({
    vad,
    listen: () => Promise.resolve({ candidates: [] }),
    emit: (output) => void (output.kind === "heard" && heard++),
    onBroken: (detail) => {
      throw new Error(detail);
    },
  });
  const block = new Float32Array(BLOCK_SAMPLES);
  const startedMs = performance.now();
  let at = 0;
  for (let report = 0; report <= REPORTS; report++) {
    for (; at < (report * seconds * RATE_HZ) / REPORTS; at += BLOCK_SAMPLES) {
      for (let i = 0; i < BLOCK_SAMPLES; i++) block[i] = (isLoud(at) ? 0.5 : 0.01) * (i % 2 === 0 ? 1 : -1);
      hearing.push(block, (1000 * (at + BLOCK_SAMPLES)) / RATE_HZ);
      await hearing.idle();
    }
    console.log(`${name}: after ${Math.round(at / RATE_HZ)} s ${heapMiB()} MiB, ${heard} utterances`);
  }
  const spentMs = performance.now() - startedMs;
  console.log(`${name}: ${(spentMs / seconds).toFixed(2)} ms for each second of sound`);
}

/** Memory after so much sound: eight hours with a made-up judge of voices, ten minutes with the real one. */
export async function studyMemory(): Promise<void> {
  await listenFor("8 h, made judge", madeJudge, 8 * 3600);
  await listenFor("10 min, real judge", (await loadNodeModels(ROOT)).vad, 600);
}
