import { join } from "node:path";
import { createGrammarSearch } from "../../src/adapters/speech/grammarSearch.ts";
import { loadNodeModels } from "../../src/adapters/speech/nodeListener.ts";
import { readDictionary, readGrammarSources } from "../../src/cli/readGrammars.ts";
import { parseDictionary } from "../../src/listener/dictionary.ts";
import type { PlayedSound } from "./recordSound.ts";

const RATE_HZ = 16_000;
/** Silence between two utterances; within one, phrases follow more closely. */
const UTTERANCE_GAP_S = 0.25;
const EDGE_SAMPLES = 0.3 * RATE_HZ;

/** The shapes of what Tragus says in these tests, with every number left open. */
const REPLIES = `#JSGF V1.0;
grammar replies;
import <numbers.*>;
public <reply> = pressure <nSbp> over <nDbp>
  | map <nMap> (on target | <nMap> under <nMap>)
  | sats <nSpo2> [<nSpo2> under <nSpo2>]
  | end tidal <nEtco2>
  | heart rate <nHr>
  | example protocol not approved for patients
  | this browser may clear the record
  | bleeding stopped pelvis bound if suspected
  | preparation phase
  | suction on second suction ready
  | oxygen running how long and what saturation;
`;
const EXTRA_WORDS = `
browser B R AW Z ER
may M EY
clear K L IH R
record R EH K ER D
bleeding B L IY D IH NG
stopped S T AA P T
pelvis P EH L V AH S
bound B AW N D
if IH F
suspected S AH S P EH K T IH D
target T AA R G AH T
under AH N D ER
long L AO NG
how HH AW
what W AH T
second S EH K AH N D
running R AH N IH NG
example IH G Z AE M P AH L
approved AH P R UW V D
for F AO R
patients P EY SH AH N T S
preparation P R EH P ER EY SH AH N
`;

/** Joins the voice's phrases on one time line and cuts it where it pauses for longer. */
function utterancesOf(sounds: readonly PlayedSound[]): readonly Float32Array[] {
  const voiced = sounds.filter((s) => s.sampleRate === RATE_HZ).toSorted((a, b) => a.atS - b.atS);
  const groups: PlayedSound[][] = [];
  let endS = -Infinity;
  for (const sound of voiced) {
    if (sound.atS - endS > UTTERANCE_GAP_S) groups.push([]);
    groups.at(-1)?.push(sound);
    endS = sound.atS + sound.pcm.length / RATE_HZ;
  }
  return groups.map((group) => {
    const startS = group[0]?.atS ?? 0;
    const last = group.at(-1);
    const lengthS = last === undefined ? 0 : last.atS - startS + last.pcm.length / RATE_HZ;
    const pcm = new Float32Array(Math.ceil(lengthS * RATE_HZ) + 2 * EDGE_SAMPLES);
    for (const { atS, pcm: part } of group) pcm.set(part, EDGE_SAMPLES + Math.round((atS - startS) * RATE_HZ));
    return pcm;
  });
}

/** What a recogniser hears in the sound that the page played: the words of each utterance. */
export async function decodeVoice(sounds: readonly PlayedSound[]): Promise<readonly string[]> {
  const dictionary = parseDictionary(readDictionary() + EXTRA_WORDS);
  if (!dictionary.ok) throw new Error(dictionary.error.message);
  const sources = { ...readGrammarSources(), replies: REPLIES };
  const search = createGrammarSearch(sources, { grammar: "replies", rule: "reply" }, dictionary.value);
  if (!search.ok) throw new Error(search.error.message);
  const models = await loadNodeModels(join(import.meta.dirname, "../.."));
  const listener = models.listenerFor(search.value);
  const heard: string[] = [];
  for (const pcm of utterancesOf(sounds)) heard.push((await listener.listen(pcm)).candidates[0]?.words ?? "");
  return heard;
}
