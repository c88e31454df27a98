/**
 * Measures the whole of Tragus on this machine and prints tables; the same tables go to `bench/` (not committed).
 *
 *   npm run bench                    everything, about a quarter of an hour on two cores
 *   npm run bench -- --quick         a small sample of everything, under three minutes
 *   npm run bench -- --thresholds    and what other thresholds would have made of the same sounds
 *   npm run bench -- --seed 7        another choice of voices, noises and samples
 */
import { hasAudioSet, readNoises } from "./audioSet.ts";
import { accuracyTable, falseAcceptTable, wrongTable } from "./accuracyTable.ts";
import { bytesTable } from "./bytes.ts";
import { chromiumLatencyTable } from "./chromiumLatency.ts";
import { compileTable } from "./compileTime.ts";
import {
  FULL,
  hearMadeVoices,
  hearPeople,
  hearUnmeant,
  latencyChance,
  latencyPhrases,
  QUICK,
  type Parts,
} from "./hearingParts.ts";
import { openLab } from "./lab.ts";
import { latencyTable } from "./latency.ts";
import { longCaseTable } from "./longCase.ts";
import * as notes from "./notes.ts";
import { readOptions } from "./options.ts";
import { machine, toMarkdown, writeReport, type Table } from "./report.ts";
import { sentencesTable } from "./sentences.ts";
import { loadFlite, voicesOf } from "./synth.ts";
import { replayDisagreements, thresholdTables } from "./thresholdStudy.ts";
import type { Trial } from "./trial.ts";

const options = readOptions(process.argv.slice(2));
const startedMs = performance.now();
const elapsedS = (): number => Math.round((performance.now() - startedMs) / 1000);
const progress = (text: string): void => void process.stderr.write(`${elapsedS()} s: ${text}\n`);
const tables: Table[] = [];
const show = (table: Table): void => {
  tables.push(table);
  process.stdout.write(`${toMarkdown(table)}\n\n`);
};

progress("loading");
const onMachine = machine();
const lab = await openLab();
const flite = await loadFlite();
const voices = voicesOf(flite);
const noises = await readNoises();
const parts: Parts = { lab, voices, noises, counts: options.quick ? QUICK : FULL, seed: options.seed };

show(longCaseTable(lab.context));
show(compileTable());
show(sentencesTable(lab.context, flite));
show(bytesTable());
show(await latencyTable(lab, flite, latencyPhrases(parts), voices, latencyChance(parts)));
show(await chromiumLatencyTable());

progress("made voices");
const spoken = await hearMadeVoices(parts);
show(accuracyTable("Made voices, open listening, whole app", notes.madeVoices(voices, noises), spoken));
const isUnheard = ({ voice }: Trial): boolean =>
  voices.some(({ name, inTraining }) => !inTraining && (voice === name || voice.startsWith(`${name} in `)));
const byVoice = spoken.map((trial) => ({
  ...trial,
  group: isUnheard(trial) ? "voice not heard in training" : "voice heard in training",
}));
show(accuracyTable("The same, by whether the voice took part in the listener's training", [], byVoice));
show(wrongTable("Wrong accepted: made voices", spoken));

progress("people");
const people = hasAudioSet() ? await hearPeople(parts) : { numbers: [], answers: [] };
show(accuracyTable("People: numbers, each file one utterance", notes.people(hasAudioSet()), people.numbers));
show(accuracyTable("People: yes and no while a question waits, open listening", [], people.answers));
show(wrongTable("Wrong accepted: people", [...people.numbers, ...people.answers]));

progress("sound that is not meant for the app");
const unmeant = await hearUnmeant(parts);
show(falseAcceptTable("False accepts: open listening to what is not meant for it", notes.FALSE_ACCEPTS, unmeant));
const stray = unmeant.flatMap(([, { trials }]) => trials);
show(wrongTable("Accepted though not meant", stray));

if (options.thresholds) {
  const hours = unmeant.reduce((sum, [, group]) => sum + group.hours, 0);
  const sets = [
    { name: "made voices, quiet", trials: spoken.filter((t) => t.condition === "quiet") },
    { name: "made voices, noise", trials: spoken.filter((t) => t.condition !== "quiet") },
    { name: "people's numbers", trials: people.numbers },
    { name: "people's yes and no", trials: people.answers },
    { name: "not meant", trials: stray, hours },
  ];
  thresholdTables(sets.filter(({ trials }) => trials.length > 0)).forEach(show);
}
const disagreeing = replayDisagreements([...spoken, ...people.answers, ...stray]);
if (disagreeing.length > 0)
  process.stdout.write(`The study of thresholds does not follow the app for ${disagreeing.length} sayings.\n`);

const name = options.quick ? "quick" : "full";
const info = {
  date: new Date().toISOString(),
  machine: onMachine,
  options: `${name}${options.thresholds ? ", thresholds" : ""}, seed ${options.seed}`,
  tookS: elapsedS(),
};
writeReport(name, info, tables, { trials: [...spoken, ...people.numbers, ...people.answers, ...stray] });
process.stdout.write(`${info.date}, ${info.machine}; ${info.options}; took ${info.tookS} s. Written to bench/.\n`);
