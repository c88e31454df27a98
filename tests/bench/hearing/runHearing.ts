import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { loadContext } from "../../../src/cli/loadContext.ts";
import { ROOT } from "../lab.ts";
import type { BenchOptions } from "../options.ts";
import { machine, toMarkdown, writeReport, type Table } from "../report.ts";
import { familyTable, kindsOf, outcomeTable, peopleTable } from "./accuracy.ts";
import { confusionTable } from "./confusions.ts";
import { curvesOf, curveSvg, curveTable } from "./curve.ts";
import { fairnessTable } from "./fairness.ts";
import * as notes from "./hearingNotes.ts";
import { makePlan, sizeFor } from "./plan.ts";
import { hearAll } from "./pool.ts";
import type { Material, Saying } from "./saying.ts";
import type { SetName } from "./speakers.ts";
import { noiseTable, takenTable, talkTable } from "./unmeantTables.ts";

const PROCESSES = 2;

/** One row for each utterance that was heard, and one for each saying in which none was found. */
function writeEvidence(set: string, seed: number, sayings: readonly Saying[]): void {
  const rows = sayings.flatMap(({ utterances, ...saying }) =>
    (utterances.length > 0 ? utterances : [undefined]).map((utterance) => ({ set, seed, ...saying, ...utterance })),
  );
  mkdirSync(join(ROOT, "bench"), { recursive: true });
  writeFileSync(
    join(ROOT, `bench/evidence-${set}.json`),
    `[\n${rows.map((row) => JSON.stringify(row)).join(",\n")}\n]\n`,
  );
}

const ofMaterial = (...materials: readonly Material[]): ((s: Saying) => boolean) => {
  return ({ material }) => materials.includes(material);
};
const ofKind = (kind: "vitals" | "control" | "drugs"): ((s: Saying) => boolean) => {
  const families = kindsOf(kind);
  return ({ material, family }) => material === "statement" && families.has(family);
};
const isVital = ofKind("vitals");

function tablesOf(set: SetName, sayings: readonly Saying[]): readonly Table[] {
  const some = (is: (s: Saying) => boolean): readonly Saying[] => sayings.filter(is);
  const statements = some(ofMaterial("statement"));
  const people = some(ofMaterial("people: numbers", "people: open"));
  const curves = curvesOf(some(isVital));
  return [
    outcomeTable("Vitals, open listening, whole app", notes.statements(set), some(isVital), true),
    familyTable(statements),
    outcomeTable("Commands, steps, answers and reasons", [], some(ofKind("control"))),
    outcomeTable("Drug statements", notes.DRUGS, some(ofKind("drugs"))),
    takenTable("Statements taken wrong", statements),
    confusionTable(statements),
    curveTable(curves),
    peopleTable("People", notes.PEOPLE, people),
    takenTable("People taken wrong", people),
    talkTable(some(ofMaterial("talk", "near the language"))),
    noiseTable(some(ofMaterial("noise"))),
    takenTable("Taken though not meant", some(ofMaterial("talk", "near the language", "noise"))),
    fairnessTable("Who is heard worse: made voices", statements),
    fairnessTable("Who is heard worse: people", people),
  ];
}

/** Hears everything of the plan, prints the tables and writes `bench/hearing.*` and `bench/evidence-SET.json`. */
export async function runHearing({ set, count, seed }: BenchOptions, progress: (text: string) => void): Promise<void> {
  const startedMs = performance.now();
  const onMachine = machine();
  const context = await loadContext({});
  if (!context.ok) throw new Error(context.error);
  progress("making the plan");
  const jobs = makePlan(context.value, sizeFor(count), seed);
  progress(`${jobs.length} sounds to hear`);
  const step = Math.max(1, Math.round(jobs.length / 20));
  const sayings = await hearAll(jobs, set, PROCESSES, (done) => {
    if (done % step === 0) progress(`${done} of ${jobs.length}`);
  });
  writeEvidence(set, seed, sayings);

  const tables = tablesOf(set, sayings);
  for (const table of tables) process.stdout.write(`${toMarkdown(table)}\n\n`);
  const info = {
    date: new Date().toISOString(),
    machine: onMachine,
    options: `hearing, set ${set}, seed ${seed}, ${count} statements a condition`,
    tookS: Math.round((performance.now() - startedMs) / 1000),
  };
  const curves = curvesOf(sayings.filter(isVital));
  writeReport("hearing", info, tables, { curves });
  writeFileSync(join(ROOT, "bench/hearing-curve.svg"), curveSvg(curves));
  process.stdout.write(`${info.date}, ${info.machine}; ${info.options}; took ${info.tookS} s. Written to bench/.\n`);
}
