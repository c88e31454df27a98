import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sha256HexHere } from "../../../src/adapters/files/webCrypto.ts";
import { sealFacts } from "../../../src/log/chain/sealFacts.ts";
import type { Fact } from "../../../src/log/facts.ts";
import { readRecordFile } from "../../../src/log/recordFile/readRecordFile.ts";
import { writeRecordFile } from "../../../src/log/recordFile/writeRecordFile.ts";

const sha256Hex = sha256HexHere();

/** What Python, with nothing of ours, finds in the texts of record files. */
function judge(texts: readonly string[]): readonly (readonly number[] | "not-json")[] {
  const script = join(import.meta.dirname, "judge_chain.py");
  const verdicts = execFileSync("python3", [script], { input: JSON.stringify(texts), encoding: "utf8" });
  return JSON.parse(verdicts) as readonly (readonly number[] | "not-json")[];
}

const record = (name: string): string =>
  readFileSync(join(import.meta.dirname, "../../cli/review/records", `${name}.json`), "utf8");

// Doubles of every size, and texts with every sign but halves of pairs, which UTF-8 has not.
const text = fc.string({ unit: "binary", maxLength: 8 });
const odd = fc.dictionary(text, fc.oneof(fc.double({ noNaN: true, noDefaultInfinity: true }), text, fc.boolean()), {
  noNullPrototype: true,
});

const opened: Extract<Fact, { readonly type: "case.opened" }> = {
  v: 2,
  id: "a-0",
  atMs: 1_800_000_000_000,
  type: "case.opened",
  caseId: "a",
  label: "kilo four seven",
  rehearsal: false,
  protocol: { name: "test", version: "1", hash: "11" },
};

async function fileOf(parts: readonly object[]): Promise<string> {
  const more = parts.map((part, i) => ({ ...part, v: 2, id: `a-${i + 1}`, atMs: opened.atMs + i, type: "odd" }));
  const sealed = await sealFacts([opened, ...(more as unknown as Fact[])], undefined, sha256Hex);
  if (!sealed.ok) throw new Error(sealed.error);
  return writeRecordFile(opened, sealed.value.entries);
}

const files = (count: number): Promise<readonly string[]> =>
  Promise.all(fc.sample(fc.array(odd, { maxLength: 5 }), { numRuns: count }).map(fileOf));

describe("the chain, judged from outside", () => {
  it("holds in the records that lie here, but for the one that was altered and the one that was cut off", () => {
    const names = ["2026-05-first", "2026-05-second", "2026-05-taught", "2026-06-altered", "2026-06-cut-off"];
    expect(judge(names.map(record))).toEqual([[], [], [], [4], "not-json"]);
  });

  it("does not hold where an entry is left out, or was sealed anew alone", async () => {
    const lines = (await fileOf([{}, {}, {}])).split("\n");
    const forged = (await fileOf([{ other: 1 }, {}, {}])).split("\n");
    expect(judge([lines.toSpliced(2, 1).join("\n"), lines.with(2, forged[2]!).join("\n")])).toEqual([[1, 2], [2]]);
  });

  it("holds whatever numbers and texts a fact has", async () => {
    const all = await files(300);
    expect(judge(all)).toEqual(all.map(() => []));
  });

  it("shows one altered sign to the judge and to our reader alike, wherever it is", async () => {
    const good = record("2026-05-second");
    const from = good.indexOf("[\n") + 2;
    const places = fc.sample(fc.integer({ min: from, max: good.lastIndexOf("\n]") - 1 }), 300);
    const altered = places.map((at) => good.slice(0, at) + (good[at] === "7" ? "3" : "7") + good.slice(at + 1));
    const ours = await Promise.all(altered.map((one) => readRecordFile(one, sha256Hex)));
    expect(ours.map(({ ok }) => ok)).toEqual(altered.map(() => false));
    expect(judge(altered)).not.toContainEqual([]);
  });
});
