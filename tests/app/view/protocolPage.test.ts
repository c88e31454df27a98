import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { viewProtocol } from "../../../src/app/view/protocolPage.ts";
import { onlyDiffering } from "../../../src/app/view/protocolPageFilter.ts";
import type { PageRow, ProtocolPageView } from "../../../src/app/view/protocolPageTypes.ts";
import { DOSE_UNITS, RATE_UNITS, WEIGHT_SCALARS } from "../../../src/core/doseUnits.ts";
import { SOURCE_KINDS } from "../../../src/core/derivation.ts";
import { defaultProtocol } from "../../../src/protocol/defaultProtocol.ts";
import type { Protocol } from "../../../src/protocol/protocol.ts";
import { holderOf, leavesOf, withEntry, withoutEntry, type Leaf } from "./protocolLeaves.ts";

const MARK = { name: defaultProtocol.name, version: defaultProtocol.version };
const viewOf = (active: Protocol): ProtocolPageView => viewProtocol(active, defaultProtocol, MARK);
const rowsOf = (view: ProtocolPageView): readonly PageRow[] =>
  view.sections.flatMap((section) => section.tables.flatMap((table) => table.rows));
const plain = (text: string): string => text.replaceAll("\u00a0", " ");
const textOf = (view: ProtocolPageView): string =>
  plain(
    JSON.stringify([
      view.sections.map((section) => section.tables.map((table) => [table.title, rowsOf(view).length])),
      rowsOf(view).map(({ label, value, source, choice }) => [label, value, source, choice]),
    ]),
  );

/** Entries whose texts are words of the schema, by key or by the end of the path; each may be any of its words. */
const CODED: readonly (readonly [end: RegExp, words: readonly string[]])[] = [
  [/source\.kind$/u, SOURCE_KINDS],
  [/populations\.\d+\.kind$/u, ["adult", "child"]],
  // Kinds that need nothing beside them.
  [/satisfiedBy\.kind$/u, ["preoxygenated", "etco2-in-band"]],
  [/satisfiedBy\.when$/u, ["any", "beforeParalysis", "sinceTube"]],
  [/satisfiedBy\.drugClass(?:es\.\d+)?$/u, ["induction", "opioid", "vasopressor"]],
  [/satisfiedBy\.event$/u, ["tubeConfirmed"]],
  [/satisfiedBy\.codes\.\d+$/u, ["gcsEye", "temp", "icp"]],
  [/alerts\.\d+\.code$/u, ["sbp", "map", "cpp", "spo2"]],
  [/alerts\.\d+\.side$/u, ["under", "over"]],
  [/alerts\.\d+\.phases\.\d+$/u, ["prepare", "settle"]],
  [/conditions\.\w+\.value$/u, ["high", "medium", "low"]],
  [/bands\.\d+\.at$/u, ["target", "critical"]],
  [/\.priority$/u, ["high", "medium", "low"]],
  [/\.phase$/u, ["prepare", "afterTube", "rescue", "failedAirway"]],
  [/soundAlike$/u, ["always", "if-action-differs"]],
  [/\.class$/u, ["induction", "opioid", "muscleRelaxant", "other", "relaxantReversal"]],
  [/recipes\.\d+\.for$/u, ["syringe", "infusion"]],
  [/\.solute$/u, ["sodiumChloride", "mannitol", "sodiumBicarbonate"]],
  [/(?:doses|infusions)\.\d+\.population$/u, ["adult", "child", "all"]],
  [/\.route$/u, ["IV", "IM"]],
  [/\.per$/u, ["kg", "dose"]],
  [/\.weight$/u, WEIGHT_SCALARS],
  [/infusions\.\d+\.unit$/u, RATE_UNITS],
  [/(?:doses\.\d+|concentrations\.\d+|stock|makes)\.unit$/u, DOSE_UNITS],
  [/carries\.unit$/u, ["mcg/mL", "%", "mm"]],
  [/^status$/u, ["example", "approved"]],
  [/^region\.drugNames$|regions\.value\.\d+$/u, ["international", "us"]],
  [/^region\.co2$/u, ["mmHg", "kPa"]],
  [/^region\.glucose$/u, ["mmol/L", "mg/dL"]],
  [/transducerLevel\.value$/u, ["heart", "tragus"]],
  [/^targets\.causes\.\d+\.id$/u, ["injury", "bleed", "unknown"]],
];
const wordsFor = ({ path }: Leaf): readonly string[] | undefined =>
  CODED.find(([end]) => end.test(path.join(".")))?.[1];

const leaves = leavesOf(defaultProtocol);

/** Another value that the schema would take at the same place. */
function anotherValue(leaf: Leaf): string | number | boolean {
  const { value } = leaf;
  if (typeof value === "boolean") return !value;
  if (typeof value === "number") return value + 0.125;
  return wordsFor(leaf)?.find((word) => word !== value) ?? `${value} x`;
}

describe("nothing of the file is missing", () => {
  it("every number and every free text is on the page, told apart from all others", () => {
    // Each leaf becomes one that occurs nowhere else, so that none can be found in place of another.
    const own = (leaf: Leaf, i: number) =>
      typeof leaf.value === "number" ? 4000.0625 + i : `${String(leaf.value)}#${i}#`;
    const marked = leaves.flatMap((leaf, i) =>
      typeof leaf.value === "boolean" || wordsFor(leaf) !== undefined ? [] : [{ leaf, own: own(leaf, i) }],
    );
    expect(marked.length).toBeGreaterThan(1000);
    const file: Protocol = structuredClone(defaultProtocol);
    for (const { leaf, own: value } of marked) holderOf(file, leaf.path)[leaf.path.at(-1)!] = value;
    const text = textOf(viewOf(file)).toLowerCase();
    const missing = marked.filter(
      ({ own: value }) => !text.includes(JSON.stringify(value).replaceAll(/^"|"$/gu, "").toLowerCase()),
    );
    expect(missing.map(({ leaf }) => leaf.path.join("."))).toEqual([]);
  });

  it("every number of the bundled file is on the page as it is, seconds in minutes or hours too", () => {
    const numbers = new Set(
      textOf(viewOf(defaultProtocol))
        .replace(/(?<=\d) (?=\d{3})/gu, "")
        .match(/\d+(?:\.\d+)?/gu),
    );
    const isShown = ({ path, value }: Leaf) =>
      [Number(value), ...(/S(?:\.|$)/u.test(path.join(".")) ? [Number(value) / 60, Number(value) / 3600] : [])].some(
        (n) => numbers.has(String(n)),
      );
    const missing = leaves.filter((leaf) => typeof leaf.value === "number" && !isShown(leaf));
    expect(missing.map(({ path }) => path.join("."))).toEqual([]);
  });

  it("shows no row without a label or a value, and no raw code or object", () => {
    for (const { label, value } of rowsOf(viewOf(defaultProtocol))) {
      expect(label).not.toBe("");
      expect(value).not.toMatch(
        /^$|undefined|\[object|NaN|if-action|map-at-target|etco2-in|sinceTube|muscleRelaxant|\bmcg\b/u,
      );
    }
  });
});

describe("what differs from the bundled protocol", () => {
  it("is nothing in the bundled protocol itself", () => {
    const view = viewOf(structuredClone(defaultProtocol));
    expect([view.differing, view.differingText]).toEqual([0, "Nothing differs from the bundled example."]);
    expect(rowsOf(view).filter((row) => row.difference !== "none")).toEqual([]);
  });

  const expectShown = (leaf: Leaf) => {
    const view = viewOf(withEntry(defaultProtocol, leaf.path, anotherValue(leaf)));
    const rows = rowsOf(view).filter((row) => row.difference !== "none");
    expect(rows, leaf.path.join(".")).not.toEqual([]);
    expect(view.differing).toBe(rows.length);
    for (const row of rows) if (row.difference === "changed") expect(Object.keys(row.bundled)).not.toEqual([]);
  };

  it("shows wherever one leaf is another", () => {
    fc.assert(fc.property(fc.constantFrom(...leaves), expectShown));
  });

  it("shows for every kind of leaf", () => {
    const kinds = new Map(leaves.map((leaf) => [leaf.path.join(".").replace(/\.\d+/gu, ".*"), leaf]));
    for (const leaf of kinds.values()) if (!/\.(?:source|choice)\./u.test(leaf.path.join("."))) expectShown(leaf);
  });

  it("shows wherever an entry of a list is gone, or two have changed places", () => {
    const lists = [
      ...new Set(
        leaves
          .map(({ path }) => path.slice(0, path.findLastIndex((key) => typeof key === "number") + 1))
          .filter((path) => path.length > 0)
          .map((path) => JSON.stringify(path)),
      ),
    ].map((path) => JSON.parse(path) as (string | number)[]);
    expect(lists.length).toBeGreaterThan(100);
    fc.assert(
      fc.property(fc.constantFrom(...lists), (path) => {
        expect(viewOf(withoutEntry(defaultProtocol, path)).differing).toBeGreaterThan(0);
      }),
    );
    for (const key of ["steps", "groups", "doses"] as const) {
      const swapped = structuredClone(defaultProtocol) as unknown as {
        groups: { steps: unknown[] }[];
        drugs: { doses: unknown[] }[];
      };
      const list =
        key === "groups" ? swapped.groups : key === "steps" ? swapped.groups[0]!.steps : swapped.drugs[0]!.doses;
      list.reverse();
      expect(viewOf(swapped as unknown as Protocol).differing, key).toBeGreaterThan(0);
    }
  });

  it("stands beside the bundled value, and added and removed rows say so", () => {
    const changed = structuredClone(defaultProtocol) as unknown as {
      timers: { standByS: { value: number; source: { reference: string; kind: string; primaryRead: boolean } } };
      fluids: { id: string }[];
    };
    changed.timers.standByS = {
      value: 90,
      source: { reference: "Invented 2026", kind: "label", primaryRead: true },
    };
    changed.fluids[0]!.id = "invented";
    const view = viewOf(changed as unknown as Protocol);
    const bundled = defaultProtocol.timers.standByS;
    expect(rowsOf(view).find((row) => row.key === "timers.standByS")).toMatchObject({
      difference: "changed",
      value: "90\u00a0s",
      source: { reference: "Invented 2026", kind: "drug label", read: "read" },
      bundled: { value: `${bundled.value / 60}\u00a0min`, source: { reference: bundled.source.reference } },
    });
    const fluids = view.sections.find(({ key }) => key === "fluids")!.tables;
    const differences = (key: string) =>
      new Set(fluids.find((table) => table.key === key)!.rows.map((r) => r.difference));
    expect(differences("invented")).toEqual(new Set(["added"]));
    expect(differences(defaultProtocol.fluids[0]!.id)).toEqual(new Set(["removed"]));
    expect(view.differingText).toBe(`${view.differing} entries differ from the bundled example.`);
  });

  it("counts one as one, and shows it alone under its headings when only that is wanted", () => {
    const view = viewOf(withEntry(defaultProtocol, ["timers", "standByS", "value"], 77));
    const [section, ...others] = onlyDiffering(view.sections);
    expect(others).toEqual([]);
    expect([section?.title, section?.tables.map((table) => table.rows.map((row) => row.key))]).toEqual([
      "Timers",
      [["timers.standByS"]],
    ]);
    expect(onlyDiffering(viewOf(defaultProtocol).sections)).toEqual([]);
    expect(view.differingText).toBe("1 entry differs from the bundled example.");
  });
});

const SOURCE = { reference: "Invented", kind: "memory", primaryRead: false };
/** Invented numbers: no dose stands behind them. */
const DOSE = {
  id: "invented",
  purpose: "invented use",
  population: "all",
  route: "IM",
  per: "kg",
  unit: "mcg",
  low: 0.5,
  usual: 0.75,
  high: 1,
  weight: "lean",
  source: SOURCE,
};

const doseText = (dose: object): string => {
  const view = viewOf(withEntry(defaultProtocol, ["drugs", 0, "doses", 0], { ...DOSE, ...dose }));
  return plain(rowsOf(view).find((row) => row.key === "doses.invented")!.value);
};

describe("rows in words", () => {
  it.each([
    [{}, "0.5 to 1 micrograms/kg, usual 0.75, IM; by lean weight"],
    [
      { per: "dose", unit: "mg", low: 1200, usual: 1200, high: 1200, cap: 3000 },
      "1 200 mg, IM; by lean weight; cap 3 000 mg",
    ],
    [{ low: 0.0051, cap: 2 }, "0.0051 to 1 micrograms/kg, usual 0.75, IM; by lean weight; cap 2 micrograms"],
    [
      {
        shock: { low: 0.2, usual: 0.3, high: 0.4 },
        minimum: 0.1,
        overS: { low: 30, high: 60 },
        fromKg: 3,
        belowKg: 9.5,
      },
      "0.5 to 1 micrograms/kg, usual 0.75, IM; by lean weight; from 3 kg; under 9.5 kg; in shock 0.2 to 0.4 micrograms/kg, usual 0.3; at least 0.1 micrograms; over 30 to 60 s",
    ],
    [
      { omitInShock: true, repeatAfterS: { low: 120, high: 7200 }, mostDoses: 1 },
      "0.5 to 1 micrograms/kg, usual 0.75, IM; by lean weight; not given in shock; again after 2 to 120 min; at most 1 dose in all",
    ],
    [{ afterTube: true }, "0.5 to 1 micrograms/kg, usual 0.75, IM; by lean weight; for after the tube"],
    [
      { repeatAfterS: { low: 3600, high: 7200 }, mostDoses: 3 },
      "0.5 to 1 micrograms/kg, usual 0.75, IM; by lean weight; again after 1 to 2 h; at most 3 doses in all",
    ],
  ])("dose %j", (dose, text) => expect(doseText(dose)).toBe(text));

  it.each<[path: (string | number)[], value: unknown, label: string, text: string]>([
    [["targets", "spo2Pct", "target", "value"], 91, "SpO2, target", "91 %"],
    [
      ["targets", "populations", 0, "sbpMmHg", "target", "value"],
      { base: 71, perYear: 3 },
      "SBP, target",
      "71 + 3 × age in years, mmHg",
    ],
    [["targets", "glucoseMmolPerL", "hold", "value"], { low: 4.1, high: 9 }, "Glucose, hold", "4.1 to 9 mmol/L"],
    [
      ["ventilation", "tidalMlPerKg", "value"],
      { low: 5, usual: 5.5, high: 9 },
      "Breath volume",
      "5 to 9 mL/kg, usual 5.5",
    ],
    [["permissions", "osmotherapyPrehospital", "value"], true, "Osmotic agents before hospital", "yes"],
    [["timers", "reannounceS", "high", "value"], 61, "Alert said again, high priority", "61 s"],
    [["timers", "afterTube", "forS", "value"], 1200, "Once the tube is in, for", "20 min"],
    [
      ["timers", "watch", "stretchBy", "value"],
      2,
      "Interval between sets, after each good set longer by the factor",
      "2",
    ],
    [["oxygen", "cylinderWarnMin", "value"], 12, "Warned when a cylinder lasts no longer than", "12 min"],
    [["doses", "askBackOverPct", "value"], 15, "Given amount asked back when further from the plan than", "15 %"],
    [["targets", "herniation", "sbpMmHg", "value"], 120, "In herniation, SBP", "120 mmHg"],
    [["tubes", "cuffCmH2O", "adult", "value"], { low: 21, high: 21 }, "Cuff pressure, adult", "21 cmH2O"],
  ])("%j", (path, value, label, text) => {
    const rows = rowsOf(viewOf(withEntry(defaultProtocol, path, value)));
    const row = rows.find(({ difference }) => difference !== "none")!;
    expect([row.label, plain(row.value)]).toEqual([label, text]);
  });

  it.each([
    ["syringe", "drawn up to give from at once"],
    ["infusion", "for an infusion"],
  ])("says what a dilution is for: %s", (made, text) => {
    const rows = rowsOf(viewOf(withEntry(defaultProtocol, ["drugs", 0, "recipes", 0, "for"], made)));
    const row = rows.find(({ key }) => key === "recipes.halfStrength")!;
    expect(plain(row.value).endsWith(`makes 500 mg in 10 mL; ${text}`)).toBe(true);
    expect(row.difference).toBe(made === "syringe" ? "none" : "changed");
  });

  const CARRIES = { what: "invented rate", unit: "mcg/kg/h", low: 1, high: 2000 };
  const recorded = (when: string) => ({ kind: "recorded", codes: ["gcsEye", "temp"], when });
  it.each([
    [{ killer: true }, "critical, waived only aloud"],
    [
      { killer: true, satisfiedBy: recorded("any"), carries: CARRIES },
      "critical, waived only aloud; answered when GCS eye, Temp are recorded; takes invented rate, 1 to 2 000 micrograms/kg/h",
    ],
    [
      { satisfiedBy: recorded("beforeParalysis") },
      "may be waived; answered when GCS eye, Temp are recorded before paralysis",
    ],
    [
      { satisfiedBy: recorded("sinceTube") },
      "may be waived; answered when GCS eye, Temp are recorded since the tube went in",
    ],
    [{ satisfiedBy: { kind: "map-at-target" } }, "may be waived; answered by a mean pressure at its target"],
    [{ satisfiedBy: { kind: "preoxygenated" } }, "may be waived; answered when oxygen has run for its time"],
    [
      { satisfiedBy: { kind: "strength-affirmed", drugClass: "muscleRelaxant" } },
      "may be waived; answered when the strength of a drug is affirmed: muscle relaxant",
    ],
    [
      { satisfiedBy: { kind: "infusion-running", drugClasses: ["induction", "muscleRelaxant"] } },
      "may be waived; answered while an infusion runs: induction or muscle relaxant",
    ],
    [
      { satisfiedBy: { kind: "strength-affirmed", drugClass: "vasopressor", mostMl: 100 } },
      "may be waived; answered when the strength of a drug is affirmed: vasopressor, in at most 100 mL",
    ],
    [{ satisfiedBy: { kind: "fluid-given" } }, "may be waived; answered when fluid or blood is given"],
    [{ satisfiedBy: { kind: "etco2-in-band" } }, "may be waived; answered by an EtCO2 in its band"],
    [{ satisfiedBy: { kind: "airway", event: "tubeConfirmed" } }, "may be waived; answered when the tube is confirmed"],
  ])("says what a step needs, and what may be waived only aloud: %j", (parts, text) => {
    const step = { id: "bleeding", name: "made up", challenge: "Invented?", killer: false, source: SOURCE, ...parts };
    const rows = rowsOf(viewOf(withEntry(defaultProtocol, ["groups", 0, "steps", 0], step)));
    expect(plain(rows.find((row) => row.label === "Invented?")!.value)).toBe(`called "made up"; ${text}`);
  });

  it("says when a value is asked back", () => {
    const rule = {
      actionEdges: [35, 38.5],
      soundAlike: "if-action-differs",
      jump: { by: 2, withinS: 120 },
      source: SOURCE,
    };
    const texts = [rule, { ...rule, actionEdges: [], soundAlike: "always", jump: undefined }].map((temp) =>
      plain(
        rowsOf(viewOf(withEntry(defaultProtocol, ["confirm", "temp"], temp))).find((row) => row.label === "Temp")!
          .value,
      ),
    );
    expect(texts).toEqual([
      "limits of action 35, 38.5 °C; a sound-alike only across a limit of action; a jump of more than 2 °C within 2 min",
      "no limit of action; a sound-alike always; no jump",
    ]);
  });
});

describe("head of the page", () => {
  it("names the hash in full and the signature, and warns while nobody has approved it", () => {
    const hash = "0123456789abcdef".repeat(4);
    expect(viewProtocol(defaultProtocol, defaultProtocol, { ...MARK, hash, signedBy: "a1b2" })).toMatchObject({
      name: defaultProtocol.name,
      warning: "Example protocol, not approved for patients.",
      hashText: hash,
      signatureText: "Signed by key a1b2",
    });
    const approved = viewOf(withEntry(defaultProtocol, ["status"], "approved"));
    expect([approved.warning, approved.signatureText]).toEqual(["", "Not signed"]);
    expect(approved.hashText).toMatch(/not known/u);
  });
});
