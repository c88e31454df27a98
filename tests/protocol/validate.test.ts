import { describe, expect, it } from "vitest";
import { defaultProtocol } from "../../src/protocol/defaultProtocol.ts";
import json from "../../src/protocol/defaultProtocol.json" with { type: "json" };
import { showProtocolError } from "../../src/protocol/protocolError.ts";
import { validateProtocol } from "../../src/protocol/validate.ts";
import { minimalProtocol } from "./fixtures/minimalProtocol.ts";
import { pathOf, placesOf, type Keys } from "./fixtures/places.ts";
import { keysOf, withValue } from "./fixtures/withValue.ts";

const sentencesFor = (file: unknown): readonly string[] => {
  const result = validateProtocol(file);
  return result.ok ? [] : result.error.map(showProtocolError);
};
const pathsFor = (file: unknown): readonly string[] => {
  const result = validateProtocol(file);
  return result.ok ? [] : result.error.map((error) => error.path);
};

it("accepts the built-in file and hands it on unchanged", () => {
  expect(validateProtocol(json)).toEqual({ ok: true, value: json });
  expect(defaultProtocol).toEqual(json);
});

it("accepts the small file of the tests", () => expect(sentencesFor(minimalProtocol())).toEqual([]));

// What is broken, its broken value, and the whole of what is said of it.
const SHAPE: readonly [string, unknown, readonly string[]][] = [
  ["targets.spo2Pct.target.value", undefined, ["targets.spo2Pct.target.value: is missing"]],
  ["targets.spo2Pct.target.value", "90", ['targets.spo2Pct.target.value: must be a number, not the text "90"']],
  ["targets.spo2Pct.target.value", null, ["targets.spo2Pct.target.value: must be a number, not null"]],
  ["targets.spo2Pct.target.value", [], ["targets.spo2Pct.target.value: must be a number, not a list"]],
  ["targets.spo2Pct.target.value", {}, ["targets.spo2Pct.target.value: must be a number, not a group of entries"]],
  ["targets.spo2Pct.target.value", Number.NaN, ["targets.spo2Pct.target.value: must be a number, not NaN"]],
  ["pressures.apartMmHg.value", Infinity, ["pressures.apartMmHg.value: must be a finite number, not Infinity"]],
  ["timers.foo", 1, ["timers.foo: is not a known entry"]],
  ["timers.re call", 1, ['timers["re call"]: is not a known entry']],
  ["constructor", 1, ["constructor: is not a known entry"]],
  ["schema", 2, ["schema: must be 3, not 2"]],
  ["owner", " ", ["owner: must not be empty"]],
  ["owner", 7, ["owner: must be a text, not 7"]],
  ["date", "25 November", ["date: must be a date, year-month-day"]],
  ["status", "draft", ['status: must be one of "example", "approved", not the text "draft"']],
  ["caution", undefined, ["caution: is missing"]],
  ["groups", {}, ["groups: must be a list, not a group of entries"]],
  ["targets", [], ["targets: must be a group of entries, not a list"]],
  ["targets", "x".repeat(60), [`targets: must be a group of entries, not the text "${"x".repeat(40)}…"`]],
  ["groups[0].steps[0].killer", "yes", ['groups[0].steps[0].killer: must be true or false, not the text "yes"']],
  ["groups[0].steps[0].satisfiedBy", {}, ["groups[0].steps[0].satisfiedBy.kind: is missing"]],
  ["groups[0].steps[1].satisfiedBy.codes", [], ["groups[0].steps[1].satisfiedBy.codes: names no vital"]],
  [
    "groups[0].steps[1].satisfiedBy.when",
    "later",
    ['groups[0].steps[1].satisfiedBy.when: must be one of "any", "beforeParalysis", "sinceTube", not the text "later"'],
  ],
  ["groups[1].steps[2].satisfiedBy.drugClasses", [], ["groups[1].steps[2].satisfiedBy.drugClasses: names no class"]],
  ["timers.watch.stretchBy.value", 1, ["timers.watch.stretchBy.value: must be above 1, not 1"]],
  ["alerts[0].bands", [], ["alerts[0].bands: needs a band"]],
  ["alerts[0].clearBy", -1, ["alerts[0].clearBy: must not be negative, not -1"]],
  ["alerts[0].clearReadings", 0, ["alerts[0].clearReadings: must be 1 or more, not 0"]],
  ["alerts[0].clearReadings", 1.5, ["alerts[0].clearReadings: must be a whole number, not 1.5"]],
  ["drugs[0].doses[0].low", 0, ["drugs[0].doses[0].low: must be above 0, not 0"]],
  [
    "drugs[0].doses[0].unit",
    "grains",
    ['drugs[0].doses[0].unit: must be one of "mcg", "mg", "g", "units", "mmol", "mL", not the text "grains"'],
  ],
  [
    "targets.populations[0].sbpMmHg.target.value",
    "110",
    ['targets.populations[0].sbpMmHg.target.value: must be a number, or base and perYear, not the text "110"'],
  ],
  [
    "targets.populations[0].sbpMmHg.target.value",
    { base: "70" },
    [
      'targets.populations[0].sbpMmHg.target.value.base: must be a number, not the text "70"',
      "targets.populations[0].sbpMmHg.target.value.perYear: is missing",
    ],
  ],
  ["confirm.lactate", {}, ["confirm.lactate: is not a known entry"]],
];

describe("says in a sentence what is wrong with the shape, and where", () => {
  it.each(SHAPE)("%s = %j", (path, value, said) => {
    expect(sentencesFor(withValue<unknown>(minimalProtocol(), path, value))).toEqual(said);
  });
});

it.each([[null], [[]], ["{}"], [7], [undefined]])("refuses %j as no protocol file", (file) =>
  expect(sentencesFor(file)).toEqual(["The file is not a protocol file: it must be a group of named entries"]),
);

it("names every entry that an empty file lacks", () => {
  expect(pathsFor({})).toEqual(Object.keys(minimalProtocol()));
});

describe("reports every fault, in the order of the file", () => {
  it("of shape", () => {
    let file: unknown = minimalProtocol();
    for (const [path, value] of [
      ["timers.zulu", 1],
      ["timers.alpha", 1],
      ["timers.standByS.value", "x"],
      ["name", ""],
      ["drugs[1].id", 4],
      ["drugs[0].caution", 4],
    ] as const)
      file = withValue(file, path, value);
    expect(pathsFor(file)).toEqual([
      "name",
      "drugs[0].caution",
      "drugs[1].id",
      "timers.standByS.value",
      "timers.zulu",
      "timers.alpha",
    ]);
  });

  it("of numbers, whatever order the groups stand in", () => {
    let file: unknown = minimalProtocol();
    for (const [path, value] of [
      ["timers.reannounceS.medium.value", 10],
      ["drugs[0].doses[0].cap", 0.1],
      ["assumedIcpMmHg.value.high", 130],
      ["drugs[0].doses[0].usual", 0.2],
    ] as const)
      file = withValue(file, path, value);
    const inOrder = [
      "assumedIcpMmHg.value.high",
      "drugs[0].doses[0].usual",
      "drugs[0].doses[0].cap",
      "timers.reannounceS.medium.value",
    ];
    expect(pathsFor(file)).toEqual(inOrder);
    const turned = Object.fromEntries(Object.entries(file as object).reverse());
    expect(pathsFor(turned)).toEqual([inOrder[3], inOrder[1], inOrder[2], inOrder[0]]);
  });
});

describe("no path is wrong", () => {
  const file = minimalProtocol();
  const places = placesOf(file);
  /** Where a fault may be named: at the place itself or inside what stands there now. */
  const allAt = (broken: unknown, at: Keys): void => {
    const paths = pathsFor(broken);
    expect(paths.length).toBeGreaterThan(0);
    for (const path of paths) expect(keysOf(path).slice(0, at.length)).toEqual(at);
  };

  it("of a value of the wrong kind, anywhere in the file", () => {
    for (const { at, value } of places) {
      const wrong = typeof value === "object" ? "seven" : { wrong: true };
      // A number by age may be a group of entries: what is wrong in it is named inside.
      allAt(withValue<unknown>(file, at, wrong), at);
    }
  });

  it("of an unknown entry, in any group of the file", () => {
    for (const { at, value } of places) {
      if (typeof value !== "object" || value === null || Array.isArray(value)) continue;
      expect(sentencesFor(withValue<unknown>(file, [...at, "unheardOf"], 1))).toEqual([
        `${pathOf([...at, "unheardOf"])}: is not a known entry`,
      ]);
    }
  });

  it("of an entry that is taken out: it is named as missing, or it was optional", () => {
    const OPTIONAL =
      /\.(choice|weight|fromKg|belowKg|shock|minimum|cap|overS|repeatAfterS|mostDoses|regions|onsetS|durationS|satisfiedBy|carries|jump|sbpRangeMmHg)$|^confirm\.\w+$/;
    for (const { at } of places) {
      if (typeof at.at(-1) === "number") continue;
      const path = pathOf(at);
      const said = sentencesFor(withValue<unknown>(file, at, undefined));
      if (path.endsWith(".weight")) expect(said).toEqual([`${path}: is missing: the amount is for each kilogram`]);
      else expect(said).toEqual(OPTIONAL.test(path) ? [] : [`${path}: is missing`]);
    }
  });
});
