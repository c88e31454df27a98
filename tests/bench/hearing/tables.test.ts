import { describe, expect, it } from "vitest";
import type { Outcome } from "../judge.ts";
import { outcomeTable } from "./accuracy.ts";
import { confusionTable, difference } from "./confusions.ts";
import { curvesOf, curveSvg } from "./curve.ts";
import type { Evidence } from "./evidence.ts";
import { fairnessTable } from "./fairness.ts";
import type { Saying } from "./saying.ts";
import { tookPart } from "./training.ts";
import { noiseTable, talkTable } from "./unmeantTables.ts";

const heard = (words: string, isRight: boolean, certainty: number): Evidence => ({
  heard: words,
  isRight,
  kind: "vitals",
  m1: 0,
  m2: 9,
  phones: 20,
  candidates: 2,
  certainty,
  isWrongIfTaken: !isRight,
});
const saying = (outcome: Outcome, more: Partial<Saying> = {}): Saying => ({
  material: "statement",
  condition: "quiet",
  family: "heart rate",
  speaker: "a",
  standing: "",
  sex: "f",
  accent: "",
  noise: "",
  state: "open",
  said: "rate ninety",
  outcome,
  askedByRule: false,
  utterances: [heard("rate ninety", true, 0.9)],
  soundS: 3_600,
  ...more,
});
const many = (n: number, make: () => Saying): readonly Saying[] => Array.from({ length: n }, make);

it("counts what a rule asks about apart from what the sound left in doubt", () => {
  const sayings = [
    ...many(6, () => saying("right")),
    ...many(2, () => saying("askedRight", { askedByRule: true })),
    saying("askedRight"),
    saying("wrong"),
  ];
  const { rows, columns } = outcomeTable("", [], sayings, true);
  const cell = (name: string) => rows[0]![columns.indexOf(name)];
  expect(cell("n")).toBe(10);
  expect(cell("right at first try %")).toMatch(/^75\.0 /);
  expect(cell("right, or asked by rule %")).toMatch(/^80\.0 /);
  expect(cell("WRONG n")).toBe(1);
  expect(cell("else asked, right offered %")).toBe("10.0");
  expect(cell("target %")).toBe("≥ 99; wrong ≤ 0.1");
});

it.each([
  ["rate fifteen", "rate fifty", ["fifteen", "fifty"]],
  ["one ten over sixty", "one ten over sixty mean", ["–", "mean"]],
  ["rate nine nine", "rate nine", ["nine", "–"]],
  ["status", "later", ["status", "later"]],
])("%s, heard as %s, differs in %j", (said, got, expected) => {
  expect(difference(said, got)).toEqual(expected);
});

it("lists what was heard for what, the most frequent first, and nothing that was right", () => {
  const wrong = (words: string, outcome: Outcome) => saying(outcome, { utterances: [heard(words, false, 0.5)] });
  const { rows } = confusionTable([
    saying("right"),
    wrong("rate nineteen", "wrong"),
    wrong("rate nineteen", "askedRight"),
    wrong("sats ninety", "silent"),
  ]);
  expect(rows.map((row) => row.slice(0, 6))).toEqual([
    ["ninety → nineteen", 2, 1, 1, 0, 0],
    ["rate → sats", 1, 0, 0, 0, 1],
  ]);
});

describe("the trade-off", () => {
  const sayings = [
    saying("right"),
    saying("right", { utterances: [heard("rate ninety", true, 0.5)] }),
    saying("wrong", { utterances: [heard("rate nineteen", false, 0.7)] }),
    saying("silent", { utterances: [] }),
    saying("wrong", { utterances: [heard("rate", false, 0.99), heard("rate ninety", true, 0.99)] }),
  ];
  it.each([
    [0, 2 / 5, 2 / 5],
    [0.6, 1 / 5, 2 / 5],
    [0.8, 1 / 5, 1 / 5],
    [0.995, 0, 0],
  ])("from %d: right %d, wrong %d", (threshold, right, wrong) => {
    expect(curvesOf(sayings)[0]!.points.find((p) => p.threshold === threshold)).toEqual({ threshold, right, wrong });
  });
  it("never gains by taking less, and is drawn", () => {
    const [curve] = curvesOf(sayings);
    curve!.points.slice(1).forEach((p, i) => expect(p.wrong).toBeLessThanOrEqual(curve!.points[i]!.wrong));
    expect(curveSvg([curve!])).toContain("<polyline");
  });
});

it("names a group that is heard far worse, and says nothing of a small one", () => {
  const { rows } = fairnessTable("", [
    ...many(80, () => saying("right")),
    ...many(20, () => saying("refused", { sex: "m", speaker: "b" })),
    ...many(5, () => saying("refused", { sex: "x", speaker: "c" })),
  ]);
  expect(rows.filter(([by]) => by === "sex").map((row) => [row[1], row[5]])).toEqual([
    ["m", "far below"],
    ["f", ""],
  ]);
});

it("counts talk by the sentence and noise by the hour", () => {
  const talk = [
    saying("wrong", { family: "talk" }),
    ...many(3, () => saying("silent", { family: "talk" })),
    saying("refused", { family: "talk" }),
  ];
  expect(talkTable(talk).rows[0]!.slice(0, 4)).toEqual(["talk", "quiet", 5, 1]);
  const noise = [saying("wrong"), saying("askedWrong", { soundS: 0 }), saying("silent", { utterances: [] })];
  expect(noiseTable(noise).rows[0]).toEqual(["quiet", "2.00", 2, 1, "0.5 (0.0–2.8)", "0", "0.5", "0.0"]);
});

it.each([
  ["an4_mjhp", false],
  ["an4_mtje", true],
  ["fsdd_nicolas", false],
  ["ast_allison", false],
  ["dsp_01", true],
])("%s took part in the training: %s", (speaker, took) => {
  expect(tookPart(speaker)).toBe(took);
});
