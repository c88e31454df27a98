import { gcsParts, type GcsPart, type GcsParts, type NotTestable } from "../core/gcs.ts";
import type { Pupil, Pupils } from "../core/pupils.ts";
import { mm } from "../core/quantities.ts";
import type { CaseState, VitalEntry } from "../log/caseState.ts";
import { selectFinding, selectLatest } from "../log/selectors.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { paralysisAt } from "./paralysis.ts";

const GCS_CODES = { eye: "gcsEye", verbal: "gcsVerbal", motor: "gcsMotor" } as const;
const PARTS = ["eye", "verbal", "motor"] as const;

/** A pupil as it was last called: a reaction called alone says nothing of the size that was seen before. */
function pupilOf(state: CaseState, code: "pupilLeft" | "pupilRight"): Pupil | undefined {
  const finding = selectFinding(state, code);
  if (finding !== undefined && finding.finding !== "not-testable") return { reaction: finding.finding };
  const entry = selectLatest(state, code);
  if (entry === undefined) return undefined;
  const size = mm(entry.value);
  return { ...(size.ok && { sizeMm: size.value }), reaction: entry.reaction };
}

/** Both pupils as last called. */
export function pupilsNow(state: CaseState): Pupils {
  return { left: pupilOf(state, "pupilLeft"), right: pupilOf(state, "pupilRight") };
}

type Said = Readonly<Partial<Record<GcsPart, number | NotTestable>>>;

const checked = (said: Said): GcsParts => {
  const parts = gcsParts(said);
  return parts.ok ? parts.value : {};
};

/** Seen under a paralytic, a score is no examination. */
const counts = (state: CaseState, protocol: Protocol, { atMs, seq }: { atMs: number; seq: number }): boolean =>
  paralysisAt(state, protocol, { atMs, seq }) === undefined;

/** The parts of the Glasgow scale as last called; what was called under a paralytic is left out. */
export function gcsNow(state: CaseState, protocol: Protocol): GcsParts {
  const said: Partial<Record<GcsPart, number | NotTestable>> = {};
  for (const part of PARTS) {
    const finding = selectFinding(state, GCS_CODES[part]);
    const entry = selectLatest(state, GCS_CODES[part]);
    if (finding !== undefined && counts(state, protocol, finding)) said[part] = "not-testable";
    else if (finding === undefined && entry !== undefined && counts(state, protocol, entry)) said[part] = entry.value;
  }
  return checked(said);
}

/** The parts as they stood before the newest breath in which one was called; `first`: as they were called at first. */
export function gcsBefore(state: CaseState, which: "last" | "first"): GcsParts {
  const newest = PARTS.flatMap((part) => selectLatest(state, GCS_CODES[part]) ?? []).reduce<VitalEntry | undefined>(
    (last, entry) => (last === undefined || entry.seq > last.seq ? entry : last),
    undefined,
  );
  const said: Partial<Record<GcsPart, number>> = {};
  for (const part of PARTS) {
    for (let link = state.vitals[GCS_CODES[part]]; link !== undefined; link = link.earlier) {
      if (link.entry.readingId === newest?.readingId) continue;
      said[part] = link.entry.value;
      if (which === "last") break;
    }
  }
  return checked(said);
}
