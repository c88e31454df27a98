import { cppRange } from "../../core/cppRange.ts";
import type { PressureReading } from "../../core/lowPressure.ts";
import { checkedMmHg } from "../../core/mmHg.ts";
import { showNumber } from "../../core/shownNumber.ts";
import type { VitalCode } from "../../core/vitals.ts";
import { linksOf } from "../../log/chains.ts";
import { selectMeans, selectPerfusionPressures, selectSystolics } from "../../log/pressureSeries.ts";
import type { TargetSpan } from "../../log/targetSpans.ts";
import type { CurrentTargets } from "../../log/targets.ts";
import type { RecordedCase } from "../recordedCase.ts";
import { markup, type Html } from "./html.ts";
import { lanesOf, type Lane } from "./laneEvents.ts";
import { axisOf, isIn, PLOT_PX, stripsOf, ticksOf, xOf, type Strip } from "./plotFrame.ts";
import { drawLanes } from "./plotLanes.ts";
import { legend, LOOKS, markDefinitions, type Look } from "./plotMarks.ts";
import { drawPanel, type BandPoint, type Panel, type Points, type TargetLine } from "./plotPanel.ts";
import type { Times } from "./times.ts";
import { inRegion } from "./words.ts";

const asPoints = (series: readonly PressureReading[]): Points =>
  series.map(({ atMs, mmHg }) => ({ atMs, value: mmHg }));

const recorded = ({ state, protocol }: RecordedCase, code: VitalCode): Points =>
  [...linksOf(state.vitals[code])]
    .toReversed()
    .map(({ entry }) => ({ atMs: entry.atMs, value: inRegion(code, entry.value, protocol.region).value }));

/** What CPP would be while nobody had measured ICP. */
function bandOf({ state, protocol }: RecordedCase): readonly BandPoint[] {
  const firstIcpMs = [...linksOf(state.vitals.icp)].at(-1)?.entry.atMs ?? Infinity;
  const { low, high } = protocol.assumedIcpMmHg.value;
  return selectMeans(state, protocol)
    .filter(({ atMs }) => atMs < firstIcpMs)
    .map(({ atMs, mmHg }) => {
      const range = cppRange(mmHg, { low: checkedMmHg(low), high: checkedMmHg(high) });
      return { atMs, low: range.lowMmHg, high: range.highMmHg };
    });
}

/** One line for each stretch in which the number was the same. */
function targetLines(
  spans: readonly TargetSpan[],
  look: Look,
  valueOf: (targets: CurrentTargets) => number | undefined,
  label: (value: number) => string,
): readonly TargetLine[] {
  const lines: TargetLine[] = [];
  for (const { fromMs, toMs, targets } of spans) {
    const value = targets && valueOf(targets);
    const last = lines.at(-1);
    if (value === undefined) continue;
    if (last?.value === value && last.toMs === fromMs) lines.splice(-1, 1, { ...last, toMs });
    else lines.push({ fromMs, toMs, value, label: label(value), look });
  }
  return lines;
}

/** Where nothing was read for longer than is joined, from one time to another. */
function gapsOf(points: Points, fromMs: number, toMs: number, withinMs: number): readonly Strip[] {
  const times = [fromMs, ...points.map(({ atMs }) => atMs).toSorted((a, b) => a - b), toMs];
  return times.flatMap((atMs, i) => {
    const before = times[i - 1];
    return before !== undefined && atMs - before > withinMs ? [{ fromMs: before, toMs: atMs }] : [];
  });
}

const PRESSURE = { low: 40, high: 140, step: 20 };
const whole = (value: number): string => showNumber(value, 0);

function panelsOf(recordedCase: RecordedCase, spans: readonly TargetSpan[], fromMs: number, toMs: number) {
  const { state, protocol } = recordedCase;
  const withinMs = protocol.lowPressure.unknownAfterS.value * 1000;
  const [sbp, map] = [asPoints(selectSystolics(state)), asPoints(selectMeans(state, protocol))];
  const cpp = asPoints(selectPerfusionPressures(state, protocol));
  const band = bandOf(recordedCase);
  const [spo2, etco2] = [recorded(recordedCase, "spo2"), recorded(recordedCase, "etco2")];
  const co2 = (mmHg: number) => inRegion("etco2", mmHg, protocol.region);
  const showCo2 = (mmHg: number): string => showNumber(co2(mmHg).value, co2(mmHg).decimals);
  const under = (points: Points, firstMs: number) => gapsOf(points, firstMs, toMs, withinMs);
  const pressureTargets = [
    ...targetLines(
      spans,
      LOOKS.sbp,
      (t) => t.sbpMmHg.target.value,
      (v) => `SBP ${whole(v)}`,
    ),
    ...targetLines(
      spans,
      LOOKS.sbp,
      (t) => t.sbpMmHg.ceiling?.value,
      (v) => `SBP <${whole(v)}`,
    ),
    ...targetLines(
      spans,
      LOOKS.map,
      (t) => t.mapMmHg.target.value,
      (v) => `MAP ${whole(v)}`,
    ),
    ...targetLines(
      spans,
      LOOKS.cpp,
      (t) => t.cppMmHg.target.value,
      (v) => `CPP ${whole(v)}`,
    ),
  ];
  const spo2Targets = targetLines(
    spans,
    LOOKS.spo2,
    (t) => t.spo2Pct.target.value,
    (v) => `SpO2 ${whole(v)}`,
  );
  const [lowCo2, highCo2] = (["low", "high"] as const).map((end) =>
    targetLines(spans, LOOKS.etco2, (t) => t.etco2MmHg[end], showCo2).map((l) => ({ ...l, value: co2(l.value).value })),
  );
  const co2Targets = [...(lowCo2 ?? []), ...(highCo2 ?? [])];
  const values = (points: Points, targets: readonly TargetLine[]) => [...points, ...targets].map(({ value }) => value);
  const isKpa = protocol.region.co2 === "kPa";
  const panels: readonly Panel[] = [
    {
      title: "Pressure",
      unit: "mmHg",
      axis: axisOf(
        [...values([...sbp, ...map, ...cpp], pressureTargets), ...band.flatMap(({ low, high }) => [low, high])],
        PRESSURE,
        190,
      ),
      series: [
        { look: LOOKS.sbp, points: sbp },
        { look: LOOKS.map, points: map },
        { look: LOOKS.cpp, points: cpp },
      ],
      band,
      targets: pressureTargets,
      gaps: under([...sbp, ...map], fromMs),
      endMs: toMs,
    },
    {
      title: "SpO2",
      unit: "%",
      axis: axisOf(values(spo2, spo2Targets), { low: 85, high: 100, step: 5 }, 64),
      series: [{ look: LOOKS.spo2, points: spo2 }],
      band: [],
      targets: spo2Targets,
      gaps: under(spo2, fromMs),
      endMs: toMs,
    },
    {
      title: "EtCO2",
      unit: co2(0).unit,
      axis: axisOf(
        values(etco2, co2Targets),
        isKpa ? { low: 3, high: 6, step: 1 } : { low: 20, high: 50, step: 10 },
        64,
      ),
      series: [{ look: LOOKS.etco2, points: etco2 }],
      band: [],
      targets: co2Targets,
      gaps: under(etco2, etco2[0]?.atMs ?? toMs),
      endMs: toMs,
    },
  ];
  return { panels, withinMs };
}

const GAP_PX = 16;
const AXIS_PX = 22;

function drawStrip(
  panels: readonly Panel[],
  lanes: readonly Lane[],
  strip: Strip,
  withinMs: number,
  times: Times,
): Html {
  let y = AXIS_PX;
  const drawn = panels.map((panel, i) => {
    const one = drawPanel(panel, y, strip, `r-clip-${strip.fromMs}-${i}`, withinMs);
    y += panel.axis.heightPx + GAP_PX;
    return one;
  });
  const below = drawLanes(lanes, strip, y);
  const height = y + below.heightPx + 2;
  const label = `Trend from ${times.full(strip.fromMs)} to ${times.time(strip.toMs)}`;
  return markup`<figure><figcaption>${label}</figcaption><svg role="img" font-size="12" aria-label="${label}" width="${PLOT_PX.width}" height="${height}" viewBox="0 0 ${PLOT_PX.width} ${height}" >${ticksOf(
    strip,
  ).map(
    (atMs) => markup`<text x="${xOf(strip, atMs)}" y="11" text-anchor="middle">${times.hour(atMs)}</text>`,
  )}${drawn}${below.drawn}</svg></figure>`;
}

/** Whether anything is drawn in this strip. */
const hasAny = (panels: readonly Panel[], lanes: readonly Lane[], strip: Strip): boolean =>
  panels.some(({ series }) => series.some(({ points }) => points.some(({ atMs }) => isIn(strip, atMs)))) ||
  lanes.some(({ events }) => events.some(({ atMs, untilMs = atMs }) => atMs < strip.toMs && untilMs >= strip.fromMs));

/** Pressures, saturation, CO2, drugs and events on one axis of time, strip after strip. */
export function trendPlot(recordedCase: RecordedCase, spans: readonly TargetSpan[], times: Times, endMs: number): Html {
  const fromMs = recordedCase.facts[0]?.atMs ?? endMs;
  const lanes = lanesOf(recordedCase, endMs);
  const { panels, withinMs } = panelsOf(recordedCase, spans, fromMs, endMs);
  const { low, high } = recordedCase.protocol.assumedIcpMmHg.value;
  const strips = stripsOf(fromMs, endMs);
  return markup`${markDefinitions()}${legend(`${whole(low)} to ${whole(high)} mmHg`)}${strips.map((strip) =>
    hasAny(panels, lanes, strip)
      ? drawStrip(panels, lanes, strip, withinMs, times)
      : markup`<p>Nothing to draw from ${times.time(strip.fromMs)} to ${times.time(strip.toMs)}.</p>`,
  )}`;
}
