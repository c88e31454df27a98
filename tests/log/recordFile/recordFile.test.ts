import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sha256HexHere } from "../../../src/adapters/files/webCrypto.ts";
import { createMemoryFactStore } from "../../../src/adapters/storage/memoryFactStore.ts";
import { Session } from "../../../src/app/session.ts";
import { emptyCase, type CaseState } from "../../../src/log/caseState.ts";
import { sealFacts } from "../../../src/log/chain/sealFacts.ts";
import type { Fact } from "../../../src/log/facts.ts";
import { MAX_RECORD_CHARACTERS, readRecordFile } from "../../../src/log/recordFile/readRecordFile.ts";
import { writeRecordFile } from "../../../src/log/recordFile/writeRecordFile.ts";
import { reduceFact, reduceFacts } from "../../../src/log/reduceFact.ts";
import { testContext } from "../../app/playCase.ts";
import { anyMoves, moves, type Move } from "../../app/randomCase.ts";

const sha256Hex = sha256HexHere();
const context = testContext();
const T0 = 1_800_000_000_000;

async function fileOf(facts: readonly Fact[]): Promise<string> {
  const sealed = await sealFacts(facts, undefined, sha256Hex);
  const [opened] = facts;
  if (!sealed.ok || opened?.type !== "case.opened") throw new Error("no case");
  return writeRecordFile(opened, sealed.value.entries);
}

/** Plays a case as the app does; what it kept in memory at the end, and what it wrote. */
async function play(all: readonly Move[]): Promise<{ readonly facts: readonly Fact[]; readonly state: CaseState }> {
  const store = createMemoryFactStore();
  const session = new Session({ context, store, newCaseId: () => "c" });
  let nowMs = T0;
  await session.start(nowMs);
  for (const move of all) {
    if (move.kind === "wait") {
      nowMs += move.seconds * 1000;
      await session.tick(nowMs);
    } else {
      const candidates = [{ words: move.words, score: 0 }];
      await session.hear({ by: "typed", candidates, endedAtMs: nowMs }, nowMs);
    }
    await session.clockMoved({ kind: "set", byMs: all.length * 1000, nowMs });
    if (move.kind === "wait") await session.clockMoved({ kind: "slept", forMs: move.seconds * 1000, nowMs });
  }
  const facts = await store.load();
  if (!facts.ok) throw new Error(facts.error.kind);
  return { facts: facts.value, state: session.state.log };
}

const short: readonly Fact[] = (
  await play([
    { kind: "say", words: "map eighty two" },
    { kind: "say", words: "icp fifteen" },
  ])
).facts;
const file = await fileOf(short);

describe("a case that is saved to a file", () => {
  it.each([
    ["a list with all that may come between", moves],
    ["whatever can be said", anyMoves],
  ])("is read back to the same state, however it was folded, byte for byte: %s", async (_what, of) => {
    await fc.assert(
      fc.asyncProperty(of, async (all) => {
        const { facts, state } = await play(all);
        const text = await fileOf(facts);
        const read = await readRecordFile(text, sha256Hex);
        if (!read.ok) throw new Error(JSON.stringify(read.error));
        expect(read.value.facts).toEqual(facts);
        expect(reduceFacts(read.value.facts)).toEqual(state);
        expect(facts.reduce(reduceFact, emptyCase)).toEqual(state);
        expect(writeRecordFile(read.value, read.value.entries)).toBe(text);
      }),
      { numRuns: 40 },
    );
  });

  it("names the case and says whether there was a patient", async () => {
    expect(await readRecordFile(file, sha256Hex)).toMatchObject({
      value: { caseId: "c", label: expect.stringMatching(/^[a-z]+ [a-z]+ [a-z]+$/u) as string, rehearsal: false },
    });
  });
});

describe("a file that cannot be read", () => {
  const entriesIn = (text: string): readonly object[] => (JSON.parse(text) as { entries: object[] }).entries;
  const spoilt = (change: (json: { entries: { fact: { value?: number } }[] }) => void): string => {
    const json = JSON.parse(file) as { entries: { fact: { value?: number } }[] };
    change(json);
    return JSON.stringify(json);
  };
  it.each([
    ["empty", "", "not-json"],
    ["cut short", file.slice(0, file.length / 2), "not-json"],
    ["no object", "7", "not-a-record"],
    ["null", "null", "not-a-record"],
    ["another object", '{"format":"something"}', "not-a-record"],
    ["of a later version", file.replace('"v":1', '"v":2'), "newer-version"],
    ["without entries", '{"format":"tragus-record","v":1,"caseId":"c"}', "not-a-record"],
    ["with entries that are none", '{"format":"tragus-record","v":1,"caseId":"c","entries":[1,null,"x"]}', "altered"],
    ["with no entry", '{"format":"tragus-record","v":1,"caseId":"c","entries":[]}', "not-a-record"],
    ["under another name", file.replaceAll('"caseId":"c"', '"caseId":"d"'), "altered"],
    [
      "deep in a fact",
      file.replace('"fact":{', `"fact":{"deep":${"[".repeat(50_000)}${"]".repeat(50_000)},`),
      "altered",
    ],
    ["of more entries than any case has", file.replace(/\[.*\]/su, `[${"1,".repeat(100_000)}1]`), "too-large"],
    ["deep in brackets", "[".repeat(200_000), "not-json"],
    [
      "deep in brackets, each closed",
      `{"format":"tragus-record","v":1,"caseId":"c","entries":[{"hash":"${"f".repeat(64)}","fact":${"[".repeat(200_000)}${"]".repeat(200_000)}}]}`,
      "altered",
    ],
    [
      "with a number beyond all numbers",
      `{"format":"tragus-record","v":1,"caseId":"c","entries":[{"hash":"${"f".repeat(64)}","n":1e400}]}`,
      "altered",
    ],
    ["naming the prototype", '{"__proto__":{"format":"tragus-record"},"v":1}', "not-a-record"],
    [
      "with another value",
      spoilt(({ entries }) => entries.forEach(({ fact }) => fact.value !== undefined && (fact.value = 12))),
      "altered",
    ],
    ["without its last entry but one", spoilt(({ entries }) => void entries.splice(-2, 1)), "altered"],
    ["with an entry twice", spoilt(({ entries }) => void entries.push(entries[1]!)), "altered"],
  ])("%s, is refused with what is wrong", async (_what, text, kind) => {
    expect(await readRecordFile(text, sha256Hex)).toMatchObject({ ok: false, error: { kind } });
  });

  const changes: readonly (readonly [string, (fact: Fact) => object])[] = [
    ["a time that no calendar has", (fact: Fact) => ({ ...fact, atMs: 1e300 })],
    [
      "a struck entry that names none",
      (fact: Fact) => (fact.type === "question.asked" ? { ...fact, type: "entry.struck" } : fact),
    ],
  ];
  it.each(changes)("is no record where its chain holds and it has %s", async (_what, change) => {
    const changed = await fileOf(short.map(change) as Fact[]);
    expect(await readRecordFile(changed, sha256Hex)).toMatchObject({ ok: false });
  });

  it("hands on nothing that the chain does not know of", async () => {
    const more = JSON.stringify({ ...JSON.parse(file), entries: entriesIn(file).map((e) => ({ ...e, opening: 1e6 })) });
    const read = await readRecordFile(more, sha256Hex);
    expect(read).toMatchObject({ ok: true, value: { entries: entriesIn(file) } });
    expect(JSON.stringify(read)).not.toContain('opening"');
  });

  it("over the size of any case, is not even parsed", async () => {
    const text = " ".repeat(MAX_RECORD_CHARACTERS + 1);
    expect(await readRecordFile(text, sha256Hex)).toEqual({
      ok: false,
      error: { kind: "too-large", characters: text.length },
    });
  });

  it("never throws, whatever it holds", async () => {
    await fc.assert(
      fc.asyncProperty(fc.json(), async (entries) => {
        const text = `{"format":"tragus-record","v":1,"caseId":"c","entries":[${entries}]}`;
        expect((await readRecordFile(text, sha256Hex)).ok).toBe(false);
      }),
    );
  });
});
