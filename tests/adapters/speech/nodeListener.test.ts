import { existsSync, readdirSync } from "node:fs";
import { join, resolve } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { createGrammarSearch } from "../../../src/adapters/speech/grammarSearch.ts";
import { loadNodeModels, type NodeModels } from "../../../src/adapters/speech/nodeListener.ts";
import { readAudioFile } from "../../../src/cli/audioFile.ts";
import { readDictionary, readGrammarSources } from "../../../src/cli/readGrammars.ts";
import { parseDictionary } from "../../../src/listener/dictionary.ts";
import {
  FRAME_SAMPLES,
  OPEN_ENDPOINT,
  SILENCE,
  stepEndpoint,
  type EndpointState,
} from "../../../src/listener/endpoint.ts";
import { createHearing, type HearingOutput } from "../../../src/listener/hearing.ts";
import { createResampler, resample } from "../../../src/listener/resample.ts";

const ROOT = resolve(import.meta.dirname, "../../..");
const RECORDINGS = resolve(ROOT, "../shared/audio");
const RATE_HZ = 16_000;

let models: NodeModels;
beforeAll(async () => {
  models = await loadNodeModels(ROOT);
}, 60_000);

async function sound(path: string): Promise<Float32Array> {
  const result = await readAudioFile(path);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

/** Soft noise, always the same. */
function background(seconds: number): Float32Array {
  let seed = 1;
  return Float32Array.from({ length: seconds * RATE_HZ }, () => {
    seed = (seed * 1_664_525 + 1_013_904_223) >>> 0;
    return (seed / 2 ** 31 - 1) * 0.001;
  });
}

const joined = (pieces: readonly Float32Array[]): Float32Array => Float32Array.from(pieces.flatMap((p) => [...p]));

async function utterances(pcm: Float32Array): Promise<number> {
  models.vad.reset();
  let state: EndpointState = SILENCE;
  let ended = 0;
  for (let frame = 0; (frame + 1) * FRAME_SAMPLES <= pcm.length; frame++) {
    const piece = pcm.subarray(frame * FRAME_SAMPLES, (frame + 1) * FRAME_SAMPLES);
    const [next, event] = stepEndpoint(state, frame, await models.vad.judge(piece), OPEN_ENDPOINT);
    state = next;
    if (event?.kind === "ended" && event.length === "fit") ended++;
  }
  return ended;
}

test("from 48 kHz blocks of 128 samples to words, through every real part", { timeout: 60_000 }, async () => {
  const dictionary = parseDictionary(readDictionary());
  if (!dictionary.ok) throw new Error(dictionary.error.message);
  const search = createGrammarSearch(readGrammarSources(), { grammar: "case", rule: "open" }, dictionary.value);
  if (!search.ok) throw new Error(search.error.message);
  const listener = models.listenerFor(search.value);
  const clips = await Promise.all(
    ["v3", "v7", "v8"].map((name) => sound(join(ROOT, "tests/listener/vectors", `${name}.wav`))),
  );
  const said = joined(clips.flatMap((clip) => [background(1), clip]).concat(background(1)));
  const microphone = resample(said, RATE_HZ, 48_000);

  models.vad.reset();
  const outputs: HearingOutput[] = [];
  const hearing = createHearing({
    vad: models.vad,
    listen: async (pcm) => {
      const { candidates, free } = await listener.listen(pcm);
      return { candidates, free };
    },
    emit: (output) => outputs.push(output),
    onBroken: (detail) => expect.unreachable(detail),
  });
  const resampler = createResampler(48_000, RATE_HZ);
  for (let at = 0; at < microphone.length; at += 128)
    hearing.push(resampler.push(microphone.subarray(at, at + 128)), (at + 128) / 48);
  await hearing.idle();
  const heard = outputs.flatMap((o) => (o.kind === "heard" ? [o.heard.candidates[0]?.words] : []));
  // What was said in the clips: tests/listener/vectors/index.json.
  expect(heard).toEqual(["blood pressure one ten over sixty two", "suction ready", "map eighty four"]);
});

describe.skipIf(!existsSync(RECORDINGS))("real people and noise (skipped where there are no recordings)", () => {
  const numbers = ["connected", "joined"].flatMap((kind) =>
    readdirSync(join(RECORDINGS, "speech", kind))
      .filter((_, i) => i % 12 === 0)
      .map((name) => join(RECORDINGS, "speech", kind, name)),
  );

  test("numbers as people read them are one utterance each", { timeout: 120_000 }, async () => {
    const counts: number[] = [];
    for (const path of numbers)
      counts.push(await utterances(joined([background(1), await sound(path), background(1)])));
    expect(numbers.length).toBeGreaterThan(20);
    expect(counts.filter((count) => count !== 1)).toEqual([]);
  });

  // Babble and restaurants are people talking: what is found there is speech.
  const noises = ["boat_engine", "compressor_a", "helicopter_a", "propeller_plane", "running_tap", "storm", "wind_a"];
  test.each(noises)("%s is no speech", { timeout: 60_000 }, async (name) => {
    const noise = await sound(join(RECORDINGS, "noise", `${name}.flac`));
    expect(await utterances(joined([noise.subarray(0, 10 * RATE_HZ), background(1)]))).toBe(0);
  });
});
