import type { Flite } from "../../../src/adapters/voice/synthesise.ts";

/** How long the built-in voice takes for a text at its usual speed, seconds. Each sentence is made once. */
export function spokenLength(flite: Flite): (text: string) => number {
  const known = new Map<string, number>();
  const lengthOf = (sentence: string): number => {
    const before = known.get(sentence);
    if (before !== undefined) return before;
    const said = flite.synthesise(sentence);
    if (!said.ok) throw new Error(`${sentence}: ${said.error.detail}`);
    const seconds = said.value.pcm.length / said.value.sampleRate;
    known.set(sentence, seconds);
    return seconds;
  };
  const sentencesOf = (text: string): readonly string[] => text.match(/[^.?!]+[.?!]*/gu) ?? [];
  return (text) => sentencesOf(text).reduce((total, sentence) => total + lengthOf(sentence.trim()), 0);
}
