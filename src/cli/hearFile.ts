import type { NodeModels } from "../adapters/speech/nodeListener.ts";
import { fail, ok, type Result } from "../core/result.ts";
import type { HeardSound } from "../listener/hearing.ts";
import type { Search } from "../listener/search.ts";
import { frameSpeech } from "../listener/vadTrim.ts";
import { readAudioFile } from "./audioFile.ts";

const SAMPLES_PER_MS = 16;

/**
 * Listens to one file as to a held utterance: all of it is one utterance.
 * The error is one line for the user; it names the file.
 */
export async function hearFile(
  path: string,
  models: NodeModels,
  search: Search,
): Promise<Result<{ readonly heard: HeardSound; readonly durationMs: number }, string>> {
  const sound = await readAudioFile(path);
  if (!sound.ok) return fail(sound.error.message);
  const { candidates, free, shape } = await models
    .listenerFor(search)
    .listen(await frameSpeech(sound.value, models.vad));
  return ok({ heard: { candidates, free, shape }, durationMs: Math.round(sound.value.length / SAMPLES_PER_MS) });
}
