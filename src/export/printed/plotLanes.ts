import { markup, type Html } from "./html.ts";
import { INK } from "./ink.ts";
import type { Lane } from "./laneEvents.ts";
import { isIn, PLOT_PX, ROW_PX, ticksOf, xOf, type Strip } from "./plotFrame.ts";

/** About the width of a letter of 12 px in the fonts that systems have; a little more, so that no two texts touch. */
const LETTER_PX = 6.8;
/** More texts beside each other than this have no room: their marks stay, and the tables say the rest. */
const MOST_ROWS = 6;
const MOST_NAME = 17;

type Placed = { readonly x: number; readonly text: string | undefined; readonly row: number; readonly toLeft: boolean };

/** Puts each text into the first row in which it touches no other. */
function place(events: Lane["events"], strip: Strip): readonly Placed[] {
  const rows: number[] = [];
  return events
    .filter(({ atMs }) => isIn(strip, atMs))
    .toSorted((a, b) => a.atMs - b.atMs)
    .map(({ atMs, text }) => {
      const x = xOf(strip, atMs);
      const width = text.length * LETTER_PX + 6;
      const toLeft = x + width > PLOT_PX.width;
      const from = toLeft ? x - width : x;
      const free = rows.findIndex((endPx) => endPx <= from);
      const row = free < 0 ? rows.length : free;
      if (row >= MOST_ROWS) return { x, text: undefined, row: MOST_ROWS - 1, toLeft };
      rows[row] = toLeft ? x + 2 : x + width;
      return { x, text, row, toLeft };
    });
}

/** Rows of the strip, below its panels, and how high they are. Lanes without anything in the strip are left out. */
export function drawLanes(lanes: readonly Lane[], strip: Strip, topPx: number): { drawn: Html; heightPx: number } {
  let y = topPx;
  let unlabelled = 0;
  const drawn: Html[] = [];
  for (const { name, events } of lanes) {
    const bars = events.flatMap(({ atMs, untilMs }) =>
      untilMs !== undefined && atMs < strip.toMs && untilMs > strip.fromMs ? [{ atMs, untilMs }] : [],
    );
    const placed = place(events, strip);
    if (bars.length === 0 && placed.length === 0) continue;
    unlabelled += placed.filter(({ text }) => text === undefined).length;
    const rows = Math.max(1, ...placed.map(({ row }) => row + 1));
    const short = name.length > MOST_NAME ? `${name.slice(0, MOST_NAME - 1)}…` : name;
    drawn.push(markup`<path ${INK.grid} d="M0 ${y}H${PLOT_PX.right}"/><text x="0" y="${y + 11}">${short}</text>`);
    for (const { atMs, untilMs } of bars) {
      const [x1, x2] = [Math.max(PLOT_PX.left, xOf(strip, atMs)), Math.min(PLOT_PX.right, xOf(strip, untilMs))];
      drawn.push(markup`<rect x="${x1}" y="${y + rows * ROW_PX - 1}" width="${x2 - x1}" height="3"/>`);
    }
    for (const { x, text, row, toLeft } of placed)
      drawn.push(
        markup`<path ${INK.event} d="M${x} ${y + row * ROW_PX + 2}v${ROW_PX - 3}"/><text x="${toLeft ? x - 3 : x + 3}" y="${y + row * ROW_PX + 11}" ${toLeft ? markup` text-anchor="end"` : undefined} >${text}</text>`,
      );
    y += rows * ROW_PX + (bars.length > 0 ? 4 : 0);
  }
  if (unlabelled > 0) {
    drawn.push(
      markup`<text x="0" y="${y + 11}">${unlabelled} marks have no room for their words: see the tables.</text>`,
    );
    y += ROW_PX;
  }
  const ticks = ticksOf(strip).map((atMs) => `M${xOf(strip, atMs)} ${topPx}V${y}`);
  return { drawn: markup`<path ${INK.grid} d="${ticks.join("")}"/>${drawn}`, heightPx: y - topPx };
}
