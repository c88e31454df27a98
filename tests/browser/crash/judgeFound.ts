import { isDeepStrictEqual } from "node:util";
import type { FactRecord } from "../../../src/adapters/storage/factDatabase.ts";
import { checkChain } from "./checkChain.ts";
import type { Found } from "./crashMessages.ts";
import { factsOf, idOf, opensCase, turnOf, type TurnName } from "./crashTurns.ts";

/** What is wrong with what a launch found. */
export type CrashFault = {
  readonly kind:
    | "lost" // acknowledged, and not there
    | "torn" // a turn of which a part is there
    | "altered" // not what was given to the store
    | "order" // out of its place, or something before it is missing
    | "chain" // hashes that do not fit
    | "load"; // the store's own reading fails or differs from what lies in the database
  readonly text: string;
};

type Group = TurnName & { readonly records: readonly FactRecord[] };

/** Records that lie together and say that they are of one turn. */
function groupsOf(records: readonly FactRecord[]): readonly Group[] {
  const groups: (TurnName & { records: FactRecord[] })[] = [];
  for (const record of records) {
    const name = turnOf(record.fact) ?? { launch: NaN, turn: NaN };
    const last = groups.at(-1);
    if (last !== undefined && last.launch === name.launch && last.turn === name.turn) last.records.push(record);
    else groups.push({ ...name, records: [record] });
  }
  return groups;
}

/** A case is opened by the launches that are to, and by the first that finds none. */
function judgeTurn({ launch, turn, records }: Group, place: number): readonly CrashFault[] {
  const facts = records.map(({ fact }) => fact);
  const name = idOf({ launch, turn });
  if (Number.isNaN(launch)) return [{ kind: "altered", text: `the id ${String(facts[0]?.id)}` }];
  const opens = facts[0]?.type === "case.opened";
  if (opens !== (turn === 0 && (place === 0 || opensCase(launch))))
    return [{ kind: "altered", text: `${name}: where a case opens` }];
  const expected = factsOf({ launch, turn }, opens);
  if (isDeepStrictEqual(facts, expected)) return [];
  const ids = (list: readonly { readonly id: string }[]): readonly string[] => list.map(({ id }) => id);
  const isPart = facts.length < expected.length && facts.every(({ id }) => ids(expected).includes(id));
  return [{ kind: isPart ? "torn" : "altered", text: `${name}: ${ids(facts).join()} of ${ids(expected).join()}` }];
}

/** Turns follow each other as they were spoken: launch after launch, and in each from the first on without a gap. */
function judgeOrder(groups: readonly Group[]): readonly CrashFault[] {
  return groups.flatMap(({ launch, turn }, i): readonly CrashFault[] => {
    const before = groups[i - 1];
    const isNext =
      before?.launch === launch ? turn === before.turn + 1 : turn === 0 && !(launch <= (before?.launch ?? -1));
    const after = before === undefined ? "the beginning" : idOf(before);
    return isNext ? [] : [{ kind: "order", text: `${idOf({ launch, turn })} after ${after}` }];
  });
}

/** In each case the places count up from 0. */
function judgePlaces(records: readonly FactRecord[]): readonly CrashFault[] {
  return records.flatMap(({ caseId, n, opening }, i): readonly CrashFault[] => {
    const before = records[i - 1];
    const isFirst = before?.caseId !== caseId;
    const isRight = n === (isFirst ? 0 : before.n + 1) && (opening !== undefined) === isFirst;
    return isRight ? [] : [{ kind: "order", text: `entry ${n} of ${caseId}` }];
  });
}

function judgeLoaded({ loaded, records }: Found): readonly CrashFault[] {
  if (!loaded.ok) return [{ kind: "load", text: JSON.stringify(loaded.error) }];
  const newest = records.at(-1)?.caseId;
  const expected = records.filter(({ caseId }) => caseId === newest).map(({ fact }) => fact);
  return isDeepStrictEqual(loaded.value, expected) ? [] : [{ kind: "load", text: "not what lies in the database" }];
}

/**
 * Holds what a launch found against what was acknowledged and what can have been written.
 *
 * @param acknowledged turns of which the parent was told that they are saved.
 */
export function judgeFound(found: Found, acknowledged: readonly TurnName[]): readonly CrashFault[] {
  const groups = groupsOf(found.records);
  const there = new Set(groups.map(idOf));
  const lost = acknowledged.map(idOf).filter((name) => !there.has(name));
  return [
    ...lost.map((text): CrashFault => ({ kind: "lost", text })),
    ...groups.flatMap(judgeTurn),
    ...judgeOrder(groups),
    ...judgePlaces(found.records),
    ...checkChain(found.records).map((text): CrashFault => ({ kind: "chain", text })),
    ...judgeLoaded(found),
  ];
}

/** The turns that are there, acknowledged or not. */
export const turnsIn = ({ records }: Found): readonly TurnName[] => groupsOf(records);
