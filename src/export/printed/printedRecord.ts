import { targetSpans } from "../../log/targetSpans.ts";
import type { RecordedCase } from "../recordedCase.ts";
import { airwaySection } from "./airwayTable.ts";
import { caseHead } from "./caseHead.ts";
import { drugSection } from "./drugTables.ts";
import { markup, Html, section } from "./html.ts";
import { lowPressureSection } from "./pressureTable.ts";
import { spokenSection } from "./spokenTables.ts";
import { statementSection } from "./statementTable.ts";
import { stepSection } from "./stepTable.ts";
import { strikable } from "./struck.ts";
import { printedStyle } from "./style.ts";
import { timesIn } from "./times.ts";
import { trendPlot } from "./trendPlot.ts";
import { REHEARSAL } from "./words.ts";

/** A rehearsal is marked across each page too: not every browser fills the margins. */
const ACROSS = markup`<div class="across" aria-hidden="true"></div>`;

/**
 * The record of one case as one HTML document with its own style, to be printed on A4 or Letter.
 *
 * @param nowMs when it is printed, Unix ms.
 * @param zone  IANA name of the time zone in which times are given.
 *
 * Errors: none for a record that the app can have.
 * Not for: reading back; that is the exported JSON.
 */
export function printedRecord(
  recorded: RecordedCase,
  { nowMs, zone }: { readonly nowMs: number; readonly zone: string },
): string {
  const { facts, label, rehearsal, protocol, mark } = recorded;
  const endMs = facts.at(-1)?.atMs ?? nowMs;
  const times = timesIn(facts[0]?.atMs ?? nowMs, zone);
  const spans = targetSpans(facts, protocol, mark);
  const strike = strikable(recorded, times);
  const title = `Tragus, case ${label}${rehearsal ? `, ${REHEARSAL}` : ""}`;
  const style = printedStyle(`Tragus, case ${label}`, rehearsal ? REHEARSAL : "");
  return markup`<!doctype html><html lang="en-GB"><head><meta charset="utf-8"><title>${title}</title><style>${new Html(style)}</style></head><body><main class="record">${
    rehearsal ? ACROSS : undefined
  }${caseHead(recorded, times, nowMs, endMs)}${lowPressureSection(recorded, spans, times)}${section(
    "trend",
    "Trend",
    trendPlot(recorded, spans, times, endMs),
  )}${drugSection(recorded, times, strike)}${airwaySection(recorded, times, endMs)}${stepSection(recorded, times, endMs)}${spokenSection(
    recorded,
    times,
  )}${statementSection(recorded, times, strike)}</main></body></html>`.text;
}
