import type { CaseState } from "../../log/caseState.ts";
import type { Protocol, WatchedCode } from "../../protocol/protocol.ts";
import type { AlertCause } from "./cause.ts";

/** Something that was said unasked and that nobody has acknowledged yet. */
export type Acknowledgeable = {
  readonly alertId: string;
  /** Of a prompt: which occurrence. */
  readonly key?: string;
  readonly cause: AlertCause;
};

const CAUSES: Readonly<Record<WatchedCode, AlertCause>> = {
  map: "pressure",
  sbp: "pressure",
  cpp: "pressure",
  spo2: "oxygen",
};

/** What "heard" can be about, the one said last first. */
export function acknowledgeable(state: CaseState, protocol: Protocol): readonly Acknowledgeable[] {
  return protocol.alerts
    .flatMap(({ id, code }) => {
      const alert = state.alerts[id];
      if (alert?.announcedAtSeq === undefined || alert.acknowledgedAtMs !== undefined) return [];
      return [{ alertId: id, cause: CAUSES[code], seq: alert.announcedAtSeq }];
    })
    .sort((a, b) => b.seq - a.seq)
    .map(({ alertId, cause }) => ({ alertId, cause }));
}
