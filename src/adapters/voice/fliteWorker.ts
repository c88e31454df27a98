import { fail, type Result } from "../../core/result.ts";
import type { SpeakerError } from "../../app/ports.ts";
import { createFlite, type Flite } from "./synthesise.ts";
import type { VoiceManner, VoiceReply, VoiceRequest } from "./voiceMessages.ts";
import type { Sound } from "./wav.ts";

/** Said to nobody after loading: a first run is slow while the program is still being optimised. */
const WARMING_TEXT = "Pressure one twenty over eighty.";

let flite: Flite | undefined;

const speak = (text: string, manner: VoiceManner): Result<Sound, SpeakerError> => {
  if (flite === undefined) return fail({ kind: "worker-died", detail: "asked to speak before loading" });
  const spoken = flite.synthesise(text, manner);
  return spoken.ok ? spoken : fail({ kind: "worker-died", detail: spoken.error.detail });
};

async function load(wasmUrl: string): Promise<Result<Sound, SpeakerError>> {
  try {
    const response = await fetch(wasmUrl);
    if (!response.ok) return fail({ kind: "load-failed", asset: wasmUrl, detail: `status ${response.status}` });
    flite = await createFlite({ wasmBytes: await response.arrayBuffer() });
    return speak(WARMING_TEXT, { pace: 1 });
  } catch (thrown) {
    return fail({ kind: "load-failed", asset: wasmUrl, detail: String(thrown) });
  }
}

self.onmessage = async ({ data }: MessageEvent<VoiceRequest>) => {
  const result = data.op === "load" ? await load(data.wasmUrl) : speak(data.text, data.manner);
  const reply: VoiceReply = { id: data.id, result };
  self.postMessage(reply, { transfer: result.ok ? [result.value.pcm.buffer] : [] });
};
