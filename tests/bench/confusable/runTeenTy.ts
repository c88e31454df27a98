import { loadContext } from "../../../src/cli/loadContext.ts";
import { TEENS, TENS } from "../../../src/language/numbers/numberWords.ts";
import { understand } from "../../../src/language/understand/understand.ts";
import { TEEN_TY_ROWS } from "../../phrases/teenTyRows.ts";
import { CONDITIONS } from "../hearing/conditions.ts";
import type { Job } from "../hearing/jobs.ts";
import { hearAll } from "../hearing/pool.ts";
import type { Saying } from "../hearing/saying.ts";
import type { BenchOptions } from "../options.ts";
import { createRandom } from "../random.ts";
import { machine, toMarkdown, writeReport, type Table } from "../report.ts";

const PROCESSES = 2;
const PAIRED = [3, 4, 5, 6, 7, 8, 9].flatMap((n) => [TEENS[n] ?? "", TENS[n] ?? ""]);
const TEEN_OR_TY = new RegExp(
  `\\b(${PAIRED.map((word) => word.replace(/teen$|ty$/u, "")).join("|")})(teen|ty)\\b`,
  "gu",
);

/** Whether words differ by a teen for a ty or a ty for a teen, and by nothing else. */
const isSwap = (said: string, heard: string): boolean =>
  said !== heard && said.replaceAll(TEEN_OR_TY, "$1") === heard.replaceAll(TEEN_OR_TY, "$1");

/** Every teen and ty in every slot, said by made voices: how many are taken for the other, and how many of these unasked. */
export async function runTeenTy({ count, seed, set }: BenchOptions, progress: (text: string) => void): Promise<void> {
  const startedMs = performance.now();
  const context = await loadContext({});
  if (!context.ok) throw new Error(context.error);
  const sayings = TEEN_TY_ROWS.flatMap(([template]) => PAIRED.map((word) => template.replace("N", word))).filter(
    (words) => understand(context.value.grammars.of("open"), words.split(" ")).kind !== "none",
  );
  const random = createRandom(seed);
  const jobs = CONDITIONS.flatMap(({ name }, c) =>
    Array.from({ length: count }, (_, i): Job => {
      const statement = {
        words: random.pick(sayings),
        state: "open",
        before: [],
        family: "teen and ty",
        kind: "vitals",
      } as const;
      return { kind: "statement", seed: seed * 1_000_000 + c * 100_000 + i, condition: name, statement };
    }),
  );
  const heard = await hearAll(jobs, set, PROCESSES, (done) => {
    if (done % 100 === 0) progress(`${done} of ${jobs.length}`);
  });
  const tables: readonly Table[] = [swapTable(heard), listTable(heard)];
  for (const table of tables) process.stdout.write(`${toMarkdown(table)}\n\n`);
  const tookS = Math.round((performance.now() - startedMs) / 1000);
  const info = { date: new Date().toISOString(), machine: machine(), options: `teenTy, ${set}, seed ${seed}`, tookS };
  writeReport("teenTy", info, tables, { sayings: heard });
}

const heardWords = ({ utterances }: Saying): string => utterances.map((u) => u.heard).join(" ");
const isSwapped = (saying: Saying): boolean => isSwap(saying.said, heardWords(saying));

function swapTable(sayings: readonly Saying[]): Table {
  const rows = CONDITIONS.map(({ name }) => {
    const here = sayings.filter(({ condition }) => condition === name);
    const of = (...outcomes: readonly string[]): number => here.filter((s) => outcomes.includes(s.outcome)).length;
    const swapped = here.filter(isSwapped);
    return [
      name,
      here.length,
      of("right"),
      of("askedRight"),
      of("askedWrong", "refused", "silent"),
      of("wrong"),
      swapped.length,
      swapped.filter(({ outcome }) => outcome === "wrong").length,
    ];
  });
  return {
    title: "Teen and ty: every slot, made voices",
    notes: ["Each of the fourteen words wherever it can be said, alone in its statement. The last number must be 0."],
    columns: ["in", "n", "right", "asked", "refused or missed", "wrong", "heard for the other", "of these taken"],
    rows,
  };
}

const listTable = (sayings: readonly Saying[]): Table => ({
  title: "Teen and ty: taken wrongly",
  notes: [],
  columns: ["said", "heard", "speaker", "in"],
  rows: sayings
    .filter(({ outcome }) => outcome === "wrong")
    .map((saying) => [saying.said, heardWords(saying), saying.speaker, saying.condition]),
});
