import { checkedMmHg } from "../../core/mmHg.ts";
import { cerebralPerfusionPressure } from "../../core/pressure.ts";
import type { CaseState, History } from "../../log/caseState.ts";
import { cppReadings } from "../../log/cppReadings.ts";
import { meanReadings } from "../../log/meanReadings.ts";
import { selectMap } from "../../log/selectors.ts";
import type { Protocol, WatchedCode } from "../../protocol/protocol.ts";

/** One value of what an alert watches. `atMs` is that of its oldest input. */
export type WatchedReading = {
  readonly value: number;
  readonly kind: "measured" | "computed";
  readonly atMs: number;
};

type Readings = Generator<WatchedReading, undefined>;

function* recorded(history: History | undefined): Readings {
  for (let link = history; link !== undefined; link = link.earlier)
    yield { value: link.entry.value, kind: "measured", atMs: link.entry.atMs };
}

function* means(state: CaseState, protocol: Protocol): Readings {
  for (const { mapMmHg, kind, atMs } of meanReadings(state, protocol)) yield { value: mapMmHg, kind, atMs };
}

function* perfusionPressures(state: CaseState, protocol: Protocol): Readings {
  for (const { cppMmHg, mean, icp } of cppReadings(state, protocol))
    yield { value: cppMmHg, kind: mean.kind, atMs: Math.min(mean.atMs, icp.atMs) };
}

/** Without a measured ICP, the CPP that is left if ICP is at the low end of what is assumed: the best that it can be. */
function* bestPerfusionPressures(state: CaseState, protocol: Protocol): Readings {
  if (state.vitals.icp !== undefined) return;
  const lowest = checkedMmHg(protocol.assumedIcpMmHg.value.low);
  for (const { mapMmHg, kind, atMs } of meanReadings(state, protocol))
    yield { value: cerebralPerfusionPressure(mapMmHg, lowest), kind, atMs };
}

/** All values that this alert judges, newest first, struck ones left out. */
export function watchedReadings(state: CaseState, protocol: Protocol, code: WatchedCode): Readings {
  switch (code) {
    case "sbp":
    case "spo2":
    case "etco2":
    case "hr":
    case "temp":
    case "glucose":
    case "icp":
      return recorded(state.vitals[code]);
    case "map":
      return means(state, protocol);
    case "cpp":
      return perfusionPressures(state, protocol);
    case "cppBound":
      return bestPerfusionPressures(state, protocol);
  }
}

const OF_MEAN: readonly WatchedCode[] = ["map", "cpp", "cppBound"];

/** Whether the newest value still holds: a newer systolic alone can have overtaken the last mean. */
export const isCurrent = (state: CaseState, protocol: Protocol, code: WatchedCode): boolean =>
  !OF_MEAN.includes(code) || selectMap(state, protocol) !== undefined;
