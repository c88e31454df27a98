import type { Cell, Table } from "../report.ts";
import { percent } from "../shares.ts";
import { CONDITIONS } from "./conditions.ts";
import type { Saying } from "./saying.ts";

const CURVE_THRESHOLDS = [
  ...[0, 0.2, 0.4, 0.6, 0.8, 0.9, 0.95, 0.97, 0.98, 0.99, 0.995, 0.998, 0.999, 0.9995],
] as const;

export type CurvePoint = { readonly threshold: number; readonly right: number; readonly wrong: number };
export type Curve = { readonly condition: string; readonly n: number; readonly points: readonly CurvePoint[] };

/**
 * What taking everything from a certainty on would make of these statements. A saying is right if all that is taken of it is
 * what was said, and wrong if some of it would put something wrong on record: what a rule asks about anyway does not.
 */
export function curvesOf(sayings: readonly Saying[]): readonly Curve[] {
  return CONDITIONS.map(({ name }) => sayings.filter((s) => s.condition === name))
    .filter((some) => some.length > 0)
    .map((some) => ({
      condition: some[0]!.condition,
      n: some.length,
      points: CURVE_THRESHOLDS.map((threshold) => {
        const taken = some.map((s) => s.utterances.filter((u) => u.certainty >= threshold && u.kind !== "none"));
        return {
          threshold,
          right: taken.filter((us) => us.length > 0 && us.every((u) => u.isRight)).length / some.length,
          wrong: taken.filter((us) => us.some((u) => u.isWrongIfTaken)).length / some.length,
        };
      }),
    }));
}

export function curveTable(curves: readonly Curve[]): Table {
  return {
    title: "The trade-off: where taking begins",
    notes: [
      "Per cent of the vitals, were everything taken from this certainty on: meant as said / wrong on record, what rules ask about left out. See also hearing-curve.svg.",
    ],
    columns: ["certainty from", ...curves.map(({ condition, n }) => `${condition} (n ${n})`)],
    rows: CURVE_THRESHOLDS.map((threshold, i): readonly Cell[] => [
      threshold,
      ...curves.map(({ points }) => `${percent(points[i]!.right)} / ${percent(points[i]!.wrong, 2)}`),
    ]),
  };
}

const [WIDTH, HEIGHT, LEFT, BOTTOM, TOP, RIGHT] = [640, 420, 60, 50, 20, 150];
/** Shares of wrong run on a logarithmic scale; none at all stands at its left end. */
const LEAST_WRONG = 1e-4;
const COLOURS = ["#1f5f8b", "#2e7d4f", "#a35b00", "#a3204f"];
const DASHES = ["", "6 3", "2 3", "8 3 2 3"];

const xOf = (wrong: number): number =>
  LEFT + ((WIDTH - LEFT - RIGHT) * Math.log10(Math.max(wrong, LEAST_WRONG) / LEAST_WRONG)) / -Math.log10(LEAST_WRONG);
const yOf = (right: number): number => HEIGHT - BOTTOM - (HEIGHT - BOTTOM - TOP) * right;

/** The curves as a picture: wrong to the right, right upwards; best is the upper left corner. */
export function curveSvg(curves: readonly Curve[]): string {
  const text = (x: number, y: number, words: string, anchor = "middle"): string =>
    `<text x="${x.toFixed(1)}" y="${y.toFixed(1)}" text-anchor="${anchor}">${words}</text>`;
  const lines = curves.flatMap(({ condition, n, points }, i) => {
    const at = points.map(({ right, wrong }) => `${xOf(wrong).toFixed(1)},${yOf(right).toFixed(1)}`);
    const style = `fill="none" stroke="${COLOURS[i % COLOURS.length]}" stroke-width="2" stroke-dasharray="${DASHES[i % DASHES.length]}"`;
    const y = TOP + 20 + 20 * i;
    return [
      `<polyline points="${at.join(" ")}" ${style}/>`,
      `<line x1="${WIDTH - RIGHT + 8}" y1="${y - 4}" x2="${WIDTH - RIGHT + 30}" y2="${y - 4}" ${style}/>`,
      text(WIDTH - RIGHT + 36, y, `${condition} (n ${n})`, "start"),
    ];
  });
  const axis = `<path d="M${LEFT} ${TOP}V${HEIGHT - BOTTOM}H${WIDTH - RIGHT}" stroke="#444" fill="none"/>`;
  const xTicks = [1e-4, 1e-3, 1e-2, 1e-1, 1].map((w) =>
    text(xOf(w), HEIGHT - BOTTOM + 18, w === LEAST_WRONG ? "≤ 0.01" : String(100 * w)),
  );
  const yTicks = [0, 0.25, 0.5, 0.75, 1].map((r) => text(LEFT - 8, yOf(r) + 4, String(100 * r), "end"));
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" font-family="sans-serif" font-size="12">`,
    `<rect width="${WIDTH}" height="${HEIGHT}" fill="#fff"/>`,
    axis,
    ...xTicks,
    ...yTicks,
    text((LEFT + WIDTH - RIGHT) / 2, HEIGHT - 10, "wrong and taken, %"),
    `<text x="16" y="${HEIGHT / 2}" text-anchor="middle" transform="rotate(-90 16 ${HEIGHT / 2})">right and taken, %</text>`,
    ...lines,
    "</svg>",
    "",
  ].join("\n");
}
