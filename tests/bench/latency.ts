import { createFeatures } from "../../src/listener/features.ts";
import { freePath, logSoftmax } from "../../src/listener/phoneScores.ts";
import { OPEN_ENDPOINT } from "../../src/listener/endpoint.ts";
import { splitPhrases } from "../../src/adapters/voice/splitPhrases.ts";
import type { Flite } from "../../src/adapters/voice/synthesise.ts";
import { takeUtterance } from "../../src/app/takeTurn.ts";
import type { Utterance } from "../../src/app/ports.ts";
import { frameSpeech, PADDING_SAMPLES } from "../../src/listener/vadTrim.ts";
import { RATE_HZ, type GrammarName, type Lab } from "./lab.ts";
import { atLevel } from "./mix.ts";
import type { Phrase } from "./phrases.ts";
import type { Random } from "./random.ts";
import type { Cell, Table } from "./report.ts";
import { caseAfter } from "./scoring.ts";
import { inQuietRoom } from "./sound.ts";
import { ms, quantile, Stopwatches } from "./stopwatch.ts";
import type { Voice } from "./synth.ts";

const FRAMES_PER_OUTPUT = 3;
const VAD_FRAME = 512;
const START_MS = 1_800_000_000_000;

const VOICE_STAGE = "decision → first phrase of the reply made by the built-in voice";
const SEARCHES: readonly GrammarName[] = ["open", "asked", "numbers"];

/** How long each stage takes after the end of speech has been found, and against the length of the sound. */
export async function latencyTable(
  lab: Lab,
  flite: Flite,
  phrases: readonly Phrase[],
  voices: readonly Voice[],
  random: Random,
): Promise<Table> {
  const features = createFeatures();
  const watches = new Stopwatches();
  const { vad, acoustic } = lab.models;
  let soundS = 0;
  const spoken = phrases.filter((p) => p.state === "open");
  for (const [nth, phrase] of [...spoken.slice(0, 2), ...spoken].entries()) {
    // The first two warm everything up and are not counted.
    const into = nth < 2 ? new Stopwatches() : watches;
    const whole = inQuietRoom(atLevel(random.pick(voices).say(phrase.words), -26), random);
    const state = caseAfter(lab.context, phrase.before, START_MS);
    await into.time("voice activity", async () => {
      for (let at = 0; at + VAD_FRAME <= whole.length; at += VAD_FRAME)
        await vad.judge(whole.subarray(at, at + VAD_FRAME));
    });
    const pcm = await frameSpeech(whole, vad);
    const { mel, frames } = await into.time("features", () => features.logMel(pcm));
    const logits = await into.time("network", () => acoustic(mel, frames));
    const outputs = Math.ceil(frames / FRAMES_PER_OUTPUT);
    const startedMs = performance.now();
    const logProbs = logSoftmax(logits, outputs);
    const free = freePath(logProbs, outputs);
    into.add("free path", performance.now() - startedMs);
    for (const name of SEARCHES)
      await into.time(`search, ${name} grammar`, () => lab.searches[name].decode(logProbs, outputs));
    const candidates = lab.searches.open.decode(logProbs, outputs);
    const utterance: Utterance = { by: "listener", candidates, free, endedAtMs: START_MS };
    const turn = await into.time("meaning, decision, log, rules", () =>
      takeUtterance(lab.context, state, utterance, START_MS),
    );
    const [first] = splitPhrases(turn.answer?.reply ?? "");
    if (first !== undefined) await into.time(VOICE_STAGE, () => flite.synthesise(first.text));
    if (nth < 2) continue;
    into.add("sound", (pcm.length / RATE_HZ) * 1000);
    into.add("whole sound", (whole.length / RATE_HZ) * 1000);
    soundS += pcm.length / RATE_HZ;
  }
  const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
  const n = watches.of("sound").length;
  const row = (stage: string, over = "sound"): readonly Cell[] => {
    const spent = watches.of(stage);
    return [
      stage,
      spent.length,
      ms(quantile(spent, 0.5)),
      ms(quantile(spent, 0.95)),
      (sum(spent) / sum(watches.of(over))).toFixed(4),
    ];
  };
  const after = ["features", "network", "free path", "search, open grammar", "meaning, decision, log, rules"];
  const totals = watches.of("sound").map((_, i) => sum(after.map((stage) => watches.of(stage)[i] ?? 0)));
  const voice = watches.of(VOICE_STAGE);
  return {
    title: "Latency under Node: from the end of speech to the decision",
    notes: [
      `Waiting for the end is on top: ${OPEN_ENDPOINT.endSilenceMs} ms of silence in open listening, ` +
        `${(1000 * PADDING_SAMPLES) / RATE_HZ} ms after the release in held listening. Budget: acknowledgement ≤ 300 ms after the end is ` +
        `detected. ${n} utterances, mean length with 0.3 s of background ${(soundS / n).toFixed(1)} s. The voice-activity row is ` +
        "work that is done while the person speaks; its time is of the whole sound with its silence.",
    ],
    columns: ["stage", "n", "median ms", "95th ms", "of real time"],
    rows: [
      row("voice activity", "whole sound"),
      ...["features", "network", "free path"].map((stage) => row(stage)),
      ...SEARCHES.map((name) => row(`search, ${name} grammar`)),
      row("meaning, decision, log, rules"),
      [
        "**end detected → decision** (open grammar)",
        n,
        ms(quantile(totals, 0.5)),
        ms(quantile(totals, 0.95)),
        (sum(totals) / sum(watches.of("sound"))).toFixed(4),
      ],
      [VOICE_STAGE, voice.length, ms(quantile(voice, 0.5)), ms(quantile(voice, 0.95)), ""],
    ],
  };
}
