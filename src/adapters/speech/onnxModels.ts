import type * as Ort from "onnxruntime-web/wasm";
import type { Acoustic } from "../../listener/listen.ts";
import type { FrameJudge } from "../../listener/vadTrim.ts";

const MEL_BANDS = 64;
export const VAD_CONTEXT_SAMPLES = 64;
export const VAD_FRAME_SAMPLES = 512;
export const VAD_RATE_HZ = 16_000n;
const VAD_STATE_SHAPE = [2, 1, 128];
export const VAD_STATE_VALUES = 256;

type Runtime = typeof Ort;

/**
 * The listener's network as a function: `mel` as [64][frames] row by row → logits as [ceil(frames / 3)][40].
 * Rejects when the bytes are no network. Source: the network's card (input `mel`, output `logits`).
 */
export async function createAcoustic(ort: Runtime, network: Uint8Array): Promise<Acoustic> {
  const session = await ort.InferenceSession.create(network, { executionProviders: ["wasm"] });
  return async (mel, frames) => {
    const input = new ort.Tensor("float32", mel, [1, MEL_BANDS, frames]);
    const { logits } = await session.run({ mel: input });
    return (logits as Ort.TypedTensor<"float32">).data;
  };
}

/**
 * Voice activity by the Silero model, versions 5 and 6: 512 samples at 16 kHz, led by the 64 before them.
 * Rejects when the bytes are no such model. Source: the model's public wrapper in `@ricky0123/vad-web`.
 */
export async function createVoiceActivity(ort: Runtime, model: Uint8Array): Promise<FrameJudge> {
  const session = await ort.InferenceSession.create(model, { executionProviders: ["wasm"] });
  const rate = new ort.Tensor("int64", [VAD_RATE_HZ]);
  const silence = () => new ort.Tensor("float32", new Float32Array(VAD_STATE_VALUES), VAD_STATE_SHAPE);
  const judge = (): FrameJudge => {
    // The runtime copies what it is given, so one buffer serves every frame: 64 samples, then the frame.
    const sound = new Float32Array(VAD_CONTEXT_SAMPLES + VAD_FRAME_SAMPLES);
    const input = new ort.Tensor("float32", sound, [1, sound.length]);
    const feeds = { input, state: silence(), sr: rate };
    return {
      async judge(frame) {
        sound.copyWithin(0, VAD_FRAME_SAMPLES);
        sound.set(frame, VAD_CONTEXT_SAMPLES);
        const out = await session.run(feeds);
        feeds.state = out["stateN"] as Ort.TypedTensor<"float32">;
        return (out["output"] as Ort.TypedTensor<"float32">).data[0] ?? 0;
      },
      reset() {
        feeds.state = silence();
        sound.fill(0);
      },
      another: judge,
    };
  };
  return judge();
}
