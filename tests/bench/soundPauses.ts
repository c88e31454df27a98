import { createHearing, type HeardSound } from "../../src/listener/hearing.ts";
import { truthOf } from "./judge.ts";
import { RATE_HZ, type Lab } from "./lab.ts";
import { atLevel, pad } from "./mix.ts";
import { createRandom } from "./random.ts";
import { caseAfter, scoreHeard } from "./scoring.ts";
import { inQuietRoom } from "./sound.ts";
import { loadFlite, voicesOf } from "./synth.ts";

const START_MS = 1_800_000_000_000;
const SPEECH_DBFS = -26;
const PAUSES_S = [0.4, 0.7, 0.9, 1.2, 1.5, 2.5] as const;
const BROKEN: readonly (readonly [string, string])[] = [
  ["systolic one hundred", "and twenty"],
  ["one twenty over", "eighty"],
  ["one ten", "over sixty"],
  ["pressure", "one ten over sixty"],
  ["sats ninety", "four"],
  ["temperature thirty seven", "point two"],
  ["glucose five", "point four"],
  ["heart rate", "one ten"],
];

/** As live; without joining, every end of speech is final. */
async function hear(lab: Lab, pcm: Float32Array, joins: boolean): Promise<readonly HeardSound[]> {
  const heard: HeardSound[] = [];
  const listener = lab.models.listenerFor(lab.searches.open);
  lab.models.vad.reset();
  const hearing = createHearing({
    vad: lab.models.vad,
    listen: async (utterance) => {
      const { candidates, free, shape, goesOn } = await listener.listen(utterance);
      return { candidates, free, shape, goesOn: joins ? goesOn : "no" };
    },
    emit: (output) => void (output.kind === "heard" && heard.push(output.heard)),
    onBroken: (detail) => {
      throw new Error(detail);
    },
  });
  hearing.push(pcm, (1000 * pcm.length) / RATE_HZ);
  await hearing.idle();
  return heard;
}

/** Statements broken by a pause, in made voices: what is recorded, with and without joining. */
export async function studyPauses(lab: Lab, voiceCount: number): Promise<void> {
  const random = createRandom(9);
  const voices = random.sample(voicesOf(await loadFlite()), voiceCount);
  const state = caseAfter(lab.context, [], START_MS);
  for (const pauseS of PAUSES_S) {
    const counts = { apart: new Map<string, number>(), joined: new Map<string, number>() };
    const wrong = { apart: new Set<string>(), joined: new Set<string>() };
    for (const [first, second] of BROKEN) {
      const truth = truthOf(lab.context, state, `${first} ${second}`, START_MS);
      for (const voice of voices) {
        const [a, b] = [voice.say(first), voice.say(second)].map((part) => atLevel(part, SPEECH_DBFS));
        const gap = Math.round(pauseS * RATE_HZ);
        const whole = new Float32Array(a!.length + gap + b!.length);
        whole.set(a!);
        whole.set(b!, a!.length + gap);
        const pcm = inQuietRoom(pad(whole, 0, RATE_HZ), random);
        for (const how of ["apart", "joined"] as const) {
          const heard = await hear(lab, pcm, how === "joined");
          const { outcome, heardWords } = scoreHeard(lab.context, state, truth, heard, START_MS + 5_000);
          const last = scoreHeard(lab.context, state, truth, heard.slice(-1), START_MS + 5_000);
          const came = outcome === "wrong" && last.outcome === "askedRight" ? "wrong, then the whole asked" : outcome;
          counts[how].set(came, (counts[how].get(came) ?? 0) + 1);
          if (outcome === "wrong") wrong[how].add(`${first} … ${second}: ${heardWords}`);
        }
      }
    }
    for (const how of ["apart", "joined"] as const)
      console.log(`pause ${pauseS} s, ${how}:`, Object.fromEntries(counts[how]), [...wrong[how]].slice(0, 4));
  }
}
