import { TOO_LOUD_UNDER_DB } from "../../../src/app/loudness.ts";
import { groupBy } from "../groupBy.ts";
import type { Cell, Table } from "../report.ts";
import { wilson } from "../wilson.ts";
import type { LoudTrial } from "./hearLoud.ts";

const STEP_DB = 3;

const percent = (share: number): string => (100 * share).toFixed(1);

function share(count: number, n: number): string {
  const { low, high } = wilson(count, n);
  return `${percent(count / Math.max(1, n))} % (${percent(low)}–${percent(high)})`;
}

const row = (name: string, some: readonly LoudTrial[]): readonly Cell[] => {
  const countOf = (...outcomes: readonly string[]) => some.filter((t) => outcomes.includes(t.outcome)).length;
  const n = some.length;
  return [
    name,
    n,
    share(countOf("right"), n),
    share(countOf("askedRight", "askedWrong"), n),
    share(countOf("refused", "silent"), n),
    share(countOf("wrong"), n),
  ];
};

const COLUMNS = ["dB", "n", "right", "asked", "refused or not heard", "wrong"];
const byStep = (db: number): number => Math.floor(db / STEP_DB) * STEP_DB;

/** Where hearing breaks down, by the ratio that was mixed and by the ratio that the app itself estimates. */
export function loudTables(trials: readonly LoudTrial[]): readonly Table[] {
  const estimated = trials.flatMap((t) => (t.estimatedDb === undefined ? [] : [{ ...t, estimatedDb: t.estimatedDb }]));
  const steps = [...groupBy(estimated, (t) => String(byStep(t.estimatedDb)))];
  return [
    {
      title: "Too loud: statements in ever louder noise, by the ratio that was mixed",
      notes: ["Speech while speaking to the whole of the noise, full band, unweighted."],
      columns: ["noise", ...COLUMNS],
      rows: [...groupBy(trials, (t) => `${t.noise}|${t.mixedDb}`)]
        .sort(([a], [b]) => a.localeCompare(b, "en", { numeric: true }))
        .map(([key, some]) => [key.split("|")[0]!, ...row(key.split("|")[1]!, some)]),
    },
    {
      title: "Too loud: the same by what the app estimates from its meter and the utterance",
      notes: [`In use: too loud under ${TOO_LOUD_UNDER_DB} dB. Left out: sounds in which no utterance was found.`],
      columns: COLUMNS,
      rows: steps
        .sort(([a], [b]) => Number(a) - Number(b))
        .map(([from, some]) => row(`${from} to ${Number(from) + STEP_DB}`, some)),
    },
  ];
}
