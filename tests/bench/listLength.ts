import type { Sound } from "../../src/adapters/voice/wav.ts";
import { sayKillerWarning } from "../../src/language/sentences/list.ts";
import { placesOf } from "../../src/log/steps/lists.ts";
import { defaultProtocol } from "../../src/protocol/defaultProtocol.ts";
import type { BenchOptions } from "./options.ts";
import { machine, toMarkdown, writeReport, type Table } from "./report.ts";
import { loadFlite } from "./synth.ts";

/** What the reading of the preparation may last, and of its killer items alone: speech, without the answers. */
const WHOLE_S = 90;
const KILLERS_S = 30;

const secondsOf = ({ pcm, sampleRate }: Sound): number => pcm.length / sampleRate;
const sum = (seconds: readonly number[]): number => seconds.reduce((total, s) => total + s, 0);
const inBudget = (seconds: number, budgetS: number): string => (seconds <= budgetS ? "" : "over");

/** How long the built-in voice reads every challenge of the preparation at its usual speed, and its killer items alone. */
export async function runListLength({ seed }: BenchOptions, progress: (text: string) => void): Promise<void> {
  const startedMs = performance.now();
  const flite = await loadFlite();
  progress("reading the challenges");
  const read = (text: string): number => {
    const said = flite.synthesise(text);
    if (!said.ok) throw new Error(said.error.detail);
    return secondsOf(said.value);
  };
  const timed = placesOf(defaultProtocol, "prepare").map(({ step }) => ({ step, seconds: read(step.challenge) }));
  const killers = timed.filter(({ step }) => step.killer);
  const [wholeS, killersS] = [timed, killers].map((read) => sum(read.map(({ seconds }) => seconds))) as [
    number,
    number,
  ];
  const warningS = read(sayKillerWarning(killers.map(({ step }) => step.name)));
  const tables: readonly Table[] = [
    {
      title: "How long the preparation list lasts",
      notes: ["Built-in voice at its usual speed, from the first to the last sample of each; the answers come on top."],
      columns: ["what", "seconds", "budget", ""],
      rows: [
        [`whole list, ${timed.length} challenges`, wholeS.toFixed(1), WHOLE_S, inBudget(wholeS, WHOLE_S)],
        [`killer items, ${killers.length}`, killersS.toFixed(1), KILLERS_S, inBudget(killersS, KILLERS_S)],
        ["warning that names them all", warningS.toFixed(1), "", ""],
      ],
    },
    {
      title: "Each challenge",
      notes: [],
      columns: ["step", "challenge", "killer", "seconds"],
      rows: timed.map(({ step: { name, challenge, killer }, seconds }) => [
        name,
        challenge,
        killer ? "killer" : "",
        seconds.toFixed(2),
      ]),
    },
  ];
  process.stdout.write(`${tables.map(toMarkdown).join("\n\n")}\n`);
  const tookS = Math.round((performance.now() - startedMs) / 1000);
  const info = { date: new Date().toISOString(), machine: machine(), options: `list, seed ${seed}`, tookS };
  writeReport("list", info, tables, {});
}
