import { describe, expect, it } from "vitest";
import { keepFacts } from "../../src/app/keptFacts.ts";
import { RecordOut, type RecordOutOptions } from "../../src/app/recordOut.ts";
import type { ExportFile, FactStore } from "../../src/app/ports.ts";
import type { RecordView } from "../../src/app/view/record.ts";
import { fail, ok } from "../../src/core/result.ts";
import type { Fact } from "../../src/log/facts.ts";
import { PrintedCase } from "../export/printed/printedCase.ts";

const recorded = () => new PrintedCase().recorded();

function made(change: Partial<RecordOutOptions> = {}) {
  const seen = {
    views: [] as RecordView[],
    saved: [] as ExportFile[],
    prints: 0,
    make: (): string | undefined => undefined,
  };
  const out = new RecordOut({
    clock: { nowMs: () => 1000 },
    zone: "UTC",
    recorded,
    loadPrinted: async () => (about, at) => `${about.label} ${at.nowMs} ${at.zone}`,
    exporters: { json: async () => [{ name: "record.json", type: "application/json", text: "{}" }] },
    saver: {
      save: (file) => {
        seen.saved.push(file);
        return ok(undefined);
      },
    },
    printer: { onPrint: (make) => void (seen.make = make), print: () => void (seen.prints += 1) },
    onChange: (view) => seen.views.push(view),
    ...change,
  });
  return { out, seen, last: () => seen.views.at(-1)! };
}

describe("the record leaves the device", () => {
  it("offers the forms that there are, and says nothing before one was asked for", () => {
    expect(made().last()).toMatchObject({
      exports: [{ kind: "json", label: "Save as JSON" }],
      notice: "",
      failed: false,
    });
    expect(made({ exporters: {} }).last().exports).toEqual([]);
  });

  it("names a file after the case's label alone, and tells that it lies outside from then on", async () => {
    const { out, seen, last } = made();
    await out.export("json");
    expect(seen.saved).toEqual([{ name: "tragus-kilo-four-seven-record.json", type: "application/json", text: "{}" }]);
    expect(last().notice).toContain("tragus-kilo-four-seven-record.json");
    expect(last().notice).toContain("lies outside Tragus from now on");
  });

  it("marks a rehearsal in the name, and lets nothing into it that a path could be made of", async () => {
    const { out, seen } = made({ recorded: () => new PrintedCase().recorded({ label: "../kilo 4", rehearsal: true }) });
    await out.export("json");
    expect(seen.saved[0]?.name).toBe("tragus-kilo-4-rehearsal-record.json");
  });

  it.each<[string, Partial<RecordOutOptions>]>([
    ["the files cannot be made", { exporters: { json: () => Promise.reject(new Error("no room")) } }],
    ["the browser takes none", { saver: { save: () => fail({ kind: "not-saved", detail: "no room" }) } }],
    [
      "the case cannot be read",
      {
        recorded: () => {
          throw new Error("no room");
        },
      },
    ],
  ])("says so where %s", async (_what, change) => {
    const { out, last } = made(change);
    await out.export("json");
    expect(last()).toMatchObject({ failed: true, notice: "The record did not leave the device: no room" });
  });

  it("has the document ready for the browser's own print once it is prepared", async () => {
    const { out, seen } = made();
    expect(seen.make()).toBeUndefined();
    await out.prepare();
    expect(seen.make()).toBe("kilo four seven 1000 UTC");
  });

  it("prints by the button, and says so where what makes the document is not to be had", async () => {
    const good = made();
    await good.out.print();
    expect([good.seen.prints, good.last().failed]).toEqual([1, false]);
    const bad = made({ loadPrinted: () => Promise.reject(new Error("gone")) });
    await bad.out.prepare();
    await bad.out.print();
    expect([bad.seen.prints, bad.last().failed]).toEqual([0, true]);
  });
});

describe("facts kept beside their store", () => {
  const [first, second, third] = [1, 2, 3].map((n): Fact => ({
    v: 2,
    id: `${n}`,
    atMs: n,
    type: "clock.changed",
    byMs: n,
  })) as [Fact, Fact, Fact];

  it("are those loaded, those written, and those that wait for another try", async () => {
    let full = false;
    const store: FactStore = {
      load: async () => ok([first]),
      erase: async () => ok(undefined),
      append: async () => (full ? fail({ kind: "quota-exceeded" }) : ok(undefined)),
    };
    const kept = keepFacts(store);
    await kept.store.load();
    full = true;
    await kept.store.append([second]);
    expect(kept.facts()).toEqual([first, second]);
    expect([...kept.unsavedIds()]).toEqual(["2"]);
    await kept.store.append([second, third]);
    expect(kept.facts()).toEqual([first, second, third]);
    expect([...kept.unsavedIds()]).toEqual(["2", "3"]);
    full = false;
    await kept.store.append([second, third]);
    expect(kept.facts()).toEqual([first, second, third]);
    expect([...kept.unsavedIds()]).toEqual([]);
  });
});
