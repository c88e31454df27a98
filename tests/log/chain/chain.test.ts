import { createHash } from "node:crypto";
import canonicalize from "canonicalize";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ok } from "../../../src/core/result.ts";
import { checkEntries } from "../../../src/log/chain/checkEntries.ts";
import { FIRST_PREV, type LogEntry } from "../../../src/log/chain/entry.ts";
import { sealFacts, type Sha256Hex } from "../../../src/log/chain/sealFacts.ts";
import type { Fact } from "../../../src/log/facts.ts";

// The judge of the hash is Node's own, and not the one that the app uses.
const sha256Hex: Sha256Hex = async (text) => ok(createHash("sha256").update(text, "utf8").digest("hex"));

const opened: Fact = {
  v: 2,
  id: "a-0",
  atMs: 1_000,
  type: "case.opened",
  caseId: "a",
  label: "kilo four seven",
  rehearsal: false,
  protocol: { name: "test", version: "1", hash: "11" },
};
const fact = (n: number, more: object): Fact => ({ v: 2, id: `a-${n}`, atMs: 1_000 * (n + 1), ...more }) as Fact;
const facts: readonly Fact[] = [
  opened,
  fact(1, { type: "list.read", mode: "all" }),
  fact(2, { type: "clock.changed", byMs: 3_600_000 }),
  fact(3, { type: "protocol.replaced", protocol: { name: "other", version: "2", hash: "22" } }),
  fact(4, { type: "list.read", mode: "off" }),
];

async function sealed(of: readonly Fact[] = facts): Promise<readonly LogEntry[]> {
  const result = await sealFacts(of, undefined, sha256Hex);
  if (!result.ok) throw new Error(result.error);
  return result.value.entries;
}

describe("entries in a chain", () => {
  it("carry case time, the device's time, the protocol that counted, and the hash of the one before", async () => {
    const entries = await sealed();
    expect(entries.map(({ n, caseMs, wallMs, protocolHash }) => [n, caseMs, wallMs, protocolHash])).toEqual([
      [0, 0, 1_000, "11"],
      [1, 1_000, 2_000, "11"],
      [2, 2_000, 3_603_000, "11"],
      [3, 3_000, 3_604_000, "22"],
      [4, 4_000, 3_605_000, "22"],
    ]);
    expect(entries.map(({ prev }) => prev)).toEqual([FIRST_PREV, ...entries.slice(0, -1).map(({ hash }) => hash)]);
  });

  it("have the SHA-256 of their canonical JSON (RFC 8785) without the hash itself", async () => {
    for (const { hash, ...rest } of await sealed())
      expect(createHash("sha256").update(canonicalize(rest)!).digest("hex")).toBe(hash);
  });

  it("are the same however the facts came", async () => {
    const all = await sealed();
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: 4 }), async (cut) => {
        const first = await sealFacts(facts.slice(0, cut), undefined, sha256Hex);
        if (!first.ok) throw new Error(first.error);
        const rest = await sealFacts(facts.slice(cut), first.value.tail, sha256Hex);
        expect(rest.ok && [...first.value.entries, ...rest.value.entries]).toEqual(all);
      }),
    );
  });

  it("are none before a case is opened", async () => {
    expect(await sealFacts(facts.slice(1), undefined, sha256Hex)).toEqual({ ok: false, error: "no case is open" });
  });
});

describe("a chain that is checked", () => {
  it("gives back every fact, and goes on from its end", async () => {
    const { tail, ...checked } = await checkEntries("a", await sealed(), sha256Hex);
    expect(checked).toEqual({ facts, faults: [] });
    const more = fact(5, { type: "list.read", mode: "all" });
    const next = await sealFacts([more], tail, sha256Hex);
    if (!next.ok) throw new Error(next.error);
    expect([...(await sealed()), ...next.value.entries]).toEqual(await sealed([...facts, more]));
  });

  const SPOILT: readonly [string, (entries: LogEntry[]) => unknown[], readonly string[], readonly number[]][] = [
    ["one is left out", (e) => e.filter(({ n }) => n !== 2), ["Entry 2 is missing."], [0, 1, 3, 4]],
    ["several are left out", (e) => e.filter(({ n }) => n < 1 || n > 3), ["Entries 1 to 3 are missing."], [0, 4]],
    [
      "one is of another case",
      (e) => e.map((entry) => (entry.n === 1 ? { ...entry, caseId: "b" } : entry)),
      ["Entry 1 was altered."],
      [0, 2, 3, 4],
    ],
    ["the last is torn", (e) => [...e.slice(0, 4), { caseId: "a", n: 4 }], ["Entry 4 has no hash."], [0, 1, 2, 3]],
    ["the last is no entry", (e) => [...e.slice(0, 4), null], ["Entry 4 has no hash."], [0, 1, 2, 3]],
    ["the first is torn", (e) => [{ caseId: "a", n: 0 }, ...e.slice(1)], ["Entry 0 has no hash."], [1, 2, 3, 4]],
  ];
  it.each(SPOILT)("tells where %s, and gives back the others", async (_what, spoil, faults, left) => {
    const checked = await checkEntries("a", spoil([...(await sealed())]), sha256Hex);
    expect(checked.faults).toEqual(faults);
    expect(checked.facts).toEqual(left.map((n) => facts[n]));
    expect(checked.tail).toMatchObject({ caseId: "a", n: 5 });
  });

  it("is told entry by entry where it is hostile and very long", async () => {
    // As many as a file of the largest size can hold hang where the work for an entry grows with those before it.
    const stored = Array.from({ length: 200_000 }, (_, n) => ({ caseId: "a", n, hash: "f".repeat(64) }));
    const { faults, tail } = await checkEntries("a", stored, async () => ok("0"));
    expect([faults.length, faults.at(-1), tail]).toEqual([200_000, "Entry 199999 was altered.", undefined]);
  });

  it("tells where a part of it was sealed anew by somebody", async () => {
    const entries = await sealed();
    const forged = await sealed(facts.map((f, n) => (n === 1 ? ({ ...f, mode: "killer" } as Fact) : f)));
    const { faults } = await checkEntries("a", [entries[0], forged[1], ...entries.slice(2)], sha256Hex);
    expect(faults).toEqual(["Entry 2 does not follow the one before it."]);
  });

  it("finds any single change of any value in any entry", async () => {
    const entries = await sealed();
    const leaves = (value: unknown, path: readonly string[]): readonly (readonly string[])[] =>
      typeof value === "object" && value !== null
        ? Object.entries(value).flatMap(([key, part]) => leaves(part, [...path, key]))
        : [path];
    const all = entries.flatMap((entry, n) => leaves(entry, [String(n)]));
    for (const path of all) {
      const copy = structuredClone(entries) as unknown as Record<string, unknown>;
      const last = path.at(-1)!;
      const holder = path.slice(0, -1).reduce((part, key) => part[key] as Record<string, unknown>, copy);
      const before = holder[last];
      if (typeof before === "number") holder[last] = before + 1;
      else if (typeof before === "boolean") holder[last] = !before;
      else holder[last] = `${String(before)}x`;
      const { faults } = await checkEntries("a", Object.values(copy), sha256Hex);
      expect([path.join("."), faults.length > 0]).toEqual([path.join("."), true]);
    }
  });
});
