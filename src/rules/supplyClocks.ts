import type { CaseState } from "../log/caseState.ts";
import type { Protocol } from "../protocol/protocol.ts";
import type { Clock } from "./clock.ts";
import { cylinderEnd } from "./cylinderEnd.ts";
import { infusionEnds } from "./infusionEnd.ts";
import { osmoticEnds } from "./osmoticEnd.ts";

const MS_PER_MIN = 60_000;

/** When the bags are empty, newest rate first to last; each counts from when its rate was set. */
function bags(state: CaseState, protocol: Protocol, nowMs: number): readonly Clock[] {
  return infusionEnds(state, protocol, nowMs).map(({ drugId, name, atMs }) => {
    const startedAtMs = state.care.infusions[drugId]?.atMs ?? nowMs;
    return { id: "bag", startedAtMs, endsAtMs: atMs, subject: name };
  });
}

/** When the oxygen is down at the part that is never counted on. */
function cylinder(state: CaseState, protocol: Protocol, nowMs: number): readonly Clock[] {
  const end = cylinderEnd(state, protocol, nowMs);
  if (end === undefined) return [];
  return [{ id: "cylinder", startedAtMs: end.recordedAtMs, endsAtMs: nowMs + end.toReserveMin * MS_PER_MIN }];
}

/** Clocks of what runs in and runs out: osmotic agents, bags, oxygen. */
export const supplyClocks = (state: CaseState, protocol: Protocol, nowMs: number): readonly Clock[] => [
  ...osmoticEnds(state, protocol).map(({ name, startedAtMs, atMs }): Clock => ({
    id: "osmotic",
    startedAtMs,
    endsAtMs: atMs,
    subject: name,
  })),
  ...bags(state, protocol, nowMs),
  ...cylinder(state, protocol, nowMs),
];
