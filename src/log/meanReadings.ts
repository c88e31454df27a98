import { checkedMmHg } from "../core/mmHg.ts";
import { meanArterialPressure } from "../core/pressure.ts";
import type { MmHg } from "../core/quantity.ts";
import type { Protocol } from "../protocol/protocol.ts";
import type { CaseState, History, VitalEntry } from "./caseState.ts";
import type { Level, Method } from "./facts.ts";

/** One mean pressure with where it comes from. */
export type MeanReading = {
  readonly mapMmHg: MmHg;
  readonly kind: "measured" | "computed";
  readonly atMs: number;
  readonly seq: number;
  readonly readingId: string;
  readonly level?: Level;
  readonly method?: Method;
  /** Systolic of the same reading. */
  readonly sbpMmHg?: MmHg;
  /** The one-third rule on the same reading's pair, where the mean itself was measured. */
  readonly computedMmHg?: MmHg;
};

type Pair = { readonly sbp: VitalEntry; readonly dbp: VitalEntry };

const isNewer = (a: VitalEntry, b: VitalEntry): boolean => a.seq > b.seq;

/** Whether this history has an entry of that reading; both are near its newest end. */
function hasReading(history: History | undefined, of: VitalEntry): boolean {
  for (let link = history; link !== undefined && link.entry.atMs >= of.atMs; link = link.earlier)
    if (link.entry.readingId === of.readingId) return true;
  return false;
}

/**
 * A half that was said alone (or left alone by a strike) completes another such half.
 * A palpated systolic never does: it has no diastolic.
 */
function complete(sbp: History, dbp: History, { pressures }: Protocol): boolean {
  const near = Math.abs(sbp.entry.atMs - dbp.entry.atMs) <= pressures.halvesWithinS.value * 1000;
  const inOrder = dbp.entry.value < sbp.entry.value;
  if (!near || !inOrder || sbp.entry.method === "palpated") return false;
  return !hasReading(sbp, dbp.entry) && !hasReading(dbp, sbp.entry);
}

/** Systolic with diastolic, newest first. A half without its other half is passed over: it has no mean. */
export function* pressurePairs(state: CaseState, protocol: Protocol): Generator<Pair, undefined> {
  let sbp = state.vitals.sbp;
  let dbp = state.vitals.dbp;
  while (sbp !== undefined && dbp !== undefined) {
    if (sbp.entry.readingId === dbp.entry.readingId || complete(sbp, dbp, protocol)) {
      yield { sbp: sbp.entry, dbp: dbp.entry };
      sbp = sbp.earlier;
      dbp = dbp.earlier;
    } else if (isNewer(sbp.entry, dbp.entry)) sbp = sbp.earlier;
    else dbp = dbp.earlier;
  }
}

const meanOf = ({ sbp, dbp }: Pair): MmHg => meanArterialPressure(checkedMmHg(sbp.value), checkedMmHg(dbp.value));
/** Where and how the pressure was taken, as far as it was said. */
const takenOf = ({ level, method }: VitalEntry): { level?: Level; method?: Method } => ({
  ...(level === undefined ? {} : { level }),
  ...(method === undefined ? {} : { method }),
});

function computed(pair: Pair): MeanReading {
  const newer = isNewer(pair.sbp, pair.dbp) ? pair.sbp : pair.dbp;
  // As old as its older half: an age must never flatter.
  const atMs = Math.min(pair.sbp.atMs, pair.dbp.atMs);
  const sbpMmHg = checkedMmHg(pair.sbp.value);
  const { seq, readingId } = newer;
  return { mapMmHg: meanOf(pair), kind: "computed", atMs, seq, readingId, sbpMmHg, ...takenOf(pair.sbp) };
}

function measured(map: VitalEntry, pair: Pair | undefined): MeanReading {
  const reading: MeanReading = {
    mapMmHg: checkedMmHg(map.value),
    kind: "measured",
    atMs: map.atMs,
    seq: map.seq,
    readingId: map.readingId,
    ...takenOf(map),
  };
  return pair === undefined
    ? reading
    : { ...reading, sbpMmHg: checkedMmHg(pair.sbp.value), computedMmHg: meanOf(pair) };
}

/** Every mean pressure of the case, newest first. Within one reading the measured mean stands, not the computed one. */
export function* meanReadings(state: CaseState, protocol: Protocol): Generator<MeanReading, undefined> {
  const pairs = pressurePairs(state, protocol);
  let pair = pairs.next().value;
  let map = state.vitals.map;
  while (map !== undefined || pair !== undefined) {
    if (map !== undefined && pair !== undefined && map.entry.readingId === pair.sbp.readingId) {
      yield measured(map.entry, pair);
      map = map.earlier;
      pair = pairs.next().value;
    } else if (map !== undefined && (pair === undefined || map.entry.seq > computed(pair).seq)) {
      yield measured(map.entry, undefined);
      map = map.earlier;
    } else if (pair !== undefined) {
      yield computed(pair);
      pair = pairs.next().value;
    }
  }
}
