import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { examplePhrases } from "../../../src/language/understand/examplePhrases.ts";
import { understand, type Understanding } from "../../../src/language/understand/understand.ts";
import { normalise } from "../../../src/language/normalise/normalise.ts";
import { spokenForms } from "../../../src/language/numbers/spokenForms.ts";
import { vocabulary } from "../../../src/language/jsgf/vocabulary.ts";
import { compiled } from "../../phrases/caseGrammars.ts";

const open = compiled("case", "open");
const asked = compiled("case", "asked");
const hear = (said: string): Understanding => understand(open, said.split(" "));

describe("an understood value", () => {
  it("keeps the words that said the number, because their form decides what is asked back", () => {
    expect(hear("i c p fifteen")).toEqual({
      kind: "one",
      intent: {
        kind: "vitals",
        correction: false,
        items: [{ kind: "vital", code: "icp", value: 15, words: "fifteen" }],
        doubtful: false,
      },
    });
    expect(hear("i c p one five")).toMatchObject({ intent: { items: [{ value: 15, words: "one five" }] } });
  });

  it("said two ways counts once, with the words of its digits", () => {
    expect(hear("i c p fifteen one five")).toMatchObject({ intent: { items: [{ value: 15, words: "one five" }] } });
  });

  it.each([
    ["i c p fifteen five zero", 15, 50],
    ["weight thirteen three zero kilos", 13, 30],
    ["sats ninety nine one", 90, 91],
    ["map one thirteen one three zero", 113, 130],
  ])("said two ways that disagree is one or the other: %s", (said, whole, digits) => {
    const items = [[{ value: whole }], [{ value: digits }]].map((values) => ({ items: values }));
    expect(hear(said)).toMatchObject({ kind: "many", intents: items, halvesDisagree: true });
  });

  it("said two ways that disagree is nothing where other words are meant", () => {
    expect(hear("rate ninety one ten over sixty")).toMatchObject({ kind: "one" });
  });

  it("has no unit when none was said", () => {
    expect(hear("end tidal five")).toEqual({
      kind: "one",
      intent: {
        kind: "vitals",
        correction: false,
        items: [{ kind: "vital", code: "etco2", value: 5, words: "five" }],
        doubtful: false,
      },
    });
  });
});

describe("readings outside the entry limits", () => {
  it("fall away when another reading is inside", () => {
    expect(hear("rate ninety one ten over sixty").kind).toBe("one");
  });

  it("stay when no reading is inside, so that they can be asked about", () => {
    expect(hear("pulse twelve")).toMatchObject({ kind: "one", intent: { items: [{ code: "hr", value: 12 }] } });
    expect(hear("twelve over sixty")).toMatchObject({ kind: "one", intent: { items: [{ value: 12 }, { value: 60 }] } });
  });
});

describe("for every value and every way to say it", () => {
  const SLOTS = [
    { lead: "systolic", code: "sbp", min: 30, max: 300 },
    { lead: "diastolic", code: "dbp", min: 10, max: 200 },
    { lead: "map", code: "map", min: 20, max: 250 },
    { lead: "heart rate", code: "hr", min: 20, max: 260 },
    { lead: "breaths", code: "rr", min: 2, max: 80 },
    { lead: "sats", code: "spo2", min: 40, max: 100 },
    { lead: "i c p", code: "icp", min: 0, max: 100 },
    { lead: "weight", code: "weight", min: 2, max: 300 },
    { lead: "height", code: "height", min: 40, max: 230 },
    { lead: "age", code: "age", min: 0, max: 110 },
  ] as const;

  it.each(SLOTS)("$lead", ({ lead, code, min, max }) => {
    for (let value = min; value <= max; value++) {
      for (const form of spokenForms(value, 0)) {
        const meaning = understand(open, [...lead.split(" "), ...form]);
        expect(meaning, `${lead} ${form.join(" ")}`).toMatchObject({
          kind: "one",
          intent: { kind: "vitals", items: [{ code, value }] },
        });
      }
    }
  });

  it("pressures, several values in one breath", () => {
    const said = (value: number) => fc.constantFrom(...spokenForms(value, 0));
    const pressure = fc
      .integer({ min: 60, max: 250 })
      .chain((sbp) =>
        fc
          .integer({ min: 30, max: Math.min(200, sbp - 20) })
          .chain((dbp) => fc.record({ sbp: fc.constant(sbp), dbp: fc.constant(dbp), s: said(sbp), d: said(dbp) })),
      );
    const saturation = fc.integer({ min: 50, max: 100 }).chain((v) => fc.record({ v: fc.constant(v), w: said(v) }));
    fc.assert(
      fc.property(pressure, saturation, (p, sats) => {
        const words = ["pressure", ...p.s, "over", ...p.d, "sats", ...sats.w];
        expect(understand(open, words)).toMatchObject({
          kind: "one",
          intent: {
            items: [
              { code: "sbp", value: p.sbp },
              { code: "dbp", value: p.dbp },
              { code: "spo2", value: sats.v },
            ],
          },
        });
      }),
    );
  });
});

describe("whatever is said", () => {
  const words = [...new Set(vocabulary(asked).map(({ word }) => word))];

  it("gives an answer, the same one each time, and never several equal ones", () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...words), { maxLength: 12 }), (said) => {
        const meaning = understand(asked, said);
        expect(understand(asked, said)).toEqual(meaning);
        if (meaning.kind === "many") expect(meaning.intents.length).toBeGreaterThan(1);
      }),
      { numRuns: 1000 },
    );
  });

  it("is understood while a question waits if it is without one", () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...words), { maxLength: 3 }), (said) => {
        const meaning = understand(open, said);
        if (meaning.kind !== "none") expect(understand(asked, said)).toEqual(meaning);
      }),
      { numRuns: 1000 },
    );
  });
});

describe.each(["open", "asked", "openAfter", "askedAfter"] as const)("example phrases, %s", (state) => {
  const grammar = compiled("case", state);
  it.each(examplePhrases(state))("%s", (phrase) => {
    expect(understand(grammar, normalise(phrase)).kind).toBe("one");
  });
});
