import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { freshState, type AppState } from "../../src/app/context.ts";
import { takeUtterance } from "../../src/app/takeTurn.ts";
import { emptyCase, type CaseState } from "../../src/log/caseState.ts";
import type { Fact } from "../../src/log/facts.ts";
import { selectFluidTotals, selectTotals } from "../../src/log/totals.ts";
import { testContext } from "./playCase.ts";
import { T0_MS } from "./playedState.ts";

const context = testContext();

/** What may be said of drugs, in an order that nobody would choose. */
const LINES = [
  "weight eight zero kilos",
  "height one seventy eight centimetres, sex male",
  "age six",
  "ketamine",
  "ketamine given",
  "ketamine one hundred given",
  "ketamine two mils given",
  "rocuronium",
  "rocuronium given",
  "mannitol given",
  "mannitol",
  "push dose given",
  "phenylephrine",
  "phenylephrine fifty given",
  "make push dose phenylephrine",
  "start noradrenaline at point one",
  "noradrenaline up to point two",
  "how much noradrenaline for eighty kilos at point one",
  "stop noradrenaline",
  "saline two fifty given",
  "one zero",
  "fifty milligrams",
  "done",
  "next",
  "disregard",
  "negative",
];
const STRENGTHS = [
  "ketamine fifty milligrams per mil",
  "rocuronium ten milligrams per mil",
  "phenylephrine ten milligrams in one hundred",
  "noradrenaline four milligrams in two fifty",
  "fifty per mil",
];

const said = fc.record({
  words: fc.oneof(
    { weight: 6, arbitrary: fc.constantFrom(...LINES) },
    { weight: 3, arbitrary: fc.constantFrom(...STRENGTHS) },
    { weight: 6, arbitrary: fc.constant("affirm") },
  ),
  afterS: fc.constantFrom(0, 1, 5, 20, 40),
});
const talk = fc.array(said, { minLength: 1, maxLength: 30, size: "max" });

type Turn = {
  readonly words: string;
  readonly before: CaseState;
  readonly after: CaseState;
  readonly facts: readonly Fact[];
  readonly reply: string;
};

/** Says the lines one after the other; `instead` may replace one, seeing the case before it. */
function play(
  lines: readonly { readonly words: string; readonly afterS: number }[],
  instead: (words: string, log: CaseState) => string = (words) => words,
): readonly Turn[] {
  let state: AppState = freshState(emptyCase);
  let nowMs = T0_MS;
  return lines.map((line) => {
    nowMs += line.afterS * 1000;
    const before = state.log;
    const words = instead(line.words, before);
    const utterance = { by: "typed", candidates: [{ words, score: 0 }], endedAtMs: nowMs } as const;
    const turn = takeUtterance(context, state, utterance, nowMs);
    state = turn.state;
    return { words, before, after: turn.state.log, facts: turn.facts, reply: turn.answer?.reply ?? "" };
  });
}

const MCG = { mcg: 1, mg: 1e3, g: 1e6 } as const;
const inMcg = ({ value, unit }: { readonly value: number; readonly unit: string }): number =>
  value * (MCG[unit as keyof typeof MCG] ?? Number.NaN);

/** The totals worked out anew from the record alone: what was given, less what was struck. */
function totalsOf(facts: readonly Fact[]): ReadonlyMap<string, number> {
  const struck = facts.flatMap((f) => (f.type === "entry.struck" ? f.targetIds : []));
  const totals = new Map<string, number>();
  for (const f of facts) {
    if (struck.includes(f.id)) continue;
    if (f.type === "drug.given") totals.set(f.drugId, (totals.get(f.drugId) ?? 0) + inMcg(f.amount));
    if (f.type === "fluid.given") totals.set(f.fluidId, (totals.get(f.fluidId) ?? 0) + f.volumeMl);
  }
  return totals;
}

const COUNTED: readonly Fact["type"][] = [
  "drug.given",
  "fluid.given",
  "infusion.set",
  "strength.affirmed",
  "recipe.started",
];

describe("whatever is said of drugs, in any order", () => {
  it("nothing counts that was not read back and affirmed", () => {
    fc.assert(
      fc.property(talk, (lines) => {
        for (const { words, before, facts, reply } of play(lines)) {
          const counted = facts.filter(({ type }) => COUNTED.includes(type));
          if (counted.length === 0) continue;
          const [act] = before.questions[0]?.acts ?? [];
          expect(words).toBe("affirm");
          expect(counted.every(({ confirmation }) => confirmation === "affirmed")).toBe(true);
          expect(act?.kind === "record" && act.facts).toMatchObject(
            counted.map(({ v: _v, id: _id, atMs: _at, confirmation: _affirmed, ...rest }) => rest),
          );
          expect(reply).not.toBe("");
        }
      }),
    );
  });

  it("the totals are those of the record: an affirmed dose counts once, a struck one not at all", () => {
    fc.assert(
      fc.property(talk, (lines) => {
        const facts: Fact[] = [];
        for (const turn of play(lines)) {
          facts.push(...turn.facts);
          const totals = totalsOf(facts);
          const drugs = selectTotals(turn.after).map(({ drugId, total }) => {
            if (!total.ok) throw new Error(total.error.kind);
            return [drugId, inMcg(total.value)] as const;
          });
          const fluids = selectFluidTotals(turn.after).map(({ fluidId, volumeMl }) => [fluidId, volumeMl] as const);
          expect([...drugs, ...fluids].map(([id]) => id).toSorted()).toEqual([...totals.keys()].toSorted());
          for (const [id, value] of [...drugs, ...fluids]) expect(value).toBeCloseTo(totals.get(id) ?? -1, 6);
        }
      }),
    );
  });

  it("no volume and no pump rate is said while no concentration is affirmed", () => {
    const neverAffirmed = (words: string, { questions: [question] }: CaseState): string => {
      const [act] = question?.acts ?? [];
      const isStrength = act?.kind === "record" && act.facts[0]?.type === "strength.affirmed";
      return words === "affirm" && isStrength ? "negative" : words;
    };
    const volume = /\bAt [^.]*millilitre|[a-z] millilitres? per hour|millilitres?, given/u;
    fc.assert(
      fc.property(talk, (lines) => {
        for (const { reply, after } of play(lines, neverAffirmed)) {
          expect(after.care.strengths).toEqual({});
          expect(reply).not.toMatch(volume);
        }
      }),
    );
  });

  it("with concentrations affirmed, a volume is said, and only ever said of a drug that has one", () => {
    fc.assert(
      fc.property(talk, (lines) => {
        for (const { words, reply, after } of play(lines)) {
          if (!/\bAt [a-z ]+ in [a-z ]+ millilitres?, /u.test(reply)) continue;
          const drugs = Object.keys(after.care.strengths);
          expect(words === "affirm" ? drugs.length > 0 : drugs.includes(words)).toBe(true);
        }
      }),
    );
  });
});
