import { describe, expect, it } from "vitest";
import type { FactRecord } from "../../../src/adapters/storage/factDatabase.ts";
import { ok } from "../../../src/core/result.ts";
import { FIRST_PREV } from "../../../src/log/chain/entry.ts";
import { hashOfRecord } from "./checkChain.ts";
import { factsOf, type TurnName } from "./crashTurns.ts";
import { judgeFound } from "./judgeFound.ts";

const turn = (launch: number, number: number): TurnName => ({ launch, turn: number });

/** As a store would hold these turns; the first of launches 0 and 3 opens a case. */
function recordsOf(turns: readonly TurnName[]): readonly FactRecord[] {
  const records: FactRecord[] = [];
  let openings = 0;
  for (const name of turns) {
    for (const fact of factsOf(name, name.turn === 0 && name.launch % 3 === 0)) {
      const opening = fact.type === "case.opened" ? { opening: ++openings } : {};
      const last = records.at(-1);
      const caseId = fact.type === "case.opened" ? fact.caseId : last!.caseId;
      const isNext = caseId === last?.caseId;
      const place = { caseId, n: isNext ? last.n + 1 : 0, caseMs: 0, wallMs: fact.atMs, protocolHash: null };
      const unsealed = { ...place, fact, prev: isNext ? last.hash : FIRST_PREV, hash: "", ...opening };
      records.push({ ...unsealed, hash: hashOfRecord(unsealed) });
    }
  }
  return records;
}

const WHOLE = [turn(0, 0), turn(0, 1), turn(0, 2), turn(1, 0), turn(3, 0), turn(3, 1)];
const whole = recordsOf(WHOLE);
const lastOf = (records: readonly FactRecord[]) =>
  records.filter(({ caseId }) => caseId === records.at(-1)?.caseId).map(({ fact }) => fact);
const judge = (records: readonly FactRecord[], acknowledged: readonly TurnName[] = WHOLE, loaded = lastOf(records)) =>
  judgeFound({ loaded: ok(loaded), records }, acknowledged);
const renumbered = (records: readonly FactRecord[]): readonly FactRecord[] =>
  records.map((record, i) => ({ ...record, n: records.slice(0, i).filter((r) => r.caseId === record.caseId).length }));
const without = (left: (record: FactRecord) => boolean) => renumbered(whole.filter((record) => !left(record)));
const isOf = (name: TurnName) => (record: FactRecord) => record.fact.id.startsWith(`${name.launch}.${name.turn}-`);
const long = WHOLE.find((name) => name.turn > 0 && factsOf(name, false).length > 2)!;

describe("what a launch finds", () => {
  it("is good where everything is there, acknowledged or not", () => {
    expect(judge(whole)).toEqual([]);
    expect(judge(whole, [])).toEqual([]);
    expect(judge([], [])).toEqual([]);
  });

  it.each([
    ["nothing is left", [], "lost"],
    ["an acknowledged turn is missing at the end", without(isOf(turn(3, 1))), "lost"],
    ["a turn is missing in the middle", without(isOf(turn(0, 1))), "order"],
    ["a turn has lost its end", without((r) => r.fact.id === factsOf(long, false).at(-1)?.id), "torn"],
    ["a turn has lost its first fact", without((r) => r.fact.id === factsOf(long, false)[0]?.id), "torn"],
    ["a value is another one", whole.map((r, i) => (i === 2 ? { ...r, fact: { ...r.fact, value: 1 } } : r)), "altered"],
    ["a fact is nobody's", whole.map((r, i) => (i === 2 ? { ...r, fact: { ...r.fact, id: "x" } } : r)), "altered"],
    ["two turns have changed places", recordsOf([turn(0, 0), turn(0, 2), turn(0, 1)]), "order"],
    ["a turn is there twice", recordsOf([turn(0, 0), turn(0, 1), turn(0, 1)]), "altered"],
    ["a launch comes after a later one", recordsOf([turn(0, 0), turn(2, 0), turn(1, 0)]), "order"],
    ["an entry has the wrong place", whole.map((r, i) => (i === 3 ? { ...r, n: 77 } : r)), "order"],
    ["a hash is another one", whole.map((r, i) => (i === 2 ? { ...r, hash: r.prev } : r)), "chain"],
    ["an entry names another before it", whole.map((r, i) => (i === 2 ? { ...r, prev: FIRST_PREV } : r)), "chain"],
    ["no case was opened", whole.map(({ opening: _, ...r }) => r), "order"],
  ] as const)("is not where %s", (_what, records, kind) => {
    expect(judge(records as readonly FactRecord[]).map((fault) => fault.kind)).toContain(kind);
  });

  it("is not where the store does not give back what lies in it, or refuses", () => {
    expect(judge(whole, WHOLE, [])).toEqual([{ kind: "load", text: "not what lies in the database" }]);
    const error = { kind: "unavailable", detail: "invented" } as const;
    expect(judgeFound({ loaded: { ok: false, error }, records: whole }, WHOLE).map(({ kind }) => kind)).toEqual([
      "load",
    ]);
  });
});
