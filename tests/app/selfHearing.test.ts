import { basename } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { createMemoryFactStore } from "../../src/adapters/storage/memoryFactStore.ts";
import type { Flite } from "../../src/adapters/voice/synthesise.ts";
import type { AppState } from "../../src/app/context.ts";
import type { GrammarState } from "../../src/app/ports.ts";
import { Session } from "../../src/app/session.ts";
import { takeTick, takeUtterance } from "../../src/app/takeTurn.ts";
import { readTalkLine } from "../../src/cli/talkLine.ts";
import { createHearing, type HeardSound } from "../../src/listener/hearing.ts";
import { resample } from "../../src/listener/resample.ts";
import { openLab, RATE_HZ, type Lab } from "../bench/lab.ts";
import { atLevel } from "../bench/mix.ts";
import { loadFlite } from "../bench/synth.ts";
import { caseScripts, saidIn } from "../cases/script.ts";

/** Of what the tool says in the written cases, CI takes every sixteenth line; `SELF_HEARING_EVERY=1` takes all, and tells. */
const EVERY = Number(process.env["SELF_HEARING_EVERY"] ?? 16);
const START_MS = 1_800_000_000_000;
/** As loud as somebody close to the microphone: no echo canceller has touched it. */
const LEVEL_DBFS = -26;
const BLOCK_SAMPLES = 2_048;

/** Something that the tool said in a case, and the case as it was when the words had been said. */
type Line = {
  readonly where: string;
  readonly text: string;
  readonly withinMs?: number;
  readonly grammar: GrammarState;
  readonly state: AppState;
  readonly nowMs: number;
};

let lab: Lab;
let flite: Flite;
beforeAll(async () => {
  [lab, flite] = await Promise.all([openLab(), loadFlite()]);
}, 60_000);

/** Everything that is said in the written cases. */
async function linesOfCases(): Promise<readonly Line[]> {
  const lines: Line[] = [];
  for (const script of caseScripts()) {
    const session = new Session({ context: lab.context, store: createMemoryFactStore(), newCaseId: () => "c" });
    let nowMs = START_MS;
    const add = (text: string, withinMs?: number): void => {
      if (text === "") return;
      const where = `${basename(script.path, ".txt")} ${lines.length}`;
      const brisk = withinMs === undefined ? {} : { withinMs };
      lines.push({ where, text, ...brisk, grammar: session.grammar, state: session.state, nowMs });
    };
    for (const { text } of (await session.start(nowMs)).announcements) add(text);
    for (const raw of saidIn(script)) {
      const line = readTalkLine(raw);
      if (!line.ok) throw new Error(line.error);
      const untilMs = START_MS + (line.value.atMs ?? nowMs - START_MS);
      while (nowMs < untilMs) {
        nowMs = Math.min(nowMs + 1000, untilMs);
        for (const { text } of (await session.tick(nowMs)).announcements) add(text);
      }
      const candidates = [{ words: line.value.text, score: 0 }];
      const { announcements, answer } = await session.hear({ by: "typed", candidates, endedAtMs: nowMs }, nowMs);
      for (const { text } of announcements) add(text);
      add(answer?.reply ?? "", answer?.withinMs);
    }
  }
  return lines;
}

/** What open listening makes of our own voice, which is known to sound: the gate is on until the words are over. */
async function hearOurselves({ text, withinMs, grammar }: Line): Promise<readonly HeardSound[]> {
  const said = flite.synthesise(text, withinMs === undefined ? {} : { withinMs });
  if (!said.ok) throw new Error(said.error.detail);
  const voice = atLevel(resample(said.value.pcm, said.value.sampleRate, RATE_HZ), LEVEL_DBFS);
  let seed = 1;
  const hiss = (seconds: number) =>
    Float32Array.from({ length: seconds * RATE_HZ }, () => {
      seed = (seed * 1_664_525 + 1_013_904_223) >>> 0;
      return (seed / 2 ** 31 - 1) * 0.001;
    });
  const heard: HeardSound[] = [];
  const { vad, listenerFor } = lab.models;
  vad.reset();
  const hearing = createHearing({
    vad,
    listen: async (pcm) => {
      const { candidates, free, shape, goesOn } = await listenerFor(lab.searches[grammar]).listen(pcm);
      return { candidates, free, shape, goesOn };
    },
    emit: (output) => void (output.kind === "heard" && heard.push(output.heard)),
    onBroken: (detail) => {
      throw new Error(detail);
    },
  });
  const push = (pcm: Float32Array): void => {
    for (let at = 0; at < pcm.length; at += BLOCK_SAMPLES) hearing.push(pcm.subarray(at, at + BLOCK_SAMPLES), 0);
  };
  push(hiss(0.3));
  hearing.setSpeaking(true);
  push(voice);
  hearing.setSpeaking(false);
  push(hiss(2));
  await hearing.idle();
  return heard;
}

describe("our own voice in the microphone, with no echo canceller at all", () => {
  it("yields no fact and no question, whatever the tool says in the written cases", { timeout: 900_000 }, async () => {
    const lines = (await linesOfCases()).filter((_, i) => i % EVERY === 0);
    const wrong: string[] = [];
    const outcomes: Record<string, number> = {};
    let utterances = 0;
    for (const line of lines) {
      const { state, nowMs } = line;
      // What is due by itself at this moment is not the voice's doing.
      const due = takeTick(lab.context, state, nowMs).facts.length;
      for (const heard of await hearOurselves(line)) {
        utterances++;
        const utterance = { by: "listener", ...heard, endedAtMs: nowMs } as const;
        const turn = takeUtterance(lab.context, state, utterance, nowMs);
        const outcome = `${heard.overlapped === true ? "" : "not overlapped "}${turn.answer?.outcome}`;
        outcomes[outcome] = (outcomes[outcome] ?? 0) + 1;
        if (turn.facts.length > due)
          wrong.push(
            `${line.where} "${line.text}": "${turn.answer?.words}" ${turn.facts.map((f) => f.type).join(" ")}`,
          );
      }
    }
    if (process.env["SELF_HEARING_EVERY"] !== undefined)
      process.stderr.write(`${JSON.stringify({ lines: lines.length, utterances, outcomes, wrong }, null, 1)}\n`);
    expect(utterances).toBeGreaterThan(lines.length / 2);
    expect(wrong).toEqual([]);
  });
});
