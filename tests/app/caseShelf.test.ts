import { beforeEach, describe, expect, it } from "vitest";
import { CaseShelf, type ShelfView } from "../../src/app/caseShelf.ts";
import type { CaseRead } from "../../src/app/ports.ts";
import { fail, ok } from "../../src/core/result.ts";
import { sha256HexHere } from "../../src/adapters/files/webCrypto.ts";
import { defaultProtocol } from "../../src/protocol/defaultProtocol.ts";
import { MARK, PrintedCase } from "../export/printed/printedCase.ts";

describe("a case of before", () => {
  const { facts } = new PrintedCase().builder;
  const old: CaseRead = { entries: [], facts, faults: [] };
  let stored: string[];
  let views: ShelfView[];
  let shelf: CaseShelf;
  let isBroken: boolean;
  const last = (): ShelfView => views.at(-1)!;

  beforeEach(async () => {
    stored = ["open", "old"];
    views = [];
    isBroken = false;
    shelf = new CaseShelf({
      archive: {
        cases: async () =>
          ok(stored.map((caseId) => ({ caseId, label: caseId, isClosed: caseId === "old", entries: 1 }))),
        read: async () => (isBroken ? fail({ kind: "unavailable", detail: "invented" }) : ok(old)),
        add: async () => ok(undefined),
        erase: async (caseId) => {
          if (isBroken) return fail({ kind: "write-failed", detail: "invented" });
          stored = stored.filter((id) => id !== caseId);
          return ok(undefined);
        },
      },
      sha256Hex: sha256HexHere(),
      zone: "UTC",
      context: () => ({ protocol: defaultProtocol, mark: MARK }),
      open: () => ({ ...new PrintedCase().recorded(), caseId: "open", label: "alfa one one" }),
      onChange: (view) => void views.push(view),
    });
    await shelf.choose("old");
  });

  it("is erased once its label is typed, and the open one is chosen again", async () => {
    expect(last().eraseText).toBe(
      "To erase case kilo four seven from this device, type: kilo four seven. It cannot be brought back.",
    );
    await shelf.erase("  Kilo  four seven ");
    expect(stored).toEqual(["open"]);
    expect(last()).toMatchObject({
      notice: "Erased from this device: case kilo four seven. Files saved from it are not.",
      failed: false,
    });
    expect(last().cases).toMatchObject([{ caseId: "open", chosen: true }]);
    expect(last().eraseText).toBeUndefined();
  });

  it.each(["", "kilo four", "kilo four eight", "erase"])("stays where %j is typed, and stays chosen", async (typed) => {
    await shelf.erase(typed);
    expect(stored).toEqual(["open", "old"]);
    expect(last()).toMatchObject({ notice: "Not erased: type kilo four seven.", failed: true });
    expect(last().eraseText).toBeDefined();
  });

  it("stays, and that is said, where the store fails", async () => {
    isBroken = true;
    await shelf.erase("kilo four seven");
    expect(last()).toMatchObject({ failed: true });
    expect(last().eraseText).toBeDefined();
  });

  it("is what is printed and saved until another one was read", async () => {
    const choosing = shelf.choose("other");
    expect(shelf.recorded().label).toBe("kilo four seven");
    await choosing;
    isBroken = true;
    await shelf.choose("other");
    expect(shelf.recorded().label).toBe("kilo four seven");
    expect(last().failed).toBe(true);
  });

  it("is none while the open one is chosen: that is erased by saying so", async () => {
    await shelf.choose("open");
    expect(last().eraseText).toBeUndefined();
    await shelf.erase("alfa one one");
    expect(stored).toEqual(["open", "old"]);
  });
});
