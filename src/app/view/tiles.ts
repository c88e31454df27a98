import { VITALS, type VitalCode } from "../../core/vitals.ts";
import { showRecorded } from "../../language/sentences/recordedValue.ts";
import { showAge, showPressure, showValue } from "../../language/sentences/vital.ts";
import { showNumber } from "../../language/sentences/number.ts";
import type { CaseState } from "../../log/caseState.ts";
import { selectFinding, selectLatest } from "../../log/selectors.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import type { Tile } from "../screenView.ts";

const NOT_RECORDED = "not yet recorded";

/** Shown from the start, so that what is missing is seen; the rest appears once it is recorded. */
const ALWAYS: readonly VitalCode[] = ["hr", "spo2", "etco2", "icp"];
const WHEN_RECORDED: readonly VitalCode[] = ["rr", "temp", "glucose", "weight", "height", "age"];
const GCS = ["gcsEye", "gcsVerbal", "gcsMotor"] as const;
const PUPILS = ["pupilLeft", "pupilRight"] as const;

type Timed = { readonly atMs: number };

function tile(
  id: string,
  label: string,
  text: string,
  source: Timed | undefined,
  protocol: Protocol,
  nowMs: number,
): Tile {
  if (source === undefined) return { id, label, text: NOT_RECORDED, origin: "none", ageText: "", stale: false };
  const ageMs = nowMs - source.atMs;
  const stale = ageMs > protocol.timers.staleAfterS.value * 1000;
  return { id, label, text, origin: "measured", ageText: showAge(ageMs), stale };
}

function pressureTile(log: CaseState, protocol: Protocol, nowMs: number): Tile {
  const sbp = selectLatest(log, "sbp");
  const dbp = selectLatest(log, "dbp");
  const paired = dbp?.readingId === sbp?.readingId ? dbp?.value : undefined;
  const how = sbp?.method === undefined ? "" : ` ${sbp.method}`;
  const text = sbp === undefined ? "" : `${showPressure(sbp.value, paired)}${how}`;
  return tile("pressure", "Pressure", text, sbp, protocol, nowMs);
}

function vitalTile(log: CaseState, code: VitalCode, protocol: Protocol, nowMs: number): Tile {
  const entry = selectLatest(log, code);
  const level = entry?.level === undefined ? "" : ` at ${entry.level}`;
  const text = entry === undefined ? "" : `${showRecorded(entry, protocol.region)}${level}`;
  return tile(code, VITALS[code].label, text, entry, protocol, nowMs);
}

/** GCS by part. A part that cannot be tested is NT, never a number; there is no total while one is missing. */
function gcsTile(log: CaseState, protocol: Protocol, nowMs: number): Tile {
  const parts = GCS.map((code) => {
    const letter = code.charAt(3);
    const found = selectFinding(log, code);
    const entry = selectLatest(log, code);
    if (found !== undefined) return { text: `${letter}NT`, at: found };
    return { text: entry === undefined ? `${letter}–` : `${letter}${showNumber(entry.value, 0)}`, at: entry };
  });
  const times = parts.flatMap((p) => p.at ?? []);
  const oldest = times.toSorted((a, b) => a.atMs - b.atMs)[0];
  return tile("gcs", "GCS", parts.map((p) => p.text).join(" "), oldest, protocol, nowMs);
}

function pupilTile(log: CaseState, code: (typeof PUPILS)[number], protocol: Protocol, nowMs: number): Tile {
  const found = selectFinding(log, code);
  const entry = selectLatest(log, code);
  // A newer finding without a size: the older size would look as fresh as the finding.
  const size = entry === undefined || found !== undefined ? "" : showValue(code, entry.value);
  const reaction = found?.finding ?? entry?.reaction ?? "";
  return tile(
    code,
    VITALS[code].label,
    [size, reaction].filter((p) => p !== "").join(" "),
    found ?? entry,
    protocol,
    nowMs,
  );
}

/** The values recorded so far, each with its age. */
export function viewTiles(log: CaseState, protocol: Protocol, nowMs: number): readonly Tile[] {
  const recorded = (code: VitalCode) => selectLatest(log, code) !== undefined;
  return [
    pressureTile(log, protocol, nowMs),
    ...ALWAYS.map((code) => vitalTile(log, code, protocol, nowMs)),
    gcsTile(log, protocol, nowMs),
    ...PUPILS.map((code) => pupilTile(log, code, protocol, nowMs)),
    ...WHEN_RECORDED.filter(recorded).map((code) => vitalTile(log, code, protocol, nowMs)),
  ];
}
