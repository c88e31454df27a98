import { describe, expect, it } from "vitest";
import type { Source } from "../../src/core/derivation.ts";
import { defaultProtocol } from "../../src/protocol/defaultProtocol.ts";
import type { Protocol } from "../../src/protocol/protocol.ts";
import { showProtocolError } from "../../src/protocol/protocolError.ts";
import { upgradeProtocol } from "../../src/protocol/upgrade.ts";
import { validateProtocol } from "../../src/protocol/validate.ts";
import fileOne from "./fixtures/protocol-v1.json" with { type: "json" };
import { minimalProtocol } from "./fixtures/minimalProtocol.ts";
import { withValue } from "./fixtures/withValue.ts";

function upgraded(json: unknown): Protocol {
  const result = upgradeProtocol(json, defaultProtocol);
  if (!result.ok) throw new Error(result.error.map(showProtocolError).join("\n"));
  expect(result.value.from).toBe(1);
  const valid = validateProtocol(result.value.json);
  if (!valid.ok) throw new Error(valid.error.map(showProtocolError).join("\n"));
  return valid.value;
}

const refusals = (json: unknown): readonly string[] => {
  const result = upgradeProtocol(json, defaultProtocol);
  return result.ok ? [] : result.error.map(showProtocolError);
};

describe("a file of schema 1", () => {
  const file = upgraded(fileOne);

  it("keeps its name, version, owner and date, and is an example that says it was completed", () => {
    const { name, version, owner, date } = fileOne;
    expect(file).toMatchObject({ schema: 3, name, version, owner, date, status: "example" });
    expect(file.caution.startsWith(`${fileOne.caution} Upgraded from schema 1: `)).toBe(true);
    expect(file.caution).toContain("completed from the bundled example");
  });

  it("has its targets and critical limits for every adult, and for no child", () => {
    for (const [i, population] of file.targets.populations.entries()) {
      if (population.kind === "child") expect(population).toEqual(defaultProtocol.targets.populations[i]);
      else
        expect([
          population.sbpMmHg.target.value,
          population.sbpMmHg.critical.value,
          population.mapMmHg.target.value,
          population.mapMmHg.critical.value,
          population.cppMmHg.target.value,
          population.cppMmHg.critical.value,
        ]).toEqual([115, 104, 85, 76, 60, 50]);
    }
    expect(file.targets.populations.map((p) => p.kind)).toEqual(expect.arrayContaining(["adult", "child"]));
    expect(file.targets.spo2Pct.target.value).toBe(95);
    expect(file.targets.spo2Pct.critical.value).toBe(90);
  });

  it("warns at the numbers at which it warned", () => {
    const own = file.alerts.slice(0, fileOne.alerts.length);
    expect(own.map((a) => [a.code, a.bands.map((b) => [b.at, b.inclusive, b.priority])])).toEqual([
      [
        "cpp",
        [
          ["target", false, "medium"],
          ["critical", false, "high"],
        ],
      ],
      [
        "map",
        [
          ["target", false, "medium"],
          ["critical", false, "high"],
        ],
      ],
      [
        "sbp",
        [
          ["target", false, "medium"],
          ["critical", false, "high"],
        ],
      ],
      ["spo2", [["critical", true, "high"]]],
    ]);
    expect(own.map((a) => [a.id, a.clearBy, a.clearReadings])).toEqual(
      fileOne.alerts.map((a) => [a.id, a.clearBy, a.clearReadings]),
    );
  });

  it("reads its own steps, before those after the tube that it did not have", () => {
    const prepare = file.groups.filter((g) => g.phase === "prepare");
    expect(prepare.map((g) => [g.id, g.steps.map((s) => s.id)])).toEqual(
      fileOne.groups.map((g) => [g.id, g.steps.map((s) => s.id)]),
    );
    expect(file.groups.slice(prepare.length)).toEqual(defaultProtocol.groups.filter((g) => g.phase !== "prepare"));
  });

  it("goes by way of schema 2: its steps have names, and say when what they wait for was recorded", () => {
    const steps = file.groups.filter((g) => g.phase === "prepare").flatMap((g) => g.steps);
    expect(steps.map(({ name }) => name)).toEqual([
      "bleeding",
      "mean pressure",
      "fluid",
      "cuff cycle",
      "neuro exam",
      "induction drug",
      "paralytic",
      "push dose",
      "pressor infusion",
      "sedation",
      "osmotic drug",
    ]);
    expect(steps.flatMap(({ satisfiedBy: by }) => (by?.kind === "recorded" ? [by.when] : []))).toContain("any");
    expect(file.doses).toEqual(defaultProtocol.doses);
    expect(file.targets.herniation).toEqual(defaultProtocol.targets.herniation);
  });

  it("keeps its timers, its rules of asking back and its assumed ICP, and takes what it lacks from the example", () => {
    expect(file.timers.standByS.value).toBe(45);
    expect(file.timers.sedationDueS).toEqual(defaultProtocol.timers.sedationDueS);
    expect(Object.keys(file.confirm)).toEqual(["sbp", "icp"]);
    expect(file.assumedIcpMmHg.value).toEqual({ low: 18, high: 28 });
    expect(file.pressures.transducerLevel).toEqual(defaultProtocol.pressures.transducerLevel);
    expect(file.drugs).toEqual(defaultProtocol.drugs);
  });

  it("is taken from the example alone where it never said a critical limit", () => {
    const noAlerts = upgraded(withValue<unknown>(fileOne, "alerts", []));
    const adults = noAlerts.targets.populations.filter((p) => p.kind === "adult");
    const examples = defaultProtocol.targets.populations.filter((p) => p.kind === "adult");
    expect(adults.map((p) => p.cppMmHg.critical)).toEqual(examples.map((p) => p.cppMmHg.critical));
    expect(noAlerts.targets.spo2Pct.critical).toEqual(defaultProtocol.targets.spo2Pct.critical);
  });
});

const SOURCES: readonly [string, Source["kind"]][] = [
  ["common practice, no source", "common-practice"],
  ["this project's choice, no source", "common-practice"],
  ["Somebody 2001, from memory, verify", "memory"],
  ["Somebody 2001, J Test 1:2-3", "guideline"],
];
it.each(SOURCES)("takes the source %s for %s, and none for read", (text, kind) => {
  const file = upgraded(withValue<unknown>(fileOne, "targets.spo2Pct.source", text));
  expect(file.targets.spo2Pct.target.source).toEqual({ reference: text, kind, primaryRead: false });
});

describe("refuses", () => {
  it.each([
    [undefined, "schema: is missing: it says how to read the rest; the newest is 3"],
    ["2", 'schema: must be a whole number from 1 to 3, not "2"'],
    ["3", 'schema: must be a whole number from 1 to 3, not "3"'],
    [0, "schema: must be a whole number from 1 to 3, not 0"],
    [1.5, "schema: must be a whole number from 1 to 3, not 1.5"],
    [null, "schema: must be a whole number from 1 to 3, not null"],
    [4, "schema: 4 is newer than 3, the newest that this version of the app can read"],
  ])("schema %j", (schema, said) => {
    expect(refusals(withValue<unknown>(minimalProtocol(), "schema", schema))).toEqual([said]);
  });

  const ALERT = "alerts[1].bands";
  const CANNOT = "cannot be kept: schema 2 has one band under the target and one under a critical limit";
  it.each([
    [
      "a wrong shape, by the paths of the file",
      "targets.mapMmHg.value",
      "85",
      'targets.mapMmHg.value: must be a number, not the text "85"',
    ],
    ["an entry that schema 1 did not know", "drugs", [], "drugs: is not a known entry"],
    [
      "a band over the target",
      "alerts[3].bands[0].below",
      96,
      "alerts[3].bands[0].below: 96 is above the target of 95",
    ],
  ])("%s", (_what, path, value, said) => {
    expect(refusals(withValue<unknown>(fileOne, path, value))).toEqual([said]);
  });

  it("a first band that is neither at the target nor alone", () => {
    expect(refusals(withValue<unknown>(fileOne, `${ALERT}[0].below`, 84))).toEqual([`${ALERT}[1].below: 76 ${CANNOT}`]);
  });

  it("a third band", () => {
    const bands = [...(fileOne.alerts[1]?.bands ?? []), { below: 60, inclusive: false, priority: "high", source: "x" }];
    expect(refusals(withValue<unknown>(fileOne, ALERT, bands))).toEqual([`${ALERT}[2].below: 60 ${CANNOT}`]);
  });
});

it("hands on what is of the newest schema, or no protocol at all, as it came", () => {
  const file = minimalProtocol();
  expect(upgradeProtocol(file, defaultProtocol)).toEqual({ ok: true, value: { json: file } });
  for (const json of [null, 7, "x", []])
    expect(upgradeProtocol(json, defaultProtocol)).toEqual({ ok: true, value: { json } });
});
