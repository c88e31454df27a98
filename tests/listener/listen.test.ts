import { fileURLToPath } from "node:url";
import * as ort from "onnxruntime-web";
import { describe, expect, it } from "vitest";
import { readFileSync } from "node:fs";
import { createListener, type Acoustic } from "../../src/listener/listen.ts";
import { m1 } from "../../src/listener/margins.ts";
import { createSearch } from "../../src/listener/search.ts";
import { INSIDE, phoneGraphOf, samples } from "./vectors.ts";

const NETWORK = fileURLToPath(new URL("../../public/listener/listener.onnx", import.meta.url));

async function loadAcoustic(): Promise<Acoustic> {
  ort.env.wasm.numThreads = 1;
  const session = await ort.InferenceSession.create(readFileSync(NETWORK));
  return async (mel, frames) => {
    const { logits } = await session.run({ mel: new ort.Tensor("float32", mel, [1, 64, frames]) });
    return logits?.data as Float32Array;
  };
}

describe("createListener with the real network", async () => {
  const acoustic = await loadAcoustic();
  const searches = new Map(["num", "full"].map((name) => [name, createSearch(phoneGraphOf(name))] as const));
  const listenerFor = (grammar: string) => {
    const search = searches.get(grammar);
    if (search === undefined) throw new Error(`no grammar ${grammar}`);
    return createListener({ acoustic, search });
  };

  // Source: the listener's test vectors, from its reference pipeline (numpy and a native ONNX runtime).
  it.each(INSIDE)("$name '$text': the reference's words, margins within 0.05", async (vector) => {
    const { candidates, free, outputs } = await listenerFor(vector.grammar).listen(samples(vector.name));
    expect([outputs, free.phones]).toEqual([vector.outputs, vector.phones]);
    const [best, second] = candidates;
    const [wanted, wantedSecond] = vector.best;
    expect(best?.words).toBe(wanted?.words);
    const margin = m1(best?.score ?? NaN, free);
    expect(Math.abs(margin - m1(wanted?.score ?? NaN, { score: vector.free, phones: vector.phones }))).toBeLessThan(
      0.05,
    );
    // The network's whole-number arithmetic turns the last bit of a feature into a step: the reference's own feature
    // code, on another machine, moves these gaps of 15 to 35 by up to 0.2 (measured). Given the same logits they agree
    // to 0.05 (search.test.ts). 2 % is 0.05 at the threshold, where it matters.
    if (wantedSecond !== undefined) {
      const gap = (best?.score ?? NaN) - (second?.score ?? NaN);
      const wantedGap = (wanted?.score ?? NaN) - wantedSecond.score;
      expect(Math.abs(gap - wantedGap)).toBeLessThan(Math.max(0.05, 0.02 * wantedGap));
    }
  });

  it.each([0, 399])("hears nothing in %i samples", async (length) => {
    const heard = await listenerFor("num").listen(new Float32Array(length));
    expect(heard).toMatchObject({ candidates: [], free: { score: 0, phones: 0 }, outputs: 0 });
  });
});

it("takes what is no number for silence", async () => {
  const seen: number[] = [];
  const acoustic = (mel: Float32Array, frames: number) => {
    seen.push(...mel.filter((x) => !Number.isFinite(x)));
    return Promise.resolve(new Float32Array(Math.ceil(frames / 3) * 40));
  };
  const pcm = samples("v1").map((x, i) => (i % 100 === 0 ? NaN : i % 101 === 0 ? Infinity : x));
  const heard = await createListener({ acoustic, search: createSearch(phoneGraphOf("num")) }).listen(pcm);
  expect(seen).toEqual([]);
  expect(Number.isFinite(heard.shape.levelDb)).toBe(true);
});

it("rejects an answer of another shape instead of reading past it", async () => {
  const search = createSearch(phoneGraphOf("num"));
  const listener = createListener({ acoustic: () => Promise.resolve(new Float32Array(40)), search });
  await expect(listener.listen(samples("v1"))).rejects.toThrow("expected 49 × 40");
});
