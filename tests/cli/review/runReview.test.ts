import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { runReview } from "../../../src/cli/review/runReview.ts";
import type { Fact } from "../../../src/log/facts.ts";
import { airway } from "../../export/measures/builtCase.ts";
import { caseOf, JUDGE, MARK, readStub, review, withFacts, write } from "./reviewStub.ts";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "tragus-review-"));
});
afterEach(() => rmSync(folder, { recursive: true }));

/** The row of a file, its blanks squeezed. */
const rowOf = (lines: readonly string[], file: string): string =>
  (lines.find((line) => line.startsWith(file)) ?? "none").replace(/ {2,}/gu, " | ");

const cellsOf = (csv: string): readonly Readonly<Record<string, string>>[] => {
  const [headers = [], ...rows] = csv
    .split("\r\n")
    .slice(0, -1)
    .map((line) => line.split(","));
  return rows.map((row) => Object.fromEntries(headers.map((header, i) => [header, row[i] ?? "missing"])));
};

describe("a row", () => {
  // Pressures 130/85 at 5 min and 120/80 at 10 min: means (130 + 170)/3 = 100 and (120 + 160)/3 = 93.3, above 90 and 110 all the
  // time. Known 5 min of the 13.5 in which something was said, so 8.5 are not. The blade was in for 30 s. Sedation 13.5 − 9.5.
  it("tells of one case", async () => {
    write(folder, "a.json", caseOf("one"));
    const { lines, csv } = await review(folder);
    expect(rowOf(lines, "a.json")).toBe(
      "a.json | kilo four seven | yes | yes | 1 (30 s) | 120 | 93 | ? | 97 | 0/0/8.5 | 0/0/8.5 | ? | 4 | ? | no | ?",
    );
    expect(cellsOf(csv)[0]).toMatchObject({
      file: "a.json",
      case: "kilo four seven",
      case_id: "one",
      rehearsal: "false",
      opened_at: "1970-01-01T00:00:00.000Z",
      protocol: "Judge",
      judged_by_version: "3",
      own_protocol: "same",
      first_pass: "true",
      attempts: "1",
      attempt_lengths_s: "30",
      lowest_sbp_around_induction_mmHg: "120",
      sbp_around_induction_readings: "1",
      lowest_cpp_around_induction_mmHg: "",
      lowest_sbp_in_case_mmHg: "120",
      sbp_in_case_readings: "2",
      sbp_target_mmHg: "110",
      below_sbp_target_min: "0",
      unknown_sbp_target_min: "8.5",
      tube_to_sedation_min: "4",
      low_after_intubation: "false",
      watched_after_intubation_min: "0.5",
      over_ventilation_min: "",
    });
    const [row] = cellsOf(csv);
    expect(row?.unknown_because).toBe(
      [
        "lowest_cpp_around_induction_mmHg: not measured",
        "lowest_cpp_in_case_mmHg: not measured",
        "below_cpp_target_min: not measured",
        "over_ventilation_min: no two readings near enough to each other",
        "steps_waived: the list was not used",
      ].join("; "),
    );
  });

  it("tells what sets a case apart", async () => {
    const other = { ...MARK, hash: "b".repeat(64) };
    const { hash: _hash, ...unhashed } = MARK;
    write(folder, "a.json", caseOf("a", other));
    write(folder, "b.json", caseOf("b", unhashed));
    write(folder, "c.json", { ...caseOf("c"), rehearsal: true });
    write(
      folder,
      "d.json",
      caseOf("d", MARK, (b) => b.add({ type: "protocol.replaced", protocol: other })),
    );
    write(
      folder,
      "e.json",
      caseOf("e", MARK, (b) => b.add({ type: "clock.changed", byMs: 1000 })),
    );
    const { lines, csv } = await review(folder);
    const notes = ["a", "b", "c", "d", "e"].map((name) => rowOf(lines, name).split(" | ").at(-1));
    expect(notes).toEqual(["other protocol", "protocol not known", "rehearsal", "other protocol", "clock set"]);
    expect(cellsOf(csv).map((cells) => cells.own_protocol)).toEqual(["other", "unknown", "same", "other", "same"]);
    expect(cellsOf(csv).map((cells) => cells.rehearsal)).toEqual(["false", "false", "true", "false", "false"]);
    expect(lines[0]).toBe("Judged by: Judge, version 3, aaaaaaaaaaaa.");
  });
});

describe("a file that is no record", () => {
  const vital = (change: object) =>
    withFacts(caseOf("v"), (facts) =>
      facts.map((fact): Fact => (fact.type === "vital.recorded" ? { ...fact, ...change } : fact)),
    );

  it.each([
    ["truncated", JSON.stringify(caseOf("t")).slice(0, 900), /skipped: cannot be used: .*JSON/u],
    ["empty", "", /skipped: cannot be used: .*JSON/u],
    [
      "refused by the reader",
      '{"refuse":"was altered: Entry 3 was altered."}',
      /skipped: was altered: Entry 3 was altered\.$/u,
    ],
    ["too large", " ".repeat(2 ** 20 + 1), /skipped: is too large: 2 MiB, at most 1$/u],
    ["of unknown facts", JSON.stringify({ caseId: "x", facts: [{ type: "odd" }] }), /skipped: cannot be used/u],
    ["null", "null", /skipped: cannot be used/u],
    ["of impossible numbers", JSON.stringify(vital({ value: 9999 })), /skipped: holds a value that cannot be: Age$/u],
    ["of numbers as text", JSON.stringify(vital({ value: "90" })), /skipped: holds a value that cannot be: Age$/u],
    [
      "of unknown vitals",
      JSON.stringify(vital({ code: "__proto__" })),
      /skipped: holds a vital sign that this version/u,
    ],
    ["of other units", JSON.stringify(vital({ unit: "kPa" })), /skipped: holds a vital sign that this version/u],
  ])("%s: is named with the reason, and the others are read", async (_name, text, expected) => {
    write(folder, "a.json", text);
    write(folder, "b.json", caseOf("b"));
    const { lines, csv } = await review(folder);
    expect(lines.find((line) => line.startsWith("a.json"))).toMatch(expected);
    expect(rowOf(lines, "b.json")).toContain("yes");
    expect(lines.at(-2)).toBe("Files skipped: 1.");
    expect(cellsOf(csv).map(({ file }) => file)).toEqual(["b.json"]);
  });

  it("is not UTF-8", async () => {
    writeFileSync(join(folder, "a.json"), Uint8Array.of(0x7b, 0xff, 0xfe));
    expect(rowOf((await review(folder)).lines, "a.json")).toBe("a.json | skipped: is not text in UTF-8");
  });

  it("cannot make the terminal do anything", async () => {
    write(folder, "a.json", '{"refuse":"odd\\u001b[31m\\nrow"}');
    write(folder, "b\u001b[2J.json", { ...caseOf("b"), label: "kilo\u202e\u0007" });
    write(
      folder,
      "c.json",
      caseOf("c", MARK, (b) => (b.answer("plan\u001b[2J", "waived"), b.answer("x".repeat(5000), "waived"))),
    );
    const { lines } = await review(folder);

    expect(lines.join("\n")).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u202e]/u);
    expect(rowOf(lines, "a.json")).toBe("a.json | skipped: odd [31m row");
    expect(lines).toContain("Waived most often: (name too long) 1, plan [2J 1.");
  });
});

describe("the CSV", () => {
  it("holds no cell that a spreadsheet would take for a formula", async () => {
    write(folder, "=1+1.json", { ...caseOf("@a"), label: "-kilo" });
    expect(cellsOf((await review(folder)).csv)[0]).toMatchObject({
      file: "'=1+1.json",
      case: "'-kilo",
      case_id: "'@a",
    });
  });
});

describe("the figures of the service", () => {
  const figure = (lines: readonly string[], name: string) =>
    (lines.find((line) => line.startsWith(name)) ?? "none").slice(name.length).trim().replace(/ {2,}/gu, " | ");

  it("leave rehearsals out unless they are asked for", async () => {
    write(folder, "a.json", caseOf("a"));
    write(folder, "b.json", { ...caseOf("b"), rehearsal: true });
    const without = (await review(folder)).lines;
    expect(without).toContain(
      "Cases: 1 (rehearsals left out: 1). Recorded under another protocol, or one not known: 0.",
    );
    expect(figure(without, "first pass ")).toBe("1 of 1 | 100 %");
    const all = (await review(folder, { rehearsals: true })).lines;
    expect(all).toContain("Cases: 2 (1 of them rehearsals). Recorded under another protocol, or one not known: 0.");
    expect(figure(all, "first pass ")).toBe("2 of 2 | 100 %");
    expect(rowOf(all, "b.json")).toContain("rehearsal");
  });

  it("count only the cases of which something is known, and say of how many nothing is", async () => {
    write(folder, "a.json", caseOf("a"));
    write(
      folder,
      "b.json",
      caseOf("b", MARK, (b) => b.say({ sbp: 85, spo2: 95 })),
    );
    write(
      folder,
      "c.json",
      withFacts(caseOf("c"), (facts) => facts.filter(({ type }) => type !== "airway.event")),
    );
    const { lines } = await review(folder);
    expect(figure(lines, "first pass ")).toBe("2 of 2 | 100 % | unknown in 1");
    expect(figure(lines, "first pass, SpO2 not under 90 %, SBP not under 90")).toBe("1 of 2 | 50 % | unknown in 1");
    expect(figure(lines, "SBP under 90 within 60 min of the tube")).toBe(
      "1 of 2 | 50 % | unknown in 1; of 1 without, 0 watched all that time",
    );
    expect(figure(lines, "attempts")).toBe("2 | 1 | 1 | 1");
    // 120 in two cases, 85 in the one that fell.
    expect(figure(lines, "lowest SBP around induction, mmHg")).toBe("3 | 120 | 85 | 120");
    expect(figure(lines, "CPP under target, min")).toBe("0");
  });

  it("name the steps that were waived most often", async () => {
    write(
      folder,
      "a.json",
      caseOf("a", MARK, (b) => (b.answer("suction", "waived"), b.answer("plan", "waived"))),
    );
    write(
      folder,
      "b.json",
      caseOf("b", MARK, (b) => (b.answer("suction", "waived"), b.answer("plan", "done"))),
    );
    const { lines } = await review(folder);
    expect(figure(lines, "a step waived")).toBe("2 of 2 | 100 %");
    expect(lines).toContain("Waived most often: suction 2, plan 1.");
  });

  it.each([
    [["b.json", "a.json"], "the longer one first"],
    [["a.json", "b.json"], "the longer one last"],
  ])("count a case once that stands in two files, %j: %s", async ([short = "", long = ""]) => {
    write(folder, short, caseOf("same"));
    write(
      folder,
      long,
      caseOf("same", MARK, (b) => b.add(airway("tubeOut"), airway("bladeIn"), airway("tubeConfirmed"))),
    );
    const { lines } = await review(folder);
    expect(lines).toContain("Cases: 1 (rehearsals left out: 0). Recorded under another protocol, or one not known: 0.");
    expect(figure(lines, "attempts")).toBe("1 | 2 | 2 | 2");
    expect(rowOf(lines, "b.json")).toMatch(/same case as a\.json$/u);
  });

  it("are none of no cases", async () => {
    const { lines } = await review(folder);
    expect(lines.slice(-5)).toEqual([
      "",
      "Cases: 0 (rehearsals left out: 0). Recorded under another protocol, or one not known: 0.",
      "",
      "Files skipped: 0.",
      "",
    ]);
  });
});

describe("a review", () => {
  it("of a folder that is not there is an error", async () => {
    const print = async () => undefined;
    const progressOf = () => ({ step: () => undefined, clear: () => undefined });
    const options = { judge: JUDGE, mostBytes: 1, readRecord: readStub, rehearsals: false, print, progressOf };
    const done = await runReview({ ...options, folder: join(folder, "none") });
    expect(done.ok).toBe(false);
  });

  it("moves on by a step a file", async () => {
    for (const name of ["a", "b", "c"]) write(folder, `${name}.json`, name === "b" ? "" : caseOf(name));
    const steps: number[] = [];
    let total = 0;
    const progressOf = (files: number) => ((total = files), { step: () => void steps.push(1), clear: () => undefined });
    await review(folder, { progressOf });
    expect([total, steps.length]).toEqual([3, 3]);
  });
});
