import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { VITALS, type VitalCode } from "../../../src/core/vitals.ts";
import { matchWords } from "../../../src/language/jsgf/matchWords.ts";
import { toWordGraph } from "../../../src/language/jsgf/wordGraph.ts";
import { spokenForms } from "../../../src/language/numbers/spokenForms.ts";
import { wordsToNumber } from "../../../src/language/numbers/wordsToNumber.ts";
import { saidNumber } from "../../../src/language/understand/saidNumber.ts";
import { compileRule, sentencesOf, SLOTS, valuesOf } from "./slots.ts";

describe.each(SLOTS)("slot <$rule>", (slot) => {
  const said = new Map<number, string[]>();
  const unreadable: string[] = [];
  for (const words of sentencesOf(slot.rule)) {
    const value = wordsToNumber(words);
    if (value.ok) said.set(value.value, [...(said.get(value.value) ?? []), words.join(" ")]);
    else unreadable.push(words.join(" "));
  }
  // "point zero" can be said where "point five" can; nobody means it, and the entry limits refuse it.
  if (slot.from > 0) said.delete(0);

  it("holds no words that cannot be read", () => {
    expect(unreadable).toEqual([]);
  });

  it("admits exactly its values", () => {
    expect([...said.keys()].sort((a, b) => a - b)).toEqual(valuesOf(slot));
  });

  it("admits every spoken form of every value, and no other form", () => {
    for (const value of valuesOf(slot)) {
      const forms = spokenForms(value, slot.decimals).map((form) => form.join(" "));
      expect([...(said.get(value) ?? [])].sort(), String(value)).toEqual([...forms].sort());
    }
  });
});

describe("slots against the entry limits", () => {
  const RULES: Readonly<Record<VitalCode, string>> = {
    sbp: "nSbp",
    dbp: "nDbp",
    map: "nMap",
    hr: "nHr",
    rr: "nRr",
    spo2: "nSpo2",
    etco2: "nEtco2",
    icp: "nIcp",
    temp: "nTemp",
    glucose: "nGlucose",
    gcsEye: "nGcsEye",
    gcsVerbal: "nGcsVerbal",
    gcsMotor: "nGcsMotor",
    pupilLeft: "nPupil",
    pupilRight: "nPupil",
    weight: "nWeight",
    height: "nHeight",
    age: "nAge",
  };

  it.each(Object.entries(RULES))("%s can say every value within its limits (<%s>)", (code, rule) => {
    const { limits } = VITALS[code as VitalCode];
    const slot = SLOTS.find((s) => s.rule === rule);
    expect(slot?.from).toBeLessThanOrEqual(limits.min);
    expect(slot?.to).toBeGreaterThanOrEqual(limits.max);
  });
});

describe("<nTwoWays>", () => {
  const grammar = compileRule("nTwoWays");
  /** The values of all readings; a reading whose halves differ has none. */
  const valuesOfBoth = (words: readonly string[]): ReadonlySet<number> => {
    const all = { tag: "number", words, from: 0, to: words.length };
    const read = matchWords(grammar, words).parses.map((parse) => saidNumber(all, parse, "both")?.value);
    return new Set(read.filter((value) => value !== undefined));
  };

  it("reads each value from 10 to 299 in exactly one way", () => {
    for (let value = 10; value < 300; value++) {
      const forms = spokenForms(value, 0);
      const digits = forms.filter((form) => form.length === String(value).length && wordsAreDigits(form));
      const wholes = forms.filter((form) => !wordsAreDigits(form));
      const whole = wholes[value % wholes.length] ?? [];
      const second = digits[value % digits.length] ?? [];
      expect(valuesOfBoth([...whole, ...second]), `${whole.join(" ")}, ${second.join(" ")}`).toEqual(new Set([value]));
    }
  });

  /** Numbers that both halves say, wherever the words are cut: "two thirty two three zero" is 230 twice, not 232 and 30. */
  const agreed = (words: readonly string[]): ReadonlySet<number> => {
    const halves = words.map((_, cut) => [wordsToNumber(words.slice(0, cut)), words.slice(cut)] as const);
    return new Set(
      halves.flatMap(([whole, second]) => {
        const digits = wordsToNumber(second);
        return whole.ok && digits.ok && wordsAreDigits(second) && whole.value === digits.value ? [whole.value] : [];
      }),
    );
  };

  it("refuses halves that differ, unless the words agree when cut elsewhere", () => {
    const number = fc.integer({ min: 10, max: 299 });
    fc.assert(
      fc.property(number, number, (a, b) => {
        const words = [...(spokenForms(a, 0)[0] ?? []), ...(spokenForms(b, 0).at(-1) ?? [])];
        expect(valuesOfBoth(words)).toEqual(a === b ? new Set([a]) : agreed(words));
      }),
      { numRuns: 500, examples: [[232, 30]] },
    );
  });
});

const DIGIT_WORDS = new Set("zero oh one two three four five six seven eight nine niner".split(" "));
const wordsAreDigits = (words: readonly string[]): boolean => words.every((w) => DIGIT_WORDS.has(w));

describe("<number>, listened to alone", () => {
  const grammar = compileRule("number");
  const graph = toWordGraph(grammar);
  const next = new Map<number, { to: number; word: string }[]>();
  for (const arc of graph.arcs) next.set(arc.from, [...(next.get(arc.from) ?? []), arc]);
  const accepts = (words: readonly string[]): boolean => {
    let state: number | undefined = graph.start;
    for (const word of words) state = next.get(state ?? -1)?.find((arc) => arc.word === word)?.to;
    return state !== undefined && graph.finals.includes(state);
  };

  it("accepts every spoken form of 0 to 999", () => {
    for (let value = 0; value < 1000; value++)
      for (const form of spokenForms(value, 0)) expect(accepts(form), form.join(" ")).toBe(true);
  });

  it("accepts the spoken forms of decimals", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 99_999 }), (hundredths) => {
        for (const form of spokenForms(hundredths / 100, 2)) expect(accepts(form), form.join(" ")).toBe(true);
      }),
    );
  });

  it.each(["one", "oh", "zero zero seven", "one five two one three", "niner oh oh one two three four"])(
    "accepts the digit string %j",
    (said) => expect(accepts(said.split(" "))).toBe(true),
  );

  it.each([
    "one thousand two fifty",
    "a thousand",
    "twelve hundred",
    "fifteen thousand and five",
    "two thousand two oh five",
  ])("accepts %j", (said) => expect(accepts(said.split(" "))).toBe(true));

  it.each([
    "one two three four five six seven eight",
    "twenty ten",
    "hundred",
    "point",
    "one twenty eighty",
    "and five",
  ])("does not accept %j", (said) => expect(accepts(said.split(" "))).toBe(false));

  it("holds no words that cannot be read: random walks through it", () => {
    fc.assert(
      fc.property(fc.array(fc.nat(), { minLength: 12, maxLength: 12 }), (choices) => {
        const words: string[] = [];
        let state = graph.start;
        for (const choice of choices) {
          const arcs = next.get(state) ?? [];
          if (arcs.length === 0 || (graph.finals.includes(state) && choice % 5 === 0)) break;
          const arc = arcs[choice % arcs.length];
          if (arc === undefined) break;
          words.push(arc.word);
          state = arc.to;
        }
        fc.pre(graph.finals.includes(state));
        expect(wordsToNumber(words), words.join(" ")).toMatchObject({ ok: true });
      }),
      { numRuns: 3000 },
    );
  });
});
