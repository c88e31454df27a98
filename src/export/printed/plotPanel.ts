import { markup, type Html } from "./html.ts";
import { INK } from "./ink.ts";
import { isIn, PLOT_PX, stepsOf, ticksOf, xOf, yOf, type Axis, type Strip } from "./plotFrame.ts";
import { line, mark, type Look } from "./plotMarks.ts";
import { showLength } from "./times.ts";

export type Point = { readonly atMs: number; readonly value: number };
/** Oldest first. */
export type Points = readonly Point[];

/** A target as it held from one time to another. */
export type TargetLine = {
  readonly fromMs: number;
  readonly toMs: number | undefined;
  readonly value: number;
  readonly label: string;
  readonly look: Look;
};

/** CPP at the two ends of what ICP is assumed to be. */
export type BandPoint = { readonly atMs: number; readonly low: number; readonly high: number };

export type Panel = {
  readonly title: string;
  readonly unit: string;
  readonly axis: Omit<Axis, "topPx">;
  readonly series: readonly { readonly look: Look; readonly points: Points }[];
  readonly band: readonly BandPoint[];
  readonly targets: readonly TargetLine[];
  /** Stretches without a reading that are too long to be joined. */
  readonly gaps: readonly Strip[];
  /** The end of the record: no target is drawn after it. */
  readonly endMs: number;
};

const LETTER_PX = 12;

/** Splits where two neighbours are further apart than is joined. */
function runsOf<P extends { readonly atMs: number }>(points: readonly P[], withinMs: number): readonly P[][] {
  const runs: P[][] = [];
  for (const point of points) {
    const run = runs.at(-1);
    const last = run?.at(-1);
    if (run === undefined || last === undefined || point.atMs - last.atMs > withinMs) runs.push([point]);
    else run.push(point);
  }
  return runs;
}

const touches = ({ fromMs, toMs }: Strip, from: number, to: number): boolean => from < toMs && to > fromMs;

function grid(axis: Axis, strip: Strip, title: string, unit: string): Html {
  const { left, right } = PLOT_PX;
  const bottom = axis.topPx + axis.heightPx;
  return markup`<path ${INK.grid} d="${ticksOf(strip)
    .map((atMs) => `M${xOf(strip, atMs)} ${axis.topPx}V${bottom}`)
    .join("")}${stepsOf(axis)
    .map((value) => `M${left} ${yOf(axis, value)}H${right}`)
    .join(
      "",
    )}"/><text x="0" y="${axis.topPx + LETTER_PX}" ${INK.strong}>${title}</text><text x="0" y="${axis.topPx + 2 * LETTER_PX + 2}">${unit}</text>${stepsOf(
    axis,
  ).map(
    (value) => markup`<text x="${left - 5}" y="${yOf(axis, value) + 4}" text-anchor="end" class="tick">${value}</text>`,
  )}`;
}

function gapMark(axis: Axis, strip: Strip, { fromMs, toMs }: Strip): Html {
  const [x1, x2] = [Math.max(PLOT_PX.left, xOf(strip, fromMs)), Math.min(PLOT_PX.right, xOf(strip, toMs))];
  const long = `no reading for ${showLength(toMs - fromMs)}`;
  const text = [long, showLength(toMs - fromMs)].find((one) => one.length * 6.5 < x2 - x1);
  return markup`<rect class="gap" ${INK.gap} x="${x1}" y="${axis.topPx}" width="${Math.max(0, x2 - x1)}" height="${axis.heightPx}"/>${
    text === undefined
      ? undefined
      : markup`<text x="${(x1 + x2) / 2}" y="${axis.topPx + axis.heightPx - 4}" text-anchor="middle">${text}</text>`
  }`;
}

/** Labels one under the other where their lines lie too near to each other. */
function spread(labels: readonly { readonly y: number; readonly text: string }[]): Html {
  let last = -Infinity;
  return markup`${labels
    .toSorted((a, b) => a.y - b.y)
    .map(({ y, text }) => {
      last = Math.max(y + 4, last + LETTER_PX);
      return markup`<text x="${PLOT_PX.right + 4}" y="${last}">${text}</text>`;
    })}`;
}

function targetLines(axis: Axis, strip: Strip, { targets, endMs }: Panel): Html {
  const lastMs = Math.min(strip.toMs, endMs);
  const seen = targets.filter(({ fromMs, toMs = endMs }) => touches(strip, fromMs, toMs));
  const ends = seen.filter(({ toMs = endMs }) => toMs >= lastMs);
  return markup`${seen.map(({ fromMs, toMs = endMs, value, label, look }) => {
    const [x1, x2] = [Math.max(PLOT_PX.left, xOf(strip, fromMs)), Math.min(PLOT_PX.right, xOf(strip, toMs))];
    const y = yOf(axis, value);
    const width = look.id === "r-sbp" ? 0.8 : 1.6;
    return markup`<path ${INK.target} d="M${x1} ${y}H${x2}" stroke-width="${width}" stroke-dasharray="${look.targetLine}"/>${toMs >= lastMs ? undefined : markup`<text ${INK.halo} x="${x1 + 3}" y="${y - 3}">${label}</text>`}`;
  })}${spread(ends.map(({ value, label }) => ({ y: yOf(axis, value), text: label })))}`;
}

function band(axis: Axis, strip: Strip, points: readonly BandPoint[], withinMs: number): Html {
  const at = (point: BandPoint, end: "low" | "high") => `${xOf(strip, point.atMs)},${yOf(axis, point[end])}`;
  return markup`${runsOf(points, withinMs)
    .filter((run) => touches(strip, run[0]?.atMs ?? 0, (run.at(-1)?.atMs ?? 0) + 1))
    .map((run) => {
      const corners = [...run.map((point) => at(point, "high")), ...run.toReversed().map((point) => at(point, "low"))];
      const bars = run.map((point) => `M${xOf(strip, point.atMs)} ${yOf(axis, point.high)}V${yOf(axis, point.low)}`);
      return markup`<polygon ${INK.band} points="${corners.join(" ")}"/><path ${INK.bars} d="${bars.join("")}"/>`;
    })}`;
}

function seriesOf(axis: Axis, strip: Strip, { look, points }: Panel["series"][number], withinMs: number) {
  const runs = runsOf(points, withinMs).filter((run) => touches(strip, run[0]?.atMs ?? 0, (run.at(-1)?.atMs ?? 0) + 1));
  const lines = runs.map((run) =>
    line(run.map(({ atMs, value }) => `${xOf(strip, atMs)},${yOf(axis, value)}`).join(" "), look),
  );
  const marks = points
    .filter(({ atMs }) => isIn(strip, atMs))
    .map(({ atMs, value }) => mark(look, xOf(strip, atMs), yOf(axis, value)));
  return { lines, marks };
}

/**
 * One panel of one strip. Lines that go on in the next strip are cut at its edge.
 *
 * @param clipId   names the area that lines may use.
 * @param withinMs readings further apart are not joined.
 */
export function drawPanel(panel: Panel, topPx: number, strip: Strip, clipId: string, withinMs: number): Html {
  const axis: Axis = { ...panel.axis, topPx };
  const drawn = panel.series.map((one) => seriesOf(axis, strip, one, withinMs));
  const { left, right } = PLOT_PX;
  return markup`${grid(axis, strip, panel.title, panel.unit)}<clipPath id="${clipId}" ><rect x="${left}" y="${topPx}" width="${right - left}" height="${axis.heightPx}"/></clipPath ><g clip-path="url(#${clipId})" >${panel.gaps
    .filter(({ fromMs, toMs }) => touches(strip, fromMs, toMs))
    .map((gap) =>
      gapMark(axis, strip, gap),
    )}${band(axis, strip, panel.band, withinMs)}</g >${targetLines(axis, strip, panel)}<g clip-path="url(#${clipId})">${drawn.map(({ lines }) => lines)}</g >${drawn.map(({ marks }) => marks)}`;
}
