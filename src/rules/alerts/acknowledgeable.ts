import type { CaseState } from "../../log/caseState.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import { promptsStanding } from "../promptsDue.ts";
import { CAUSE_OF_PROMPT, type AlertCause } from "./cause.ts";
import { DEVICE_ALERTS } from "./condition.ts";
import { standingAlerts } from "./standing.ts";

/** Something that was said unasked and that nobody has acknowledged yet. */
export type Acknowledgeable = {
  readonly alertId: string;
  /** Of a prompt: which occurrence. */
  readonly key?: string;
  readonly cause: AlertCause;
  /** Unix ms. Alerts of one cause that were said as one have it in common. */
  readonly saidAtMs: number;
};

type Said = Acknowledgeable & { readonly seq: number };

function alertsSaid(state: CaseState, protocol: Protocol, nowMs: number): readonly Said[] {
  const standing = [
    ...standingAlerts(state, protocol, nowMs),
    // Whatever is wrong with the device stands in the log until it is mended.
    ...DEVICE_ALERTS.map((alertId) => ({ alertId, cause: "device" as const })),
  ];
  return standing.flatMap(({ alertId, cause }) => {
    const { announcedAtSeq: seq, announcedAtMs: saidAtMs, acknowledgedAtMs } = state.alerts[alertId] ?? {};
    if (seq === undefined || saidAtMs === undefined || acknowledgedAtMs !== undefined) return [];
    return [{ alertId, cause, saidAtMs, seq }];
  });
}

function promptsSaid(state: CaseState, protocol: Protocol, nowMs: number): readonly Said[] {
  return promptsStanding(state, protocol, nowMs).flatMap(({ promptId, key, repeats }) => {
    const said = state.care.prompts[promptId];
    // What is said only once needs nobody to take it on.
    if (!repeats || said?.key !== key || said.acknowledgedKey === key) return [];
    return [{ alertId: promptId, key, cause: CAUSE_OF_PROMPT[promptId], saidAtMs: said.atMs, seq: said.seq }];
  });
}

/** What "heard" can be about, the one said last first. */
export function acknowledgeable(state: CaseState, protocol: Protocol, nowMs: number): readonly Acknowledgeable[] {
  return [...alertsSaid(state, protocol, nowMs), ...promptsSaid(state, protocol, nowMs)]
    .sort((a, b) => b.seq - a.seq)
    .map(({ seq: _seq, ...said }) => said);
}
