import { describe, expect, it } from "vitest";
import { showHandover } from "../../src/app/handover.ts";
import { HandoverCase } from "./handoverCase.ts";

/** Read back. */
const DOSE = "phenylephrine one hundred micrograms given";
const PATIENT = ["thirty four year old man", "one ten over sixty"];

const told = (lines: readonly string[]): HandoverCase => new HandoverCase([...PATIENT, ...lines]);
const unconfirmed = (one: HandoverCase): readonly string[] =>
  one
    .sentences("handover all")
    .flatMap((text) => /not confirmed, not counted: (.*), (?:just now|[\w ,]+ ago)\.$/iu.exec(text)?.[1] ?? []);

type Row = readonly [what: string, said: readonly string[], told: readonly string[]];
const ROWS: readonly Row[] = [
  ["nothing", ["[2:00] sats ninety four"], []],
  ["a dose that nobody affirmed in time", [DOSE, "[4:00] sats ninety four"], ["Phenylephrine one hundred micrograms"]],
  ["a dose that is still asked about", [DOSE], ["Phenylephrine one hundred micrograms"]],
  ["one that was affirmed", [DOSE, "affirm", "[4:00] sats ninety four"], []],
  ["one that was denied", [DOSE, "negative", "[4:00] sats ninety four"], []],
  [
    "one before the same dose that was affirmed: it may be another",
    [DOSE, "[3:00] sats ninety four", DOSE, "affirm", "[4:00] sats ninety five"],
    ["Phenylephrine one hundred micrograms"],
  ],
  [
    "two of them",
    [DOSE, "[3:00] sats ninety four", "ketamine sixty milligrams given", "[5:00] sats ninety five"],
    ["Phenylephrine one hundred micrograms", "Ketamine sixty, six zero, milligrams"],
  ],
  ["a dose without its amount", ["ketamine given", "[4:00] sats ninety four"], ["Ketamine, amount not known"]],
  [
    "an infusion that nobody affirmed",
    [
      "noradrenaline four milligrams in two fifty",
      "affirm",
      "start noradrenaline at eight mils per hour",
      "[4:00] sats ninety four",
    ],
    ["Noradrenaline two point one three micrograms per minute"],
  ],
  [
    "a fluid",
    ["saline five hundred given", "[4:00] sats ninety four"],
    ["Isotonic crystalloid five hundred millilitres"],
  ],
  ["a value in doubt", ["icp fifteen", "[4:00] sats ninety four"], ["A value of ICP"]],
  ["a value in doubt that was said again", ["icp fifteen", "[3:00] icp twenty two", "[4:00] sats ninety four"], []],
];

describe("what nobody affirmed", () => {
  it.each(ROWS)("is handed over: %s", (_what, said, expected) => {
    expect(unconfirmed(told(said)).map((text) => text.charAt(0).toUpperCase() + text.slice(1))).toEqual(expected);
  });

  it("is in no total, and in none of what was given", () => {
    const one = told([DOSE, "affirm", "[3:00] sats ninety four", DOSE, "[6:00] sats ninety four"]);
    const given = one.sentences("handover all").filter((text) => /phenylephrine/iu.test(text));
    expect(given).toHaveLength(2);
    expect(given.filter((text) => /not confirmed/iu.test(text))).toHaveLength(1);
    expect(given.find((text) => !/not confirmed/iu.test(text))).toMatch(/one hundred/u);
    expect(given.join(" ")).not.toMatch(/two hundred|two doses/u);
  });

  it("stands on the screen too, marked", () => {
    const one = told([DOSE, "[4:00] sats ninety four"]);
    const rows = showHandover(one.context.protocol, one.state.log, one.nowMs);
    expect(rows.map(({ text }) => text).join(" ")).toContain(
      "Not confirmed, not counted: phenylephrine 100 micrograms, 4 min ago.",
    );
  });

  it("is told in the handover of thirty seconds already, before what was given", () => {
    const one = told([DOSE, "[4:00] sats ninety four", "rocuronium ninety milligrams given", "affirm"]);
    expect(one.sentences("handover").join(" ")).toMatch(/not confirmed, not counted: phenylephrine/iu);
  });
});
