import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { freshState } from "../../src/app/context.ts";
import type { Utterance } from "../../src/app/ports.ts";
import { takeUtterance } from "../../src/app/takeTurn.ts";
import { spokenForms } from "../../src/language/numbers/spokenForms.ts";
import { emptyCase } from "../../src/log/caseState.ts";
import type { NewFact, VitalValue } from "../../src/log/facts.ts";
import { testContext } from "./playCase.ts";

const context = testContext();

const words = (n: number, form: number): string => {
  const forms = spokenForms(n, 0);
  return (forms[form % forms.length] ?? []).join(" ");
};
const numbers = (min: number, max: number) => fc.tuple(fc.integer({ min, max }), fc.nat(30));
const again = fc.constantFrom("no", "correction");

/** What is said, and the one value that is meant; everything before the restart word is not. */
type Restart = { readonly said: string; readonly meant: readonly (readonly [string, number])[] };

const named = (name: string, code: string, min: number, max: number): fc.Arbitrary<Restart> =>
  fc
    .tuple(numbers(min, max), again, fc.constantFrom("", name), numbers(min, max))
    .map(([[first, form], no, repeated, [second, other]]) => ({
      said: [name, words(first, form), no, repeated, words(second, other)].filter((w) => w !== "").join(" "),
      meant: [[code, second]],
    }));

const pressure: fc.Arbitrary<Restart> = fc
  .tuple(
    numbers(100, 250),
    fc.option(numbers(30, 90), { nil: undefined }),
    fc.boolean(),
    again,
    numbers(100, 250),
    numbers(30, 90),
  )
  .map(([[sbp, form], dbp, cut, no, [newSbp, a], [newDbp, b]]) => ({
    said: [
      words(sbp, form),
      ...(dbp === undefined ? (cut ? ["over"] : []) : ["over", words(...dbp)]),
      no,
      words(newSbp, a),
      "over",
      words(newDbp, b),
    ].join(" "),
    meant: [
      ["sbp", newSbp],
      ["dbp", newDbp],
    ],
  }));

const restart = fc.oneof(named("heart rate", "hr", 40, 200), named("sats", "spo2", 60, 100), pressure);

const heard: Readonly<Record<"typed" | "listener" | "browser", (said: string) => Utterance>> = {
  typed: (said) => ({ by: "typed", candidates: [{ words: said, score: 0 }], endedAtMs: 0 }),
  browser: (said) => ({ by: "browser", candidates: [{ words: said, score: 0 }], endedAtMs: 0 }),
  listener: (said) => ({
    by: "listener",
    candidates: [{ words: said, score: 0 }],
    free: { score: 0, phones: 30 },
    endedAtMs: 0,
  }),
};

const turnOf = (utterance: Utterance) => takeUtterance(context, freshState(emptyCase), utterance, 0);
const pairs = (values: readonly Pick<VitalValue, "code" | "value">[]) => values.map((v) => [v.code, v.value]);
const recorded = (facts: readonly NewFact[]) => pairs(facts.flatMap((f) => (f.type === "vital.recorded" ? [f] : [])));

describe("a value broken off and said anew", () => {
  it("typed, only the new one is recorded, or asked about", () => {
    fc.assert(
      fc.property(restart, ({ said, meant }) => {
        const { facts, answer } = turnOf(heard.typed(said));
        expect([said, answer?.outcome]).toEqual([said, expect.stringMatching(/recorded|asked/)]);
        if (answer?.outcome === "recorded") expect(recorded(facts)).toEqual(meant);
        else expect(recorded(facts)).toEqual([]);
      }),
    );
  });

  it.each(["listener", "browser"] as const)(
    "spoken (%s), nothing is recorded at once, and what is proposed is the new one",
    (by) => {
      fc.assert(
        fc.property(restart, ({ said, meant }) => {
          const { facts, state } = turnOf(heard[by](said));
          expect([said, recorded(facts)]).toEqual([said, []]);
          const [question] = state.log.questions;
          expect(question).toBeDefined();
          const proposed = question?.candidates[0]?.statement.vitals ?? [];
          // Where it is impossible as said, a sound-alike of it is proposed, and never anything of what was broken off.
          if (question?.reason === "acoustic") expect(pairs(proposed)).toEqual(meant);
        }),
      );
    },
  );
});
