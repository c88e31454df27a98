import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { defaultProtocol } from "../../../src/protocol/defaultProtocol.ts";
import { fullCase, HEARD, MARK, PrintedCase, rowsWith, textOf } from "./printedCase.ts";

const html = fullCase().html();
const text = textOf(html);
/** The one row that holds this text. */
const row = (of: string, holds: string): readonly string[] => {
  const rows = rowsWith(of, holds);
  expect(rows).toHaveLength(1);
  return rows[0]!;
};

describe("the head", () => {
  it.each([
    ["the label", "record of case kilo four seven"],
    ["the cautions of the protocol", defaultProtocol.caution],
    ["name and version", `${defaultProtocol.name}, version ${defaultProtocol.version}`],
    ["the standing", "Example protocol, not approved for patients."],
    ["the whole hash", MARK.hash],
    ["day, time and zone of the opening", "15 January 2027, 14:02:00, GMT+01:00"],
    ["who the patient is", "Age 40 years; Head injury; Herniation suspected"],
    [
      "that the clock was set",
      "At 14:43:00: clock of the device set forward by 1 h. The times of this record run on unmoved.",
    ],
  ])("shows %s", (_what, shown) => {
    expect(text).toContain(shown);
  });

  it("has the cautions that the README has", () => {
    const readme = readFileSync(new URL("../../../README.md", import.meta.url), "utf8");
    expect(readme).toContain(`**Cautions.** ${defaultProtocol.caution}`);
  });

  it("marks a rehearsal in title, head, margin, headings, heads of tables and across the page; a case of a patient nowhere", () => {
    const rehearsal = fullCase().html({ rehearsal: true });
    expect(rehearsal.match(/REHEARSAL: no patient/gu)?.length).toBe(6);
    expect(html).not.toContain("REHEARSAL");
  });

  it.each([
    [90, "Age over 89 years"],
    [89, "Age 89 years"],
  ])("prints an age of %d as %s", (ageA, shown) => {
    const c = new PrintedCase();
    c.builder.patient({ ageA });
    expect(textOf(c.html())).toContain(shown);
  });

  it("says that another protocol took over, and sums only the time in which this one counted", () => {
    const c = new PrintedCase();
    const other = { name: "Invented", version: "1", hash: "cd".repeat(32) };
    c.at(60);
    c.builder.say({ map: 70 });
    c.at(120);
    c.builder.say({ map: 70 });
    c.add({ type: "protocol.replaced", protocol: other });
    c.at(180);
    c.builder.say({ map: 70 });
    const under = c.html({ mark: other });
    expect(textOf(under)).toContain(`The case was opened under ${MARK.name}`);
    expect(textOf(under)).toContain("At 14:04:00 another protocol took over: Invented, version 1");
    // One minute of three under the new one, 20 mmHg below 90; the minute before is not judged.
    expect(rowsWith(under, "MAP")[0]?.slice(-3)).toEqual(["at least 1.0", "at least 20.0", "1.0"]);
  });
});

describe("minutes below a target", () => {
  it.each([
    [[70], "at least 0.0"],
    [[70, 95], "0.8"],
    [[95, 70], "at least 0.8"],
  ])("of MAP %j, a minute apart, are %s", (values, below) => {
    const c = new PrintedCase();
    values.forEach((map, i) => {
      c.at(60 * (i + 1));
      c.builder.say({ map });
    });
    expect(rowsWith(c.html(), "MAP")[0]?.at(-3)).toBe(below);
  });
});

describe("what is said of times", () => {
  it("gives the day where it is another, and the offset where it has changed", () => {
    const c = new PrintedCase();
    // The last Sunday of March 2027, 03:30 local time, after the clocks went forward at 02:00.
    c.at(Date.UTC(2027, 2, 28, 1, 30) / 1000 - Date.UTC(2027, 0, 15, 13, 2) / 1000);
    c.builder.say({ hr: 80 });
    const long = c.html();
    expect(row(long, "HR 80")[0]).toBe("28 Mar 03:30:00 GMT+02:00");
    expect(textOf(long)).toContain("Local time changed from GMT+01:00 to GMT+02:00");
  });
});

describe("tables", () => {
  it.each<[string, string, readonly string[]]>([
    ["a bolus with volume and plan", "62 mg", ["14:08:00", "Ketamine", "60 mg", "1.2 mL", "62 mg"]],
    [
      "a struck bolus, struck",
      "40 mg struck 14:08:20",
      ["14:08:10", "Ketamine struck 14:08:20, disregarded", "40 mg struck 14:08:20, disregarded", "–", "–"],
    ],
    [
      "a stretch of an infusion",
      "26.3 mL/h",
      ["14:06:00", "14:13:40", "Noradrenaline", "0.1 micrograms/kg/min", "26.3 mL/h", "–", "7 min 40 s"],
    ],
    [
      "a waiver with its reason",
      "WAIVED: no time",
      ["Bleeding", "Bleeding stopped, pelvis bound if suspected?", "WAIVED: no time", "14:06:00"],
    ],
    [
      "an attempt with its lowest values",
      "tube confirmed",
      ["1", "14:08:00", "1 min", "tube confirmed", "88", "110", "60"],
    ],
    [
      "what was said unasked, and that it was cut off",
      "(cut off)",
      ["14:08:30 (cut off)", "MAP sixty, thirty under ninety."],
    ],
    [
      "an unconfirmed statement, marked",
      "NOT CONFIRMED",
      ["14:07:00", "NOT CONFIRMED, does not count; asked: One five or five zero?", "“icp fifteen”, typed"],
    ],
    [
      "struck values, each struck",
      "SBP 210",
      [
        "14:05:00",
        "SBP 210 mmHg struck 14:05:20, disregarded / DBP 100 mmHg struck 14:05:20, disregarded",
        "“as said”, typed",
      ],
    ],
    [
      "values of one breath in one row",
      "SBP 130",
      ["14:03:00", "SBP 130 mmHg, cuff / DBP 70 mmHg, cuff / SpO2 96 %, cuff", "“as said”, typed"],
    ],
    ["a clock that was set", "Clock of the device", ["14:43:00", "Clock of the device set forward by 1 h", ""]],
  ])("show %s", (_what, holds, cells) => {
    const found = rowsWith(html, holds).filter((cells) => !cells.includes("Airway"));
    expect(found).toContainEqual(cells);
  });

  it("leave what was struck out of the totals", () => {
    expect(rowsWith(html, "Ketamine").filter(([drug]) => drug === "Ketamine")).toEqual([["Ketamine", "1", "60 mg"]]);
  });

  it("strike through what was struck, in the markup", () => {
    expect(html).toContain("<del>SBP 210 mmHg</del>");
  });

  it("show an alert with its worst priority and its end", () => {
    expect(row(html, "MAP under its limit")).toEqual([
      "14:08:30",
      "still stood",
      "MAP under its limit",
      "high",
      "MAP sixty, thirty under ninety.",
      "1",
    ]);
  });

  it("sum minutes and dose below target, and call them least values where time is not known", () => {
    const c = new PrintedCase();
    // Reference rows: worked test 1 of depth and duration under 90, by hand: 133.333 mmHg·min in 11.333 min; the protocol's
    // limit on gaps is 10 min.
    for (const [min, sbp] of [
      [0, 100],
      [4, 80],
      [10, 70],
      [14, 94],
    ] as const) {
      c.at(min * 60);
      c.builder.say({ sbp });
    }
    expect(row(c.html(), "SBP, published floor")).toEqual([
      "SBP, published floor",
      "90",
      "4",
      "2",
      "70 at 14:12:00",
      "11.3",
      "133.3",
      "0.0",
    ]);
    c.at(30 * 60);
    c.builder.say({ sbp: 80 });
    expect(row(c.html(), "SBP, published floor").slice(-3)).toEqual(["at least 11.3", "at least 133.3", "16.0"]);
  });
});

describe("what was heard", () => {
  it.each([
    [
      "markup",
      '</del><script>alert(1)</script><img src=x onerror="alert(1)">',
      "&lt;/del&gt;&lt;script&gt;alert(1)&lt;/script&gt;",
    ],
    ["a style's end", "</style><b>", "&lt;/style&gt;&lt;b&gt;"],
    ["a character that turns the reading direction", "map \u202e09", "map \ufffd09"],
    ["a control character", "map \u000090", "map \ufffd90"],
  ])("stays text: %s", (_what, heard, shown) => {
    const c = new PrintedCase();
    c.add({ type: "fluid.given", fluidId: heard, volumeMl: 250, heard, by: "typed" });
    c.add({ type: "step.answered", stepId: heard, answer: "waived", reason: heard, heard, by: "typed" });
    c.add({ type: "alert.raised", alertId: heard, priority: "low", value: 1 });
    c.add({ type: "speech.started", text: heard, priority: "low" });
    const hostile = c.html({ label: heard });
    expect(hostile).toContain(shown);
    expect(hostile).not.toContain(heard);
    expect(hostile.match(/<style>/gu)?.length).toBe(1);
    expect(hostile).not.toMatch(/<(?:script|img)/u);
  });

  it("is said to be spoken or typed", () => {
    const c = new PrintedCase();
    c.add({ type: "airway.event", event: "bladeIn", ...HEARD });
    expect(row(c.html(), "Blade in")).toEqual(["14:02:00", "Blade in", "“as said”, spoken"]);
  });
});

describe("what could not be saved yet", () => {
  const c = fullCase();
  const { facts } = c.builder;
  const idsOf = (type: string): readonly string[] => facts.filter((f) => f.type === type).map(({ id }) => id);
  const unsavedIds = new Set(
    ["question.asked", "fluid.given", "drug.given", "entry.struck"].flatMap((t) => idsOf(t).slice(-1)),
  );
  const printed = c.html({ unsavedIds });

  it("is marked wherever it is stated, and counted in the head", () => {
    expect(textOf(printed)).toContain(
      `4 of ${facts.length} facts could not be saved on the device yet. What they state is marked NOT SAVED.`,
    );
    const marked = rowsWith(printed, "NOT SAVED").map((cells) => cells.find((cell) => cell.includes("NOT SAVED")));
    expect(marked).toEqual([
      "Ketamine struck 14:08:20, disregarded (NOT SAVED) NOT SAVED",
      "Isotonic crystalloid NOT SAVED",
      "Isotonic crystalloid 250 mL given NOT SAVED",
      "NOT CONFIRMED, does not count; asked: One five or five zero? NOT SAVED",
      "Ketamine 40 mg given struck 14:08:20, disregarded (NOT SAVED) NOT SAVED",
    ]);
  });

  it("is nowhere spoken of where all is saved", () => {
    expect(html).not.toMatch(/not be saved|NOT SAVED/u);
  });
});
