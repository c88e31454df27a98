import { m1 } from "../../src/listener/margins.ts";
import { createBiquad } from "../../src/listener/biquad.ts";
import { heardNumber } from "../../src/cli/hearNumber.ts";
import { readNoises, readRecording, readRows } from "./audioSet.ts";
import { truthOf, type Outcome } from "./judge.ts";
import { RATE_HZ, type Lab } from "./lab.ts";
import { atLevel, loopFrom, mixAt, pad } from "./mix.ts";
import { saidNumber } from "./people.ts";
import { PHRASES } from "./phrases.ts";
import { createRandom, type Random } from "./random.ts";
import { caseAfter, scoreHeard } from "./scoring.ts";
import { inQuietRoom } from "./sound.ts";
import { loadFlite, voicesOf } from "./synth.ts";

const START_MS = 1_800_000_000_000;
const SPEECH_DBFS = -26;
const RUMBLING = ["helicopter", "engine", "aircraft", "wind"];

async function numbersOfPeople(count: number, random: Random) {
  const rows = readRows("speech-manifest.csv").filter((row) => row["kind"] === "connected");
  const some = random.sample(
    rows.filter((row) => saidNumber(row) !== undefined),
    count,
  );
  return Promise.all(some.map(async (row) => ({ said: saidNumber(row), pcm: await readRecording(row["file"] ?? "") })));
}

/** Right, refused and wrong of people's numbers after a change of their sound. */
async function hearNumbers(lab: Lab, name: string, sounds: readonly { said: number | undefined; pcm: Float32Array }[]) {
  const found = { right: 0, refused: 0, wrong: 0 };
  for (const { said, pcm } of sounds) {
    const value = heardNumber(await lab.hearHeld(pcm, "numbers"));
    found[value === null ? "refused" : value === said ? "right" : "wrong"]++;
  }
  console.log(`${name} (n ${sounds.length}):`, found);
}

/** Very soft and overdriven microphones. */
async function studyLevel(lab: Lab, count: number, random: Random): Promise<void> {
  const people = await numbersOfPeople(count, random);
  for (const db of [-26, -45, -55, -65, -75]) {
    const sounds = people.map(({ said, pcm }) => ({
      said,
      pcm: atLevel(pcm, db).map((x) => Math.round(x * 32_768) / 32_768),
    }));
    await hearNumbers(lab, `at ${db} dBFS`, sounds);
  }
  for (const db of [-6, 0, 6, 12]) {
    const sounds = people.map(({ said, pcm }) => ({
      said,
      pcm: atLevel(pcm, db).map((x) => Math.max(-1, Math.min(1, x))),
    }));
    await hearNumbers(lab, `driven to ${db} dBFS and cut off at full scale`, sounds);
  }
}

async function studyHighPass(lab: Lab, count: number, random: Random): Promise<void> {
  const people = await numbersOfPeople(count, random);
  for (const { name, pcm: noise } of (await readNoises()).filter(({ name: kind }) => RUMBLING.includes(kind))) {
    const noisy = people.map(({ said, pcm }) => {
      const padded = pad(atLevel(pcm, SPEECH_DBFS), RATE_HZ / 2, RATE_HZ / 2);
      return { said, pcm: mixAt(padded, loopFrom(noise, random.below(noise.length), padded.length), 5) };
    });
    await hearNumbers(lab, `${name} 5 dB, as it is`, noisy);
    for (const hz of [60, 100])
      await hearNumbers(
        lab,
        `${name} 5 dB, high-pass ${hz} Hz`,
        noisy.map(({ said, pcm }) => ({ said, pcm: pcm.map(createBiquad("high", hz)) })),
      );
  }
}

/** Two made voices at once, each with a statement of its own: is what the louder one said recorded, or anything else? */
async function studyTwo(lab: Lab, count: number, random: Random): Promise<void> {
  const voices = voicesOf(await loadFlite());
  const statements = PHRASES.filter(({ family, state }) => family === "vitals" && state === "open");
  const state = caseAfter(lab.context, [], START_MS);
  for (const weakerDb of [0, -5, -10, -15]) {
    const counts = new Map<Outcome, number>();
    const wrong: string[] = [];
    for (let i = 0; i < count; i++) {
      const [a, b] = [random.pick(statements), random.pick(statements)];
      const loud = atLevel(random.pick(voices).say(a.words), SPEECH_DBFS);
      const weak = atLevel(random.pick(voices).say(b.words), SPEECH_DBFS + weakerDb);
      const offset = random.below(RATE_HZ / 2);
      const both = pad(loud, 0, Math.max(0, offset + weak.length - loud.length));
      weak.forEach((x, at) => (both[offset + at]! += x));
      const heard = await lab.hearOpen(inQuietRoom(pad(both, 0, RATE_HZ), random), "open");
      const truth = truthOf(lab.context, state, a.words, START_MS);
      const scored = scoreHeard(lab.context, state, truth, heard, START_MS + 3_600_000);
      counts.set(scored.outcome, (counts.get(scored.outcome) ?? 0) + 1);
      if (scored.outcome !== "wrong") continue;
      const fits = heard.map(({ candidates: [best], free }) => (best && free ? m1(best.score, free).toFixed(2) : "-"));
      wrong.push(`${a.words} | ${b.words} -> ${scored.heardWords} (m1 ${fits.join(" ")})`);
    }
    console.log(`the other at ${weakerDb} dB (n ${count}):`, Object.fromEntries(counts), wrong);
  }
}

const STUDIES = { level: studyLevel, highpass: studyHighPass, two: studyTwo };

export const studyMixtures = (lab: Lab, what: keyof typeof STUDIES, count: number): Promise<void> =>
  STUDIES[what](lab, count, createRandom(13));
