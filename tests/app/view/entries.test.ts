import { describe, expect, it } from "vitest";
import { viewEntries, type EntryRow } from "../../../src/app/view/entries.ts";
import { timesIn } from "../../../src/export/printed/times.ts";
import { defaultProtocol } from "../../../src/protocol/defaultProtocol.ts";
import { fullCase, rowsWith, textOf } from "../../export/printed/printedCase.ts";

const c = fullCase();
const { facts } = c.builder;
const all = { facts, unsavedIds: new Set<string>(), protocol: defaultProtocol, atMost: 1000 };
const times = timesIn(facts[0]!.atMs, "Europe/Vienna");
const view = (change: Partial<typeof all> = {}) => viewEntries({ ...all, ...change, times });

/** A row as it is read. */
const told = ({ timeText, entries, noteText, notSaved, heardText }: EntryRow): readonly string[] => [
  timeText,
  entries.map(({ text, isStruck }) => (isStruck ? `(${text})` : text)).join(" / "),
  noteText,
  notSaved ? "not saved" : "",
  heardText,
];
const rowOf = (holds: string, change: Partial<typeof all> = {}): readonly string[] | undefined =>
  view(change)
    .rows.map(told)
    .find((cells) => cells.some((cell) => cell.includes(holds)));

describe("the entries on the screen", () => {
  it.each<[string, string, readonly string[]]>([
    [
      "one breath is one row",
      "SBP 130",
      ["14:03:00", "SBP 130 mmHg, cuff / DBP 70 mmHg, cuff / SpO2 96 %, cuff", "", "", "“as said”"],
    ],
    [
      "what was struck stays, with when and why",
      "SBP 210",
      ["14:05:00", "(SBP 210 mmHg) / (DBP 100 mmHg)", "struck 14:05:20, disregarded", "", "“as said”"],
    ],
    [
      "a drug that was struck",
      "40 mg",
      ["14:08:10", "(Ketamine 40 mg given)", "struck 14:08:20, disregarded", "", "“as said”"],
    ],
    [
      "what was asked back and never confirmed",
      "NOT CONFIRMED",
      ["14:07:00", "", "NOT CONFIRMED, does not count; asked: One five or five zero?", "", "“icp fifteen”"],
    ],
  ])("%s", (_what, holds, row) => {
    expect(rowOf(holds)).toEqual(row);
  });

  it("begin with the newest, and tell that there are older ones", () => {
    const { rows, hasOlder } = view({ atMost: 3 });
    expect(rows.map(told).map(([time]) => time)).toEqual(["15:32:00", "14:43:00", "14:42:00"]);
    expect(hasOlder).toBe(true);
    expect(view().hasOlder).toBe(false);
  });

  it("are those of the print, in the other order", () => {
    const html = c.html();
    const table = html.slice(html.indexOf("In the order in which it was said"));
    const printed = rowsWith(table, "").map(([time]) => time);
    expect(view().rows.map(({ timeText }) => timeText)).toEqual(printed.slice(1).reverse());
    expect(textOf(table)).toContain("SBP 130 mmHg");
  });

  it("are marked as not saved until they are, all of a breath with one of it", () => {
    const last = facts.at(-1)!;
    const unsavedIds = new Set([last.id]);
    expect(rowOf("MAP 91", { unsavedIds })?.[3]).toBe("not saved");
    expect(view({ unsavedIds }).rows.filter(({ notSaved }) => notSaved)).toHaveLength(1);
    const ofType = (type: string) => facts.find((fact) => fact.type === type)!.id;
    expect(rowOf("asked:", { unsavedIds: new Set([ofType("question.asked")]) })?.[3]).toBe("not saved");
    expect(rowOf("SBP 210", { unsavedIds: new Set([ofType("entry.struck")]) })?.[2]).toBe(
      "struck 14:05:20, disregarded (not saved)",
    );
  });

  it("show a question that still stands as not yet confirmed", () => {
    const open = facts.slice(
      0,
      facts.findIndex(({ type }) => type === "question.closed"),
    );
    expect(rowOf("asked:", { facts: open })?.[2]).toMatch(/^NOT YET CONFIRMED/u);
  });
});
