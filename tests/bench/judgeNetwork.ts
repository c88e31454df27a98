/**
 * Listens to a folder of clips with another network than the app's, and prints for each what became of it, as JSON.
 *     npx tsx tests/bench/judgeNetwork.ts FOLDER NETWORK.onnx [PART/PARTS]
 * Called by src/listener/training/judge.py, which makes the clips and counts. Held listening, the search and the
 * decisions are those of `hear`. With "1/4" it takes the second of four parts, so that several cores can share.
 */
import { mkdirSync, mkdtempSync, readFileSync, symlinkSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { loadNodeModels, type NodeModels } from "../../src/adapters/speech/nodeListener.ts";
import type { AppContext } from "../../src/app/context.ts";
import { readAudioFile } from "../../src/cli/audioFile.ts";
import { heardNumber } from "../../src/cli/hearNumber.ts";
import { loadContext } from "../../src/cli/loadContext.ts";
import { wordsToNumber } from "../../src/language/numbers/wordsToNumber.ts";
import type { HeardSound } from "../../src/listener/hearing.ts";
import { m1, m2 } from "../../src/listener/margins.ts";
import { frameSpeech } from "../../src/listener/vadTrim.ts";
import { truthOf, type Outcome } from "./judge.ts";
import { ROOT, searchFor } from "./lab.ts";
import { caseAfter, scoreHeard } from "./scoring.ts";

type Clip = {
  readonly file: string;
  readonly grammar: "numbers" | "open";
  readonly group: string;
  readonly condition: string;
  readonly words: string;
  readonly speaker: string;
};

const START_MS = 1_800_000_000_000;
/** No value counts as a jump from one so old. */
const NOW_MS = START_MS + 3_600_000;
/** A step waits for its answer and there are readings to correct, so that whatever is said can be acted upon. */
const LINES = ["next", "one twenty over seventy rate seventy five sats ninety eight"];

/** The models as the app loads them, but with another network. */
function modelsWith(network: string): Promise<NodeModels> {
  const root = mkdtempSync(join(tmpdir(), "network-"));
  mkdirSync(join(root, "public/listener"), { recursive: true });
  symlinkSync(network, join(root, "public/listener/listener.onnx"));
  for (const name of ["node_modules", "package.json"]) symlinkSync(join(ROOT, name), join(root, name));
  return loadNodeModels(root);
}

/** The margins of a number and whether the best guess is right, so that networks can be compared at equal refusals. */
function marginsOf(clip: Clip, { candidates, free }: HeardSound): object {
  const [best] = candidates;
  if (clip.grammar !== "numbers" || best === undefined || free === undefined) return {};
  const meaning = (words: string): string | undefined => numberOf(words)?.toString();
  const isRight = numberOf(best.words) === numberOf(clip.words);
  return { isRight, m1: m1(best.score, free), m2: m2(candidates, meaning) };
}

const numberOf = (words: string): number | undefined => {
  const value = wordsToNumber(words.split(" "));
  return value.ok ? value.value : undefined;
};

/** What became of one clip, or nothing where its words mean nothing here ("start", a part of a longer statement). */
function outcomeOf(context: AppContext, clip: Clip, heard: HeardSound): Outcome | undefined {
  if (clip.grammar === "numbers") {
    const said = numberOf(clip.words);
    const believed = heardNumber(heard);
    return said === undefined ? undefined : believed === null ? "refused" : believed === said ? "right" : "wrong";
  }
  const state = caseAfter(context, LINES, START_MS);
  const truth = truthOf(context, state, clip.words, NOW_MS);
  return truth.keys.size === 0 ? undefined : scoreHeard(context, state, truth, [heard], NOW_MS).outcome;
}

async function judge(folder: string, network: string, turn: number, turns: number): Promise<void> {
  const clips = JSON.parse(readFileSync(join(folder, "clips.json"), "utf8")) as readonly Clip[];
  const context = await loadContext({});
  if (!context.ok) throw new Error(context.error);
  const models = await modelsWith(network);
  const listeners = {
    numbers: models.listenerFor(searchFor("numbers", "number")),
    open: models.listenerFor(searchFor("case", "open")),
  };
  for (const clip of clips.filter((_, i) => i % turns === turn)) {
    const sound = await readAudioFile(join(folder, clip.file));
    if (!sound.ok) throw new Error(sound.error.message);
    const heard = await listeners[clip.grammar].listen(await frameSpeech(sound.value, models.vad));
    const outcome = outcomeOf(context.value, clip, heard);
    const words = heard.candidates[0]?.words ?? "";
    if (outcome !== undefined)
      console.log(
        JSON.stringify({ ...clip, network: basename(network), outcome, heard: words, ...marginsOf(clip, heard) }),
      );
  }
}

const [folder, network, part = "0/1"] = process.argv.slice(2);
if (folder === undefined || network === undefined) throw new Error("judgeNetwork.ts FOLDER NETWORK.onnx [PART/PARTS]");
const [turn = 0, turns = 1] = part.split("/").map(Number);
await judge(folder, network, turn, turns);
