import { checkedMmHg } from "../../core/mmHg.ts";
import { cerebralPerfusionPressure } from "../../core/pressure.ts";
import type { VitalCode } from "../../core/vitals.ts";
import { linksOf } from "../../log/chains.ts";
import { meanReadings } from "../../log/meanReadings.ts";
import type { RecordedCase } from "../recordedCase.ts";

/** One value at one moment, Unix ms, in the stored unit of what it is. */
export type Reading = { readonly atMs: number; readonly value: number };

type Numbered = Reading & { readonly seq: number };

/** Oldest first; of one moment, in the order in which they were said. */
const inTime = (readings: readonly Numbered[]): readonly Reading[] =>
  readings.toSorted((a, b) => a.atMs - b.atMs || a.seq - b.seq).map(({ atMs, value }) => ({ atMs, value }));

/** What was recorded of one vital, oldest first. What was struck or never confirmed is not there. */
export const readingsOf = ({ state }: RecordedCase, code: VitalCode): readonly Reading[] =>
  inTime([...linksOf(state.vitals[code])].map(({ entry }) => entry));

/** Mean pressures, oldest first: the measured mean of a reading, else the one-third rule on its pair. */
export const meansOf = ({ state, protocol }: RecordedCase): readonly Reading[] =>
  inTime([...meanReadings(state, protocol)].map(({ mapMmHg, atMs, seq }) => ({ value: mapMmHg, atMs, seq })));

/**
 * Perfusion pressures, oldest first: each new mean or ICP with the newest of the other, as long as that one is not older
 * than readings may be apart. Only with a measured ICP; an assumed one makes none. A mean and an ICP said in one breath
 * are of one moment: neither makes a pressure with what the other was before.
 */
export function perfusionOf({ state, protocol }: RecordedCase): readonly Reading[] {
  const means = [...meanReadings(state, protocol)].map(({ mapMmHg, atMs, seq, readingId }) => {
    return { code: "map" as const, mmHg: mapMmHg, atMs, seq, readingId };
  });
  const icps = [...linksOf(state.vitals.icp)].map(({ entry: { value, atMs, seq, readingId } }) => {
    return { code: "icp" as const, mmHg: checkedMmHg(value), atMs, seq, readingId };
  });
  const apartMs = protocol.lowPressure.unknownAfterS.value * 1000;
  const inOrder = [...means, ...icps].toSorted((a, b) => a.atMs - b.atMs || a.seq - b.seq);
  const newest: Partial<Record<"map" | "icp", (typeof inOrder)[number]>> = {};
  return inOrder.flatMap((one, i): readonly Reading[] => {
    newest[one.code] = one;
    const { map, icp } = newest;
    const goesOn = inOrder[i + 1]?.readingId === one.readingId;
    if (goesOn || map === undefined || icp === undefined || Math.abs(map.atMs - icp.atMs) > apartMs) return [];
    return [{ atMs: one.atMs, value: cerebralPerfusionPressure(map.mmHg, icp.mmHg) }];
  });
}
