import { markup, type Html } from "./html.ts";

/** How each series is told from the others without colour: its mark, its line, and the line of its target. */
export type Look = {
  readonly id: string;
  readonly line: string;
  readonly widthPx: number;
  readonly targetLine: string;
};

export const LOOKS = {
  sbp: { id: "r-sbp", line: "none", widthPx: 0.8, targetLine: "10 4" },
  map: { id: "r-map", line: "none", widthPx: 2, targetLine: "16 3" },
  cpp: { id: "r-cpp", line: "7 2 2 2", widthPx: 1.4, targetLine: "2 3" },
  spo2: { id: "r-spo2", line: "none", widthPx: 1.2, targetLine: "10 4" },
  etco2: { id: "r-etco2", line: "none", widthPx: 1.2, targetLine: "10 4" },
} as const satisfies Readonly<Record<string, Look>>;

/** Once in the document; every plot refers to them. */
export const markDefinitions = (): Html =>
  markup`<svg class="defs" width="0" height="0" aria-hidden="true"><defs><path id="r-sbp" d="M-4-3.5h8L0 4z" fill="#fff" stroke="#000"/><circle id="r-map" r="3.2"/><path id="r-cpp" d="M-3-3h6v6h-6z"/><path id="r-spo2" d="M0-4.2 4.2 0 0 4.2-4.2 0z"/><circle id="r-etco2" r="3" fill="#fff" stroke="#000" stroke-width="1.4"/><pattern id="r-hatch" width="6" height="6" patternUnits="userSpaceOnUse"><path d="M-1 7 7-1" stroke="#444" stroke-width="0.8"/></pattern></defs></svg>`;

export const mark = (look: Look, x: number, y: number): Html => markup`<use href="#${look.id}" x="${x}" y="${y}"/>`;

export const line = (points: string, look: Look): Html =>
  markup`<polyline points="${points}" fill="none" stroke="#000" stroke-width="${look.widthPx}" stroke-dasharray="${look.line}"/>`;

type Entry = { readonly label: string; readonly sample: Html };

const straight = (widthPx: number, dashes: string): Html =>
  markup`<path d="M2 8h44" stroke="#000" stroke-width="${widthPx}" stroke-dasharray="${dashes}"/>`;
const series = (look: Look): Html => markup`${straight(look.widthPx, look.line)}${mark(look, 24, 8)}`;

/** What the lines mean. `assumed`: the ICP that stands in for one that is not measured. */
export function legend(assumed: string): Html {
  const entries: readonly Entry[] = [
    { label: "SBP", sample: series(LOOKS.sbp) },
    { label: "MAP", sample: series(LOOKS.map) },
    { label: "CPP with measured ICP", sample: series(LOOKS.cpp) },
    {
      label: `CPP if ICP is ${assumed} (assumed)`,
      sample: markup`<path d="M2 2h44v12H2z" fill="url(#r-hatch)" stroke="#000" stroke-dasharray="1 2"/>`,
    },
    { label: "SBP target", sample: straight(0.8, LOOKS.sbp.targetLine) },
    { label: "MAP target", sample: straight(1.6, LOOKS.map.targetLine) },
    { label: "CPP target", sample: straight(1.6, LOOKS.cpp.targetLine) },
    {
      label: "not known: no reading",
      sample: markup`<path d="M2 2h44v12H2z" fill="#e4e4e4" stroke="#000" stroke-dasharray="3 3"/>`,
    },
  ];
  return markup`<ul class="legend">${entries.map(
    ({ label, sample }) => markup`<li><svg width="48" height="16" aria-hidden="true">${sample}</svg>${label}</li>`,
  )}</ul>`;
}
