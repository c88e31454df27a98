import { expect, it } from "vitest";
import { loadNodeModels } from "../../src/adapters/speech/nodeListener.ts";
import { FRAME_SAMPLES } from "../../src/listener/endpoint.ts";
import type { FrameJudge } from "../../src/listener/vadTrim.ts";
import { ROOT } from "./lab.ts";
import { createRandom } from "./random.ts";
import { fliteSound, loadFlite } from "./synth.ts";
import { createVoicesTogether } from "./voicesTogether.ts";

async function judgeAll(vad: FrameJudge, pcm: Float32Array): Promise<readonly number[]> {
  const found: number[] = [];
  for (let at = 0; at + FRAME_SAMPLES <= pcm.length; at += FRAME_SAMPLES)
    found.push(await vad.judge(pcm.subarray(at, at + FRAME_SAMPLES)));
  return found;
}

it("hears in many sounds at once what the app's own judge hears in each", async () => {
  const { vad } = await loadNodeModels(ROOT);
  const newVoice = await createVoicesTogether();
  const flite = await loadFlite();
  const random = createRandom(3);
  const sounds = [
    fliteSound(flite, "slt", 1, "sats ninety four"),
    Float32Array.from({ length: 16_000 }, () => 0.02 * (2 * random.next() - 1)),
    fliteSound(flite, "rms", 1, "blood pressure one ten over sixty"),
  ];
  const together = await Promise.all(sounds.map((pcm) => judgeAll(newVoice(), pcm)));
  for (const [i, pcm] of sounds.entries()) {
    vad.reset();
    const alone = await judgeAll(vad, pcm);
    expect(together[i]).toHaveLength(alone.length);
    alone.forEach((probability, frame) => expect(together[i]![frame]).toBeCloseTo(probability, 4));
  }
  // Speech is in it: otherwise two judges that always say no would agree too.
  expect(Math.max(...together[0]!)).toBeGreaterThan(0.9);
  expect(Math.max(...together[1]!)).toBeLessThan(0.5);
}, 30_000);
