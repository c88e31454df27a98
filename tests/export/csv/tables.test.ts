import fc from "fast-check";
import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import { drugsTable } from "../../../src/export/csv/drugsTable.ts";
import { eventsTable } from "../../../src/export/csv/eventsTable.ts";
import { vitalsTable } from "../../../src/export/csv/vitalsTable.ts";
import { writeCsv, type Table } from "../../../src/export/csv/writeCsv.ts";
import { BEGAN_MS, playMoves, randomMoves, recordedFrom, type Move } from "../randomCase.ts";

const ZONE = "Europe/Paris";
const TABLES = { vitals: vitalsTable, drugs: drugsTable, events: eventsTable } as const;

/** The judge: a reader that is not ours, told nothing but that the first line is the header. */
function read(text: string): readonly Readonly<Record<string, string>>[] {
  const { data, errors, meta } = Papa.parse<Record<string, string>>(text, {
    header: true,
    skipEmptyLines: true,
    delimiter: ",",
    newline: "\r\n",
  });
  expect(errors).toEqual([]);
  expect(meta.fields?.length).toBe(new Set(meta.fields).size);
  return data;
}

const wait = (seconds: number): Move => ({ kind: "wait", seconds });
const say = (words: string): Move => ({ kind: "say", words, by: "typed", then: "affirm" });
const tablesOf = (moves: readonly Move[], rehearsal = false) => {
  const recorded = recordedFrom(playMoves(moves), rehearsal);
  const text = (name: keyof typeof TABLES) => writeCsv(TABLES[name](recorded, ZONE));
  return { vitals: read(text("vitals")), drugs: read(text("drugs")), events: read(text("events")) };
};

/** The cells that are not empty, without those that every row has. */
const filled = (row: Readonly<Record<string, string>> | undefined): Readonly<Record<string, string>> =>
  Object.fromEntries(
    Object.entries(row ?? {}).filter(
      ([name, cell]) =>
        cell !== "" && !["case", "case id", "rehearsal", "time", "status", "heard by", "heard"].includes(name),
    ),
  );

// [what is said, the cells of the row that comes of it]: what was said, converted by hand where it has another unit.
const SAID_VITALS: readonly (readonly [string, Readonly<Record<string, string>>])[] = [
  [
    "cuff one eighteen over sixty six",
    { "SBP (mm[Hg])": "118", "DBP (mm[Hg])": "66", "MAP computed (mm[Hg])": "83.3333", method: "cuff" },
  ],
  ["heart rate one oh five", { "HR (/min)": "105" }],
  ["sats ninety seven", { "SpO2 (%)": "97" }],
  // 4.8 kPa / 0.133322387415 kPa.
  ["end tidal 4.8 kilopascals", { "EtCO2 (mm[Hg])": "36.003" }],
  ["temperature 98.6 fahrenheit", { "Temp (Cel)": "37" }],
  ["weight 180 pounds", { "Weight (kg)": "81.6466" }],
  ["estimated weight 80 kilos", { "Weight (kg)": "80", method: "estimated" }],
  ["left pupil four brisk", { "Left pupil (mm)": "4", "Left pupil reaction": "brisk" }],
  ["right pupil fixed", { "Right pupil reaction": "fixed" }],
  [
    "eyes two verbal two motor four",
    {
      "GCS eye ({score})": "2",
      "GCS verbal ({score})": "2",
      "GCS motor ({score})": "4",
      "GCS total computed ({score})": "8",
    },
  ],
  [
    "eyes two verbal not testable motor four",
    {
      "GCS eye ({score})": "2",
      "GCS verbal ({score})": "not testable",
      "GCS motor ({score})": "4",
      "GCS total computed ({score})": "not testable",
    },
  ],
  ["age thirty four", { "Age (a)": "34" }],
  ["age ninety five", { "Age (a)": "over 89" }],
];

describe("the table of vitals", () => {
  it.each(SAID_VITALS)("%s", (said, cells) => {
    const { vitals } = tablesOf([say(said)]);
    expect(vitals.map(filled)).toEqual([cells]);
  });

  it("has a CPP where ICP was measured, and a number under zero stays a number", () => {
    const { vitals } = tablesOf([say("map forty"), say("i c p fifty")]);
    expect(vitals.map((row) => row["CPP computed (mm[Hg])"])).toEqual(["", "-10"]);
    expect(tablesOf([say("map ninety")]).vitals.map((row) => row["CPP computed (mm[Hg])"])).toEqual([""]);
  });

  it("keeps what was struck, and says so; times have the offset of the zone", () => {
    const { vitals } = tablesOf([wait(61), say("heart rate ninety"), say("disregard"), say("heart rate eighty")]);
    expect(vitals.map((row) => [row["time"], row["status"], row["HR (/min)"]])).toEqual([
      ["2027-01-15T09:01:01.000+01:00", "struck", "90"],
      ["2027-01-15T09:01:01.000+01:00", "recorded", "80"],
    ]);
    // 61 s after 2027-01-15T08:00:00Z.
    expect(BEGAN_MS).toBe(Date.UTC(2027, 0, 15, 8, 0, 0));
  });

  it("marks a rehearsal in every row of every table", () => {
    const { vitals, events } = tablesOf([say("heart rate ninety")], true);
    expect([...vitals, ...events].map((row) => row["rehearsal"])).toEqual([...vitals, ...events].map(() => "yes"));
    expect([vitals[0]?.["case"], vitals[0]?.["case id"]]).toEqual(["kilo four seven", "random"]);
  });
});

describe("the table of drugs", () => {
  it("has each dose as affirmed, and an infusion as one row for each rate", () => {
    const { drugs } = tablesOf([
      ...["weight 80 kilos", "ketamine 50 milligrams per mil", "ketamine 100 milligrams given"].map(say),
      ...["saline 250 given", "noradrenaline 4 milligrams in 250", "start noradrenaline at 5 millilitres per hour"].map(
        say,
      ),
      ...[wait(120), say("noradrenaline running at 8 millilitres per hour"), wait(60), say("stop noradrenaline")],
    ]);
    expect(drugs.map(filled)).toEqual([
      {
        kind: "bolus",
        drug: "ketamine",
        class: "induction",
        "amount or rate": "100",
        "unit of amount or rate (UCUM)": "mg",
        "volume (mL)": "2",
      },
      {
        kind: "fluid",
        drug: "isotonic crystalloid",
        class: "fluid",
        "amount or rate": "250",
        "unit of amount or rate (UCUM)": "mL",
        "volume (mL)": "250",
      },
      // 5 mL/h × 16 ug/mL / (80 kg × 60 min/h) = 1/60, read back and affirmed as 0.017; 8 mL/h: 8/300, as 0.027.
      {
        end: "2027-01-15T09:02:00.000+01:00",
        kind: "infusion",
        drug: "noradrenaline",
        class: "vasopressor",
        "amount or rate": "0.017",
        "unit of amount or rate (UCUM)": "ug/kg/min",
        "pump rate (mL/h)": "5",
        "weight used (kg)": "80",
        concentration: "4 mg in 250 mL",
      },
      {
        end: "2027-01-15T09:03:00.000+01:00",
        kind: "infusion",
        drug: "noradrenaline",
        class: "vasopressor",
        "amount or rate": "0.027",
        "unit of amount or rate (UCUM)": "ug/kg/min",
        "pump rate (mL/h)": "8",
        "weight used (kg)": "80",
        concentration: "4 mg in 250 mL",
      },
    ]);
  });
});

describe("the table of events", () => {
  it("has what was done, asked, raised and struck, a clock that was set, and what nobody confirmed", () => {
    const { events } = tablesOf([
      ...["blade in", "sats 82"].map(say),
      { kind: "clock", byMs: -3_600_000 },
      { kind: "say", words: "i c p fifteen", by: "typed", then: undefined },
      ...[wait(200), say("disregard")],
    ]);
    const told = events.map((row) => [row["event"], row["status"], row["what"], row["seconds"]].join(" ").trim());
    expect(told).toEqual(
      expect.arrayContaining([
        "airway.event recorded bladeIn",
        "alert.raised recorded spo2Low",
        "clock.changed recorded set back 3600",
        "question.asked unconfirmed sound-alike",
        "question.closed recorded unconfirmed",
      ]),
    );
  });

  it("tells a value that was worked out to six digits, as the other tables do", () => {
    const { events } = tablesOf([say("cuff seventy one over forty")]);
    // 40 + (71 - 40) / 3.
    expect(events.find(({ what }) => what === "mapLow")).toMatchObject({ event: "alert.raised", detail: "50.3333" });
  });

  it("tells no words in which an age may be", () => {
    const moves = [say("ninety four year old man"), say("age ninety four"), say("heart rate ninety age 95")];
    const recorded = recordedFrom(playMoves(moves));
    const all = Object.values(TABLES).map((table) => writeCsv(table(recorded, ZONE)));
    expect(all.join("")).toContain("over 89");
    expect(all.join("")).not.toMatch(/9[45]\b|ninety (four|five)/u);
  });
});

describe("the writer", () => {
  it.each([
    ["=1+1", "'=1+1"],
    ["+1", "'+1"],
    ["-1", "'-1"],
    ["@A1", "'@A1"],
    [" =A1", `" =A1"`.slice(1, -1).replace(" =", "' =")],
    ["\tx", "'\tx"],
    ["\uFF1D1", "'\uFF1D1"],
    ["a=1", "a=1"],
    ["not-needed", "not-needed"],
  ])("guards %j against being a formula", (said, printed) => {
    const [row] = read(writeCsv({ header: ["a", "b"], rows: [[said, "x"]] }));
    expect(row).toEqual({ a: printed, b: "x" });
  });

  it("ends each line with CRLF, doubles quotes, and leaves numbers bare", () => {
    const text = writeCsv({
      header: ["a", "b (mm[Hg])"],
      rows: [
        ['say "x", y\nz', -5],
        [undefined, 0],
      ],
    });
    expect(text).toBe('a,b (mm[Hg])\r\n"say ""x"", y\nz",-5\r\n,0\r\n');
  });

  it("gives back every text as it was, but for the guard", () => {
    const cell = fc.oneof(fc.string({ unit: "binary" }), fc.string({ unit: fc.constantFrom(..."=+-@,\"'\r\n\t a") }));
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell), { minLength: 1 }), (cells) => {
        const text = writeCsv({ header: ["a", "b"], rows: cells.map(([a, b]) => [a, `.${b}`]) });
        const rows = read(text).map(({ a, b }) => [a?.replace(/^'(?=[\s\S])/u, ""), b]);
        const wanted = cells.map(([a, b]) => [a.replace(/^'(?=[\s\S])/u, ""), `.${b}`]);
        expect(rows).toEqual(wanted);
        expect(read(text).some(({ a }) => /^\s*[=+\-@]/u.test(a ?? ""))).toBe(false);
      }),
    );
  });
});

describe("the tables of any case", () => {
  it("are read back with as many cells in each row as the header has, and every value as it is recorded", () => {
    fc.assert(
      fc.property(randomMoves, (moves) => {
        const recorded = recordedFrom(playMoves(moves));
        const rowsOf = (table: Table) => Papa.parse<string[]>(writeCsv(table), { skipEmptyLines: true }).data;
        for (const make of Object.values(TABLES)) {
          const table = make(recorded, ZONE);
          const [header, ...rows] = rowsOf(table);
          expect(header).toEqual(table.header);
          expect(rows.length).toBe(table.rows.length);
          expect(rows.filter((row) => row.length !== table.header.length)).toEqual([]);
        }
        const hr = recorded.facts.flatMap((f) => (f.type === "vital.recorded" && f.code === "hr" ? [f.value] : []));
        const printed = read(writeCsv(vitalsTable(recorded, ZONE))).map((row) => row["HR (/min)"] ?? "");
        expect(printed.filter((value) => value !== "").map(Number)).toEqual(hr);
      }),
      { numRuns: 15 },
    );
  });
});
