import { showCpp, showMap, showMapAgainstTarget } from "../../language/sentences/shownStatus.ts";
import type { Perfusion } from "../../log/perfusion.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import type { PerfusionBar, ScreenView } from "../screenView.ts";

/** Room above the higher of MAP and target, so that neither touches the end of the bar. */
const HEADROOM_MMHG = 20;
const SCALE_STEP_MMHG = 10;

export function viewHeadline(p: Perfusion): ScreenView["headline"] {
  const cppText = showCpp(p.cpp);
  const cppUnder = p.cpp.kind === "measured" && p.cpp.cppMmHg < p.cpp.targetMmHg;
  if (p.map === undefined)
    return { mapText: "MAP not yet recorded", deficitText: "", cppText, met: false, mapUnder: false, cppUnder };
  const { mapMmHg, targetMmHg } = p.map;
  const mapUnder = mapMmHg < targetMmHg;
  const deficitText = showMapAgainstTarget(p.map);
  return { mapText: showMap(p.map), deficitText, cppText, met: !mapUnder && !cppUnder, mapUnder, cppUnder };
}

/** MAP as a bar made of ICP and of what remains for perfusion. With a measured ICP the line is the MAP that the CPP target needs, if that is higher. */
export function viewBar(p: Perfusion, protocol: Protocol): PerfusionBar | undefined {
  if (p.map === undefined) return undefined;
  const { mapMmHg } = p.map;
  const assumed = protocol.assumedIcpMmHg.value;
  const icp =
    p.icp === undefined
      ? ({ kind: "assumed", lowMmHg: assumed.low, highMmHg: assumed.high } as const)
      : ({ kind: "measured", lowMmHg: p.icp.icpMmHg, highMmHg: p.icp.icpMmHg } as const);
  const needed = p.cpp.kind === "measured" ? icp.highMmHg + p.cpp.targetMmHg : 0;
  const targetMmHg = Math.max(p.map.targetMmHg, needed);
  const top = Math.max(mapMmHg, targetMmHg, icp.highMmHg) + HEADROOM_MMHG;
  return {
    scaleMaxMmHg: Math.ceil(top / SCALE_STEP_MMHG) * SCALE_STEP_MMHG,
    mapMmHg,
    icp,
    targetMmHg,
    description: `${showMap(p.map)}, ${showMapAgainstTarget(p.map)}. ${showCpp(p.cpp)}.`,
  };
}
