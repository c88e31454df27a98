import { VITALS, type VitalCode } from "../../../core/vitals.ts";
import type { StrikeIntent, StruckThing } from "../../../language/strikeIntent.ts";
import { sayCareFact } from "../../../language/sentences/careFact.ts";
import { sayReading } from "../../../language/sentences/reading.ts";
import { sayNumber } from "../../../language/sentences/number.ts";
import { sayThing } from "../../../language/sentences/strike.ts";
import type { StrikableCare } from "../../../log/careState.ts";
import type { CaseState, FindingEntry, VitalEntry } from "../../../log/caseState.ts";
import { linksOf } from "../../../log/chains.ts";
import type { Statement } from "../../../log/facts.ts";
import { valueOf } from "../../../log/statements.ts";
import { findMedicine } from "../../../protocol/findMedicine.ts";
import type { Protocol } from "../../../protocol/protocol.ts";
import { findFluid } from "../../../rules/fluidTotal.ts";

/** What stands in the record and was entered together, as far as it is of one thing. */
export type Entry = {
  readonly ids: readonly string[];
  readonly words: string;
  /** Unix ms; none where the record keeps no time of it. */
  readonly atMs: number | undefined;
  /** Its vitals, where it is a reading. */
  readonly vitals: readonly VitalEntry[];
  /** What was done, where it is that. */
  readonly fact?: StrikableCare;
  /** The numbers it can be called by. */
  readonly numbers: readonly number[];
  /** The second number of a pressure. */
  readonly low?: number;
};

const TOGETHER: Readonly<Partial<Record<StruckThing, readonly VitalCode[]>>> = {
  pressure: ["sbp", "dbp", "map"],
  gcs: ["gcsEye", "gcsVerbal", "gcsMotor"],
};
const codesOf = (of: StruckThing): readonly VitalCode[] => TOGETHER[of] ?? (of in VITALS ? [of as VitalCode] : []);

const nameIn =
  (protocol: Protocol) =>
  (id: string): string =>
    findMedicine(protocol, id)?.spokenName ?? findFluid(protocol, id)?.label ?? id;

type Piece = VitalEntry | FindingEntry;
const isVital = (piece: Piece): piece is VitalEntry => "value" in piece;

/** Each breath in which one of these was said, newest first. */
function* readingsOf(protocol: Protocol, log: CaseState, codes: readonly VitalCode[]): Generator<Entry> {
  const pieces: Piece[] = codes.flatMap((code): Piece[] => [
    ...[...linksOf(log.vitals[code])].map(({ entry }) => entry),
    ...(code in log.findings ? [...linksOf(log.findings[code as FindingEntry["code"]])] : []),
  ]);
  const newestFirst = pieces.toSorted((a, b) => b.seq - a.seq);
  for (const readingId of new Set(newestFirst.map((piece) => piece.readingId))) {
    const said = newestFirst.filter((piece) => piece.readingId === readingId).reverse();
    const vitals = said.filter(isVital);
    const findings = said.flatMap((piece) => (isVital(piece) ? [] : [piece]));
    const statement: Statement = { vitals: vitals.map(valueOf), findings };
    const low = vitals.find(({ code }) => code === "dbp")?.value;
    yield {
      ids: said.map(({ id }) => id),
      words: sayReading(statement, protocol.region),
      atMs: Math.min(...said.map(({ atMs }) => atMs)),
      vitals,
      numbers: vitals.flatMap(({ code, value, said: { value: asSaid } }) => (code === "dbp" ? [] : [value, asSaid])),
      ...(low !== undefined && { low }),
    };
  }
}

/** The numbers by which what was done can be called. */
function numbersOf(fact: StrikableCare): readonly number[] {
  switch (fact.type) {
    case "drug.given":
      return [fact.amount.value];
    case "strength.affirmed":
      return [fact.strength.amount];
    case "infusion.set":
      return fact.mlPerH === undefined ? [fact.rate.value] : [fact.rate.value, fact.mlPerH];
    case "fluid.given":
      return [fact.volumeMl];
    default:
      return [];
  }
}

function isOf(fact: StrikableCare, { of, id }: StrikeIntent): boolean {
  if (fact.type === "airway.event") return fact.event === of;
  if (fact.type === "fluid.given") return of === "fluid" && fact.fluidId === id;
  const isOfDrug = fact.type === "drug.given" || fact.type === "infusion.set" || fact.type === "strength.affirmed";
  return of === "drug" && isOfDrug && fact.drugId === id;
}

function* doneOf(protocol: Protocol, log: CaseState, intent: StrikeIntent): Generator<Entry> {
  for (const { fact, factId, atMs } of linksOf(log.care.taken)) {
    if (!isOf(fact, intent)) continue;
    const words = sayCareFact(fact, nameIn(protocol));
    yield { ids: [factId], words, atMs, vitals: [], fact, numbers: numbersOf(fact) };
  }
}

function* backgroundOf(protocol: Protocol, log: CaseState, of: "cause" | "herniation"): Generator<Entry> {
  const say = (part: Partial<Statement>): string => sayReading({ vitals: [], findings: [], ...part }, protocol.region);
  const bare = { vitals: [], numbers: [] };
  if (of === "cause")
    for (const { id, cause } of linksOf(log.cause))
      yield { ...bare, ids: [id], words: say({ cause }), atMs: undefined };
  else
    for (const { id, present, atMs } of linksOf(log.herniation))
      yield { ...bare, ids: [id], words: say({ herniation: present }), atMs };
}

/** Everything of this kind that stands in the record, newest first. */
function entriesOf(protocol: Protocol, log: CaseState, intent: StrikeIntent): Iterable<Entry> {
  const { of } = intent;
  if (of === "cause" || of === "herniation") return backgroundOf(protocol, log, of);
  const codes = codesOf(of);
  return codes.length > 0 ? readingsOf(protocol, log, codes) : doneOf(protocol, log, intent);
}

/** What is spoken of a half is whole: a stored value may have decimals that nobody said. */
const isNumber = (stored: number, said: number): boolean => stored === said || Math.round(stored) === said;

const isCalled = ({ numbers, low }: Entry, { was, wasLow }: StrikeIntent): boolean =>
  (was === undefined || numbers.some((n) => isNumber(n, was.value))) &&
  (wasLow === undefined || (low !== undefined && isNumber(low, wasLow.value)));

/** The newest entry that is meant; none, with the newest of its kind, where the number fits nothing. */
export function findEntry(
  protocol: Protocol,
  log: CaseState,
  intent: StrikeIntent,
): { readonly found: Entry | undefined; readonly last: Entry | undefined } {
  const all = [...entriesOf(protocol, log, intent)];
  return { found: all.find((entry) => isCalled(entry, intent)), last: all[0] };
}

/** What is asked for in words, with its number: "ICP fifty", "ketamine one hundred". */
export function sayAsked(protocol: Protocol, { of, id, was, wasLow }: StrikeIntent): string {
  const numbers = [was, wasLow].flatMap((n) => (n === undefined ? [] : [sayNumber(n.value, 2)]));
  const name = id === undefined ? sayThing(of) : nameIn(protocol)(id);
  return [name, ...(numbers.length === 0 ? [] : [numbers.join(" over ")])].join(" ");
}
