import { markup, type Html } from "./html.ts";

/**
 * How the parts of a plot are drawn, as attributes and not by the style sheet: what prints HTML without styling the SVG in
 * it would else fill each gap black, and hide the targets under it.
 */
export const INK = {
  grid: markup`fill="none" stroke="#bbb" stroke-width="0.6"`,
  gap: markup`fill="#e4e4e4" stroke="#000" stroke-width="0.6" stroke-dasharray="3 3"`,
  band: markup`fill="url(#r-hatch)" stroke="#000" stroke-width="0.6" stroke-dasharray="1 2"`,
  bars: markup`fill="none" stroke="#000" stroke-width="0.8"`,
  event: markup`fill="none" stroke="#000" stroke-width="1.4"`,
  target: markup`fill="none" stroke="#000"`,
  strong: markup`font-weight="700"`,
  halo: markup`paint-order="stroke" stroke="#fff" stroke-width="3"`,
} as const satisfies Readonly<Record<string, Html>>;
