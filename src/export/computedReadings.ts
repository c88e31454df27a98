import { gcsParts, gcsTotal, type GcsPart, type NotTestable } from "../core/gcs.ts";
import { linksOf } from "../log/chains.ts";
import { givenOf } from "../log/given.ts";
import { cppReadings, type CppReading } from "../log/cppReadings.ts";
import { meanReadings, pressurePairs, type MeanReading } from "../log/meanReadings.ts";
import type { RecordedCase } from "./recordedCase.ts";
import type { Reading, TakenFact } from "./readings.ts";

/** Something worked out from what was said. */
export type Computed = {
  readonly value: number;
  /** The newest fact it was worked out from: it stands with that one. */
  readonly factId: string;
  /** Unix ms of its oldest and of its newest input. */
  readonly sinceMs: number;
  readonly atMs: number;
};

export type ComputedMean = Computed & { readonly ofIds: readonly [sbp: string, dbp: string] };
/** `meanFactId`: the measured mean, or the newer half that the mean was computed from. */
export type ComputedCpp = Computed & { readonly meanFactId: string; readonly icpFactId: string } & Pick<
    CppReading,
    "mean"
  >;

/**
 * The facts that values stand with, by their number in the case. What corrects an older value has the number of that one, so
 * the facts themselves cannot be counted off: the struck one would be found.
 */
const factIds = ({ state }: RecordedCase): ReadonlyMap<number, string> =>
  new Map(
    Object.values(state.vitals).flatMap((history) => [...linksOf(history)].map(({ entry }) => [entry.seq, entry.id])),
  );

/** Means by the one-third rule, oldest first, where no mean was measured in the same reading. */
export function computedMeans(recorded: RecordedCase): readonly ComputedMean[] {
  const { state, protocol } = recorded;
  const ids = factIds(recorded);
  const pairs = new Map([...pressurePairs(state, protocol)].map((p) => [Math.max(p.sbp.seq, p.dbp.seq), p]));
  const means: ComputedMean[] = [];
  for (const { kind, seq, mapMmHg } of meanReadings(state, protocol)) {
    const pair = pairs.get(seq);
    if (kind !== "computed" || pair === undefined) continue;
    const times = [pair.sbp.atMs, pair.dbp.atMs];
    const span = { sinceMs: Math.min(...times), atMs: Math.max(...times) };
    means.push({ value: mapMmHg, factId: ids.get(seq) ?? "", ofIds: [pair.sbp.id, pair.dbp.id], ...span });
  }
  return means.reverse();
}

/** Perfusion pressures, oldest first; none where no ICP was measured. */
export function computedCpps(recorded: RecordedCase): readonly ComputedCpp[] {
  const { state, protocol } = recorded;
  const ids = factIds(recorded);
  return [...cppReadings(state, protocol)].reverse().map(({ cppMmHg, mean, icp }) => ({
    value: cppMmHg,
    mean,
    meanFactId: ids.get(mean.seq) ?? "",
    icpFactId: icp.id,
    factId: ids.get(Math.max(mean.seq, icp.seq)) ?? "",
    sinceMs: Math.min(mean.atMs, icp.atMs),
    atMs: Math.max(mean.atMs, icp.atMs),
  }));
}

/** Nobody said where a line was zeroed: the level is what the protocol takes it to be. */
export const isLevelAssumed = ({ level, method }: MeanReading): boolean => level === undefined && method !== "cuff";

const PART_OF_CODE: Readonly<Partial<Record<TakenFact["code"], GcsPart>>> = {
  gcsEye: "eye",
  gcsVerbal: "verbal",
  gcsMotor: "motor",
};

/** A coma score whose three parts were examined in one breath. */
export type ExaminedGcs = { readonly total: number | NotTestable; readonly parts: readonly TakenFact[] };

/**
 * The total of a reading in which all three parts were examined.
 *
 * @returns `not-testable` where one of them could not be; `undefined` where one was not examined, where the reading is
 *          struck, and from the first paralytic on: seen under one, a score is no examination.
 */
export function examinedGcs({ state }: RecordedCase, { struck, facts }: Reading): ExaminedGcs | undefined {
  const parts = facts.filter(({ code }) => PART_OF_CODE[code] !== undefined);
  const [newest] = parts.slice(-1);
  if (struck || newest === undefined) return undefined;
  const paralysed = [...givenOf(state, ["muscleRelaxant"])].some(({ atMs }) => atMs <= newest.atMs);
  const said = parts.map((f) => [PART_OF_CODE[f.code], f.type === "vital.recorded" ? f.value : f.finding] as const);
  const checked = gcsParts(Object.fromEntries(said) as Partial<Record<GcsPart, number | NotTestable>>);
  if (paralysed || !checked.ok) return undefined;
  const total = gcsTotal(checked.value);
  if (total.ok) return { total: total.value, parts };
  return total.error.missing.length > 0 ? undefined : { total: "not-testable", parts };
}
