import { createHearing } from "../../src/listener/hearing.ts";
import { readNoises, readRecording, readRows } from "./audioSet.ts";
import { RATE_HZ, type Lab } from "./lab.ts";
import { atLevel, loopFrom, mixAt, pad } from "./mix.ts";
import { saidNumber } from "./people.ts";
import { createRandom } from "./random.ts";
import { quantile } from "./stopwatch.ts";

const SPEECH_DBFS = -26;
/** A crowd must have been heard for a while before it can be told from a talker. */
const BEFORE_S = 13;
const AFTER_S = 3;

/** When utterances begin and end, in ms of the sound, and when the end was known. Nothing is recognised. */
async function endsOf(lab: Lab, pcm: Float32Array): Promise<readonly { endMs: number; knownMs: number }[]> {
  const ends: { endMs: number; knownMs: number }[] = [];
  let nowMs = 0;
  lab.models.vad.reset();
  const hearing = createHearing({
    vad: lab.models.vad,
    listen: () => Promise.resolve({ candidates: [] }),
    emit: (output) => void (output.kind === "heard" && ends.push({ endMs: output.endedAtMs, knownMs: nowMs })),
    onBroken: (detail) => {
      throw new Error(detail);
    },
  });
  for (let at = 0; at + 512 <= pcm.length; at += 512) {
    nowMs = (1000 * (at + 512)) / RATE_HZ;
    hearing.push(pcm.subarray(at, at + 512), nowMs);
    await hearing.idle();
  }
  return ends;
}

/** Numbers of people in each noise whose name holds `kind`: is there one utterance, with an end, and how long after the last word is it known? */
export async function studyEnds(lab: Lab, count: number, kind = ""): Promise<void> {
  const random = createRandom(5);
  const rows = readRows("speech-manifest.csv").filter(
    (row) => row["kind"] === "connected" && saidNumber(row) !== undefined,
  );
  const some = random.sample(rows, count);
  console.log("noise, dB: said | one utterance | in pieces | no end | end known after the last sound: median, 95th ms");
  for (const { name, pcm } of (await readNoises()).filter((noise) => noise.name.includes(kind)))
    for (const snrDb of [10, 5]) {
      const found = { one: 0, pieces: 0, none: 0 };
      const delaysMs: number[] = [];
      for (const { file = "" } of some) {
        const said = atLevel(await readRecording(file), SPEECH_DBFS);
        const quiet = pad(said, BEFORE_S * RATE_HZ, AFTER_S * RATE_HZ);
        const sound = mixAt(quiet, loopFrom(pcm, random.below(pcm.length), quiet.length), snrDb);
        const saidMs = [BEFORE_S * 1000, (1000 * (quiet.length - AFTER_S * RATE_HZ)) / RATE_HZ] as const;
        // An end after the first word is said, and not so late that it belongs to something else.
        const ours = (await endsOf(lab, sound)).filter(
          ({ endMs }) => endMs > saidMs[0] + 200 && endMs < saidMs[1] + 2_000,
        );
        found[ours.length === 0 ? "none" : ours.length === 1 ? "one" : "pieces"]++;
        if (ours.length === 1) delaysMs.push(ours[0]!.knownMs - saidMs[1]);
      }
      const late = [quantile(delaysMs, 0.5), quantile(delaysMs, 0.95)].map((ms) => Math.round(ms)).join(", ");
      console.log(`${name}, ${snrDb}: ${some.length} | ${found.one} | ${found.pieces} | ${found.none} | ${late}`);
    }
}
