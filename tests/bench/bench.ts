/**
 * Measures the whole of Tragus on this machine and prints tables; the same tables go to `bench/` (not committed).
 *
 *   npm run bench                    delays, lengths of sentences and sizes
 *   npm run bench -- --quick         the same with fewer utterances
 *   npm run bench -- hearing         how well it hears: statements, people, talk and noise; up to 20 minutes on two cores
 *       --set tuning                 in the voices and noises that decisions may be fitted to; else in others
 *       --n 300                      with so many statements a condition (2,000); --quick: 60
 *   npm run bench -- called          listening that must be called: misses, false wakes, and speech in ever louder noise
 *   npm run bench -- fit             fits the decision to what `-- hearing --set tuning` heard
 *   npm run bench -- confusable      which words of the language sound most alike, and what hearing one for another costs
 *   npm run bench -- task            how long it takes until the right value stands, by what `-- hearing` measured before
 *   npm run bench -- second          what a second listening to a changed copy of the sound would add
 *   npm run bench -- list                how long the list of the preparation lasts when it is read out
 *   npm run bench -- voice               how well our own numbers come through noise, plain and shaped
 *   npm run bench -- alerts          what a simulated clinician of six hours is told: missed, late, repeated, seconds of speech
 *       --n 6                        cases a level of talk
 *   npm run bench -- bargein         how soon our voice is silent when somebody talks over it, and what cuts it off wrongly
 *   npm run bench -- speed           features, network and search, each timed in Node and Chromium; memory
 *   npm run bench -- --seed 7        another choice of voices, noises and samples
 */
import { runAlerts } from "./alerts/runAlerts.ts";
import { bytesTable } from "./bytes.ts";
import { bargeInTable } from "./bargeIn/inChromium.ts";
import { runBargeIn } from "./bargeIn/runBargeIn.ts";
import { chromiumLatencyTable } from "./chromiumLatency.ts";
import { chromiumToneTable } from "./chromiumTone.ts";
import { compileTable } from "./compileTime.ts";
import { openLab } from "./lab.ts";
import { latencyTable } from "./latency.ts";
import { runListLength } from "./listLength.ts";
import { longCaseTable } from "./longCase.ts";
import { readOptions } from "./options.ts";
import { PHRASES } from "./phrases.ts";
import { createRandom } from "./random.ts";
import { runCalled } from "./called/runCalled.ts";
import { runFit } from "./certainty/runFit.ts";
import { runConfusable } from "./confusable/runConfusable.ts";
import { runTeenTy } from "./confusable/runTeenTy.ts";
import { runHearing } from "./hearing/runHearing.ts";
import { runSecond } from "./second/runSecond.ts";
import { runSpeed } from "./speed/runSpeed.ts";
import { runVoice } from "./voice/runVoice.ts";
import { runWholeTask } from "./wholeTask/runWholeTask.ts";
import { machine, toMarkdown, writeReport, type Table } from "./report.ts";
import { sentencesTable } from "./sentences.ts";
import { loadFlite, voicesOf } from "./synth.ts";

const options = readOptions(process.argv.slice(2));
const startedMs = performance.now();
const elapsedS = (): number => Math.round((performance.now() - startedMs) / 1000);
const progress = (text: string): void => void process.stderr.write(`${elapsedS()} s: ${text}\n`);
if (options.part !== undefined) {
  const run = {
    hearing: runHearing,
    called: runCalled,
    confusable: runConfusable,
    teenTy: runTeenTy,
    fit: runFit,
    task: runWholeTask,
    second: runSecond,
    speed: runSpeed,
    list: runListLength,
    voice: runVoice,
    alerts: runAlerts,
    bargein: runBargeIn,
  }[options.part];
  await run(options, progress);
  process.exit(0);
}
const tables: Table[] = [];
const show = (table: Table): void => {
  tables.push(table);
  process.stdout.write(`${toMarkdown(table)}\n\n`);
};

progress("loading");
const onMachine = machine();
const lab = await openLab();
const flite = await loadFlite();
const phrases = createRandom(options.seed).sample(PHRASES, options.quick ? 12 : 60);

show(longCaseTable(lab.context));
show(compileTable());
show(sentencesTable(lab.context, flite));
show(bytesTable());
show(await latencyTable(lab, flite, phrases, voicesOf(flite), createRandom(options.seed + 1)));
show(await chromiumLatencyTable());
show(await bargeInTable());
show(await chromiumToneTable(options.quick));

const name = options.quick ? "quick" : "full";
const info = {
  date: new Date().toISOString(),
  machine: onMachine,
  options: `${name}, seed ${options.seed}`,
  tookS: elapsedS(),
};
writeReport(name, info, tables, {});
process.stdout.write(`${info.date}, ${info.machine}; ${info.options}; took ${info.tookS} s. Written to bench/.\n`);
