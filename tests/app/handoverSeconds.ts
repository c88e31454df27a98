import { splitPhrases } from "../../src/adapters/voice/splitPhrases.ts";
import { createFlite, type Flite } from "../../src/adapters/voice/synthesise.ts";
import { fliteWasm } from "../adapters/voice/flite.ts";

/** The page leaves this between two utterances (`BETWEEN_S` of the built-in voice). */
const BETWEEN_S = 0.3;

export const loadVoice = (): Promise<Flite> => createFlite({ wasmBytes: fliteWasm() });

/** How long the built-in voice sounds at its usual pace: phrase by phrase, with the pauses that it makes between them, s. */
export function secondsOf(flite: Flite, parts: readonly string[]): number {
  const seconds = parts.map((text) =>
    splitPhrases(text).reduce((sum, { text: phrase, pauseAfterMs }) => {
      const said = flite.synthesise(phrase);
      if (!said.ok) throw new Error(said.error.detail);
      return sum + said.value.pcm.length / said.value.sampleRate + pauseAfterMs / 1000;
    }, 0),
  );
  return seconds.reduce((sum, s) => sum + s + BETWEEN_S, -BETWEEN_S);
}
