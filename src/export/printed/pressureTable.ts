import type { PressureReading } from "../../core/lowPressure.ts";
import { showNumber } from "../../core/shownNumber.ts";
import { belowTarget, type BelowTarget } from "../../log/belowTarget.ts";
import { selectMeans, selectPerfusionPressures, selectSystolics } from "../../log/pressureSeries.ts";
import type { TargetSpan } from "../../log/targetSpans.ts";
import type { CurrentTargets } from "../../log/targets.ts";
import type { RecordedCase } from "../recordedCase.ts";
import { markup, section, table, type Html } from "./html.ts";
import type { Times } from "./times.ts";

const tenths = (value: number): string => showNumber(value, 1);
/** Less than is printed. */
const isNothing = (minutes: number): boolean => tenths(minutes) === "0.0";

/** The targets that held one after the other: "90, then 80". */
function floorsOf(spans: readonly TargetSpan[], floorOf: (targets: CurrentTargets) => number): string {
  const floors = spans.flatMap(({ targets }) => (targets === undefined ? [] : [showNumber(floorOf(targets), 0)]));
  return floors.filter((floor, i) => floor !== floors[i - 1]).join(", then ");
}

function row(name: string, floors: string, sum: BelowTarget, times: Times): readonly string[] {
  const atLeast = isNothing(sum.unknownMin) && !sum.endsBelow ? "" : "at least ";
  const { lowest } = sum;
  return [
    name,
    floors,
    String(sum.readings),
    String(sum.readingsBelow),
    lowest === undefined ? "no reading" : `${showNumber(lowest.mmHg, 0)} at ${times.time(lowest.atMs)}`,
    ...(lowest === undefined
      ? ["–", "–", "–"]
      : [`${atLeast}${tenths(sum.belowMin)}`, `${atLeast}${tenths(sum.doseMmHgMin)}`, tenths(sum.unknownMin)]),
  ];
}

/** How deep and how long pressures were below what they should have been. */
export function lowPressureSection(recorded: RecordedCase, spans: readonly TargetSpan[], times: Times): Html {
  const { state, protocol } = recorded;
  const { publishedSbpFloorMmHg, unknownAfterS } = protocol.lowPressure;
  const published = publishedSbpFloorMmHg.value;
  const withinMs = unknownAfterS.value * 1000;
  const [sbp, map] = [selectSystolics(state), selectMeans(state, protocol)];
  const against = (name: string, series: readonly PressureReading[], floorOf: (targets: CurrentTargets) => number) =>
    row(name, floorsOf(spans, floorOf), belowTarget(series, spans, floorOf, withinMs), times);
  const rows = [
    against("MAP", map, (targets) => targets.mapMmHg.target.value),
    against("SBP", sbp, (targets) => targets.sbpMmHg.target.value),
    against("CPP, measured ICP", selectPerfusionPressures(state, protocol), (targets) => targets.cppMmHg.target.value),
    against("SBP, published floor", sbp, () => published),
  ];
  return section(
    "low",
    "Pressure below target",
    table(
      "Minutes and dose below the targets as they held",
      [
        "Pressure",
        "Target, mmHg",
        "Readings",
        "Below",
        "Lowest, mmHg",
        "Below, min",
        "Dose, mmHg·min",
        "Not known, min",
      ],
      rows,
    ),
    markup`<p>A straight line is drawn between readings; readings more than ${unknownAfterS.value / 60} min apart leave the time between them not known. Time before the first reading and after the last is not counted: where the last one was below, it was so at least as long.${
      map.length > 0 && state.vitals.icp === undefined ? " ICP was not measured, so there is no CPP." : undefined
    }</p>`,
  );
}
