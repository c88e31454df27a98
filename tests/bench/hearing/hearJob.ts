import type { Flite } from "../../../src/adapters/voice/synthesise.ts";
import { heardNumber } from "../../../src/cli/hearNumber.ts";
import { understand } from "../../../src/language/understand/understand.ts";
import type { HeardSound } from "../../../src/listener/hearing.ts";
import { readRecording, type Noise } from "../audioSet.ts";
import { truthOf, worstOf } from "../judge.ts";
import { RATE_HZ, type Lab } from "../lab.ts";
import { saidNumber } from "../people.ts";
import { createRandom, type Random } from "../random.ts";
import { withRoom } from "../sound.ts";
import { CONDITIONS, noiseAlone, place, placeRecording, type Condition } from "./conditions.ts";
import { numberEvidence } from "./evidence.ts";
import { familyOf, QUESTION_CASE } from "./families.ts";
import type { Job } from "./jobs.ts";
import { scoreSaying, scoreUnmeant, type Saying } from "./saying.ts";
import { pickSpeaker, type SetName } from "./speakers.ts";
import { createStateAfter, LATER_MS, OPEN_CASE, START_MS } from "./statements.ts";
import { tookPart } from "./training.ts";

type Parts = {
  readonly lab: Lab;
  readonly flite: Flite;
  readonly noises: readonly Noise[];
  readonly set: SetName;
};
type JobOf<K extends Job["kind"]> = Extract<Job, { kind: K }>;

const conditionOf = (name: string): Condition | undefined => CONDITIONS.find((c) => c.name === name);
const NOBODY = { speaker: "", standing: "", sex: "", accent: "" };

/** Lets the sound of one job sound, listens to it as the app does, and judges. */
export function hearJob({ lab, flite, noises, set }: Parts): (job: Job) => Promise<readonly Saying[]> {
  const { context } = lab;
  const stateAfter = createStateAfter(context);
  const voiced = (words: string, conditionName: string, random: Random) => {
    const condition = conditionOf(conditionName);
    if (condition === undefined) throw new Error(`no condition "${conditionName}"`);
    const { name: speaker, standing, sex, accent, say } = pickSpeaker(set, random);
    return {
      ...place(say(flite, words, random), condition, noises, random),
      about: { speaker, standing, sex, accent },
    };
  };

  async function statement(job: JobOf<"statement">, random: Random): Promise<readonly Saying[]> {
    const { words, state, before, family } = job.statement;
    const start = stateAfter(before);
    const nowMs = START_MS + LATER_MS[state];
    const truth = truthOf(context, start, words, nowMs);
    const { pcm, noise, about } = voiced(words, job.condition, random);
    const heards = await lab.hearOpen(pcm, state);
    const scored = scoreSaying(context, start, truth, heards, nowMs);
    const sound = { noise, soundS: pcm.length / RATE_HZ };
    const common = { material: "statement", condition: job.condition, family, state, said: words } as const;
    return [{ ...common, ...about, ...sound, askedByRule: truth.isAsked, ...scored }];
  }

  function unmeant(heards: readonly HeardSound[]): Pick<Saying, "outcome" | "utterances"> {
    const each = scoreUnmeant(context, stateAfter(OPEN_CASE), heards, START_MS + LATER_MS.open);
    return { outcome: worstOf(each.map((e) => e.outcome)), utterances: each.flatMap((e) => e.utterances) };
  }

  async function talk(job: JobOf<"talk">, random: Random): Promise<readonly Saying[]> {
    const { material, condition, words } = job;
    const { pcm, noise, about } = voiced(words, condition, random);
    const heards = await lab.hearOpen(pcm, "open");
    const sound = { noise, soundS: pcm.length / RATE_HZ };
    const common = { material, condition, family: material, state: "open", said: words, askedByRule: false } as const;
    return [{ ...common, ...about, ...sound, ...unmeant(heards) }];
  }

  async function noiseOnly(job: JobOf<"noise">, random: Random): Promise<readonly Saying[]> {
    const { pcm, noise } = noiseAlone(job.classes, job.seconds, noises, random);
    const heards = await lab.hearOpen(pcm, "open");
    const common = { material: "noise", condition: job.condition, family: "noise", state: "open", said: "" } as const;
    // Each utterance is a saying of its own, as they are counted by the hour; the first carries the length.
    return (heards.length > 0 ? heards.map((heard) => [heard]) : [[]]).map((some, i) => ({
      ...common,
      ...NOBODY,
      noise,
      soundS: i === 0 ? job.seconds : 0,
      askedByRule: false,
      ...unmeant(some),
    }));
  }

  async function person(job: JobOf<"person">, random: Random): Promise<readonly Saying[]> {
    const { recording, state } = job;
    const { words, speaker, sex, accent } = recording;
    const recorded = await readRecording(recording.file);
    const about = { speaker, sex, accent, standing: tookPart(speaker) ? "took part" : "did not take part" };
    const condition = conditionOf(job.condition);
    const isNoisy = condition !== undefined && condition.noises.length > 0;
    // As `hear` gets it: the bare file. Noise needs room on both sides, and so does open listening.
    const roomed = state === "numbers" && !isNoisy ? recorded : withRoom(recorded, random);
    const { pcm, noise } = placeRecording(roomed, condition, noises, random);
    const common = { condition: job.condition, state, said: words, ...about, noise, soundS: pcm.length / RATE_HZ };
    if (state === "numbers") {
      const heard = await lab.hearHeld(pcm, "numbers");
      const said = saidNumber({ words }) ?? NaN;
      const believed = heardNumber(heard);
      const outcome = believed === null ? "refused" : believed === said ? "right" : "wrong";
      const row = { material: "people: numbers", family: recording.kind, askedByRule: false, outcome } as const;
      return [{ ...common, ...row, utterances: [numberEvidence(said, heard)] }];
    }
    const heards = await lab.hearOpen(pcm, state);
    const meaning = understand(context.grammars.of(state), words.split(" "));
    if (meaning.kind === "none") {
      const row = { material: "talk", family: `people: ${recording.kind}`, askedByRule: false } as const;
      return [{ ...common, ...row, ...unmeant(heards) }];
    }
    const start = stateAfter(state === "asked" ? QUESTION_CASE : OPEN_CASE);
    const nowMs = START_MS + LATER_MS[state];
    const truth = truthOf(context, start, words, nowMs);
    const family = meaning.kind === "one" ? familyOf(meaning.intent) : "several meanings";
    const scored = scoreSaying(context, start, truth, heards, nowMs);
    return [{ ...common, material: "people: open", family, askedByRule: truth.isAsked, ...scored }];
  }

  return (job) => {
    const random = createRandom(job.seed);
    switch (job.kind) {
      case "statement":
        return statement(job, random);
      case "talk":
        return talk(job, random);
      case "noise":
        return noiseOnly(job, random);
      case "person":
        return person(job, random);
    }
  };
}
