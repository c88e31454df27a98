import type { FliteVoice } from "../../src/adapters/voice/synthesise.ts";
import { interpret } from "../../src/app/interpret.ts";
import type { Utterance } from "../../src/app/ports.ts";
import { meaningKey } from "../../src/language/understand/meaningKey.ts";
import { understand } from "../../src/language/understand/understand.ts";
import { resample } from "../../src/listener/resample.ts";
import { readNoises } from "./audioSet.ts";
import { RATE_HZ, type Lab } from "./lab.ts";
import { atLevel, mixAt } from "./mix.ts";
import { PHRASES } from "./phrases.ts";
import { createRandom } from "./random.ts";
import { inQuietRoom, someNoise } from "./sound.ts";
import { tryWays, type Judge, type SpeakerResult } from "./hearMeSpeaker.ts";
import { espeakSound, fliteSound, loadFlite } from "./synth.ts";

type Made = { readonly name: string; say(text: string): Float32Array };

const LEVEL_DB = -26;
const SPEED_WPM = 165;
const ROTOR = ["helicopter", "engine"];

/** Faster and higher, or slower and deeper, by resampling: what a shorter or longer vocal tract does. */
const shifted = (pcm: Float32Array, factor: number): Float32Array => resample(pcm, RATE_HZ * factor, RATE_HZ);

async function madeVoices(): Promise<readonly Made[]> {
  const flite = await loadFlite();
  const fliteSays = (voice: FliteVoice, stretch: number, factor: number): Made => ({
    name: `flite ${voice}, stretch ${stretch}, shift ${factor}`,
    say: (text) => shifted(fliteSound(flite, voice, stretch * factor, text), factor),
  });
  const espeakSays = (voice: string, pitch: number, factor: number): Made => ({
    name: `espeak-ng ${voice}, pitch ${pitch}, shift ${factor}`,
    say: (text) => shifted(espeakSound(voice, Math.round(SPEED_WPM / factor), pitch, text), factor),
  });
  return [
    fliteSays("rms", 1, 1),
    fliteSays("slt", 1, 1),
    fliteSays("awb", 1, 1),
    fliteSays("awb", 0.8, 1),
    ...[0.85, 0.92, 1.08, 1.15, 1.22].map((factor) => fliteSays("awb", 1, factor)),
    ...[0.85, 1.18].map((factor) => fliteSays("slt", 1, factor)),
    espeakSays("en-gb-x-rp", 50, 1),
    espeakSays("en-gb-x-rp+anika", 60, 1),
    espeakSays("en-us+shelby", 60, 1),
    espeakSays("en-gb+f4", 95, 1.15),
    espeakSays("en-us+anika", 95, 1.2),
    espeakSays("en-gb-scotland+Tweaky", 50, 1),
    espeakSays("en-us+grandpa", 40, 1),
    espeakSays("en-029+grandma", 60, 1),
    espeakSays("en-us+sandro", 40, 0.9),
    espeakSays("en-us+whisper", 50, 1),
  ];
}

/** Through the decision of the app, with the grammar of open listening. */
function openJudge(lab: Lab): Judge {
  const { grammars } = lab.context;
  const keyOf = (words: string): string => {
    const meaning = understand(grammars.of("open"), words.split(" "));
    return meaning.kind === "one" ? meaningKey(meaning.intent) : "";
  };
  return {
    grammar: "open",
    outcome(said, { candidates, free }) {
      if (free === undefined) return "refused";
      const utterance: Utterance = { by: "listener", candidates, free, endedAtMs: 0 };
      const heard = interpret(grammars, "open", utterance);
      if (heard.kind !== "meant") return "refused";
      return meaningKey(heard.intent) === keyOf(said) ? "right" : "wrong";
    },
    guessIsRight: (said, { candidates: [best] }) => best !== undefined && keyOf(best.words) === keyOf(said),
  };
}

/** Made voices: near, far, high and deep ones; quiet, and with helicopter or engine at 10 dB. */
export async function tryMadeVoices(
  lab: Lab,
  lines: readonly string[],
  counts: { readonly held: number; readonly voices: number },
  seed: number,
): Promise<readonly SpeakerResult[]> {
  const one = ({ words }: { readonly words: string }): boolean =>
    understand(lab.context.grammars.of("open"), words.split(" ")).kind === "one";
  const vitals = PHRASES.filter((p) => p.family === "vitals" && p.state === "open" && one(p));
  const noises = (await readNoises()).filter(({ name }) => ROTOR.includes(name));
  const judge = openJudge(lab);
  const results: SpeakerResult[] = [];
  const voices = createRandom(seed).sample(await madeVoices(), counts.voices);
  for (const [at, voice] of voices.entries()) {
    for (const condition of noises.length > 0 ? ["quiet", "rotor, engine 10 dB"] : ["quiet"]) {
      const random = createRandom(seed * 1_000 + at);
      const sayIn = (said: string) => {
        const quiet = inQuietRoom(atLevel(voice.say(said), LEVEL_DB), random);
        if (condition === "quiet") return { said, pcm: quiet };
        return { said, pcm: mixAt(quiet, someNoise(random.pick(noises).pcm, quiet.length, random), 10) };
      };
      const held = random.sample(vitals, counts.held).map(({ words }) => sayIn(words));
      results.push(await tryWays(lab, `made, ${condition}`, voice.name, lines.map(sayIn), held, judge));
    }
  }
  return results;
}
