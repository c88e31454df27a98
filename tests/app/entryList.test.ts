import { beforeEach, describe, expect, it } from "vitest";
import { EntryList } from "../../src/app/entryList.ts";
import type { EntriesView } from "../../src/app/view/entries.ts";
import type { Fact } from "../../src/log/facts.ts";
import { defaultProtocol } from "../../src/protocol/defaultProtocol.ts";
import { fullCase, MARK } from "../export/printed/printedCase.ts";

describe("the list of entries", () => {
  const whole = fullCase().builder.facts;
  let facts: readonly Fact[];
  let unsaved: ReadonlySet<string>;
  let shown: EntriesView[];
  let list: EntryList;

  beforeEach(() => {
    facts = whole;
    unsaved = new Set();
    shown = [];
    list = new EntryList({
      kept: { facts: () => facts, unsavedIds: () => unsaved },
      context: () => ({ protocol: defaultProtocol, mark: MARK }),
      zone: "Europe/Vienna",
      onEntries: (view) => void shown.push(view),
    });
    list.refresh();
  });

  it("shows the latest few, all on demand, and the few again", () => {
    expect(shown.at(-1)).toMatchObject({ hasOlder: true, isLong: false });
    expect(shown.at(-1)?.rows).toHaveLength(6);
    list.showMore(true);
    expect(shown.at(-1)).toMatchObject({ hasOlder: false, isLong: true });
    expect(shown.at(-1)?.rows.length).toBeGreaterThan(12);
    list.showMore(false);
    expect(shown.at(-1)?.rows).toHaveLength(6);
  });

  it("is not made again while nothing is new", () => {
    list.refresh();
    expect(shown).toHaveLength(1);
  });

  it("tells when a fact that waited was written", () => {
    const last = whole.at(-1)!;
    unsaved = new Set([last.id]);
    list.refresh();
    expect(shown.at(-1)?.rows[0]?.notSaved).toBe(true);
    unsaved = new Set();
    list.refresh();
    expect(shown.at(-1)?.rows[0]?.notSaved).toBe(false);
  });

  it("holds nothing of a case that was erased", () => {
    facts = [];
    list.refresh();
    expect(shown.at(-1)).toEqual({ rows: [], hasOlder: false, isLong: false });
  });
});
