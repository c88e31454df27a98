import { openLab } from "./lab.ts";
import { studyEnds } from "./soundEnds.ts";
import { studyMemory } from "./soundMemory.ts";
import { studyMixtures } from "./soundMixtures.ts";
import { studyPauses } from "./soundPauses.ts";

/**
 * Measures the way from sound to utterances on people, made voices and real noise, and prints what it finds. Not a test.
 *
 * `npx tsx tests/bench/soundStudy.ts PART [COUNT [NOISE]]`; parts: `ends` (the only one to heed NOISE), `pauses`, `level`, `highpass`, `two`, `memory`.
 */
const [part = "", count = "20", kind] = process.argv.slice(2);
const n = Number(count);
const parts: Readonly<Record<string, () => Promise<void>>> = {
  ends: async () => studyEnds(await openLab(), n, kind),
  pauses: async () => studyPauses(await openLab(), n),
  level: async () => studyMixtures(await openLab(), "level", n),
  highpass: async () => studyMixtures(await openLab(), "highpass", n),
  two: async () => studyMixtures(await openLab(), "two", n),
  memory: studyMemory,
};
const study = parts[part];
if (study === undefined) throw new Error(`no part "${part}"; there are: ${Object.keys(parts).join(", ")}`);
await study();
