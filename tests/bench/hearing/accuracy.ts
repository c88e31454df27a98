import type { Outcome } from "../judge.ts";
import type { Cell, Table } from "../report.ts";
import { percent, shareText } from "../shares.ts";
import { CONDITIONS } from "./conditions.ts";
import { FAMILIES } from "./families.ts";
import type { Saying } from "./saying.ts";

const NAMES = CONDITIONS.map(({ name }) => name);

/** What is wanted of vitals, per cent: right at the first try at least, wrong without a question at most. */
const TARGETS: Readonly<Record<string, { readonly right: number; readonly wrong: number }>> = {
  quiet: { right: 99, wrong: 0.1 },
  "engines 10 dB": { right: 98, wrong: 0.1 },
  "engines 5 dB": { right: 95, wrong: 0.3 },
  "babble 10 dB": { right: 93, wrong: 0.3 },
};

export const kindsOf = (kind: "vitals" | "control" | "drugs"): ReadonlySet<string> =>
  new Set(FAMILIES.filter((f) => f.kind === kind).map(({ name }) => name));

const count = (sayings: readonly Saying[], ...outcomes: readonly Outcome[]): number =>
  sayings.filter((s) => outcomes.includes(s.outcome)).length;

/** Asked as the same words typed would be, and with the right value on offer. */
const isRightByRule = (s: Saying): boolean => s.askedByRule && s.outcome === "askedRight";

function outcomeCells(sayings: readonly Saying[]): readonly Cell[] {
  const n = sayings.length;
  const byRule = sayings.filter(isRightByRule).length;
  const free = sayings.filter((s) => !s.askedByRule);
  return [
    n,
    shareText(count(free, "right"), free.length),
    shareText(count(sayings, "right") + byRule, n),
    count(sayings, "wrong"),
    shareText(count(sayings, "wrong"), n, 2),
    percent((count(sayings, "askedRight") - byRule) / Math.max(1, n)),
    percent(count(sayings, "askedWrong") / Math.max(1, n)),
    percent(count(sayings, "refused") / Math.max(1, n)),
    percent(count(sayings, "silent") / Math.max(1, n)),
    sayings.filter((s) => s.utterances.length === 0).length,
  ];
}

const OUTCOME_COLUMNS = [
  "n",
  "right at first try %",
  "right, or asked by rule %",
  "WRONG n",
  "WRONG %",
  "else asked, right offered %",
  "asked, right missing %",
  "say again %",
  "nothing happened %",
  "no utterance found",
];

/** One row a condition: what became of the statements of these families. */
export function outcomeTable(
  title: string,
  notes: readonly string[],
  sayings: readonly Saying[],
  withTargets = false,
): Table {
  const rows = NAMES.filter((name) => sayings.some((s) => s.condition === name)).map((name): readonly Cell[] => {
    const target = TARGETS[name];
    const wanted = withTargets && target !== undefined ? [`≥ ${target.right}; wrong ≤ ${target.wrong}`] : [];
    return [name, ...wanted, ...outcomeCells(sayings.filter((s) => s.condition === name))];
  });
  return { title, notes, columns: ["condition", ...(withTargets ? ["target %"] : []), ...OUTCOME_COLUMNS], rows };
}

/** One row a family: right at the first try or asked by rule, and the wrong ones, in each condition. */
export function familyTable(sayings: readonly Saying[]): Table {
  const shown = NAMES.filter((name) => sayings.some((s) => s.condition === name));
  const rows = FAMILIES.map(({ name }): readonly Cell[] => {
    const ofFamily = sayings.filter((s) => s.family === name);
    return [
      name,
      ...shown.flatMap((condition): readonly Cell[] => {
        const some = ofFamily.filter((s) => s.condition === condition);
        const right = count(some, "right") + some.filter(isRightByRule).length;
        return [some.length, shareText(right, some.length), count(some, "wrong")];
      }),
    ];
  });
  const columns = ["family", ...shown.flatMap((c) => [`${c}: n`, "right, or asked by rule %", "WRONG"])];
  return { title: "By family", notes: [], columns, rows };
}

/** People: by material, condition and whether the speaker took part in the listener's training. */
export function peopleTable(title: string, notes: readonly string[], sayings: readonly Saying[]): Table {
  const groups = new Map<string, Saying[]>();
  for (const s of sayings)
    for (const standing of [s.standing, "all"]) {
      const key = `${s.family}\n${s.condition}\n${standing}`;
      groups.set(key, [...(groups.get(key) ?? []), s]);
    }
  const rows = [...groups]
    .sort(([a], [b]) => a.localeCompare(b))
    .map(([key, some]): readonly Cell[] => [
      ...key.split("\n"),
      some.length,
      new Set(some.map((s) => s.speaker)).size,
      shareText(some.filter((s) => s.utterances[0]?.isRight === true).length, some.length),
      shareText(count(some, "right") + some.filter(isRightByRule).length, some.length),
      count(some, "wrong"),
      shareText(count(some, "wrong"), some.length),
      percent(
        some.filter((s) => s.outcome !== "right" && s.outcome !== "wrong" && !isRightByRule(s)).length / some.length,
      ),
    ]);
  const columns = [
    ...["what", "condition", "training", "n", "speakers", "best guess right %"],
    ...["right, or asked by rule %", "WRONG n", "WRONG %", "else not taken %"],
  ];
  return { title, notes, columns, rows };
}
