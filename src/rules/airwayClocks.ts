import { selectApnoea } from "../log/apnoea.ts";
import { hasCo2Since, selectAirway } from "../log/attempt.ts";
import type { CaseState } from "../log/caseState.ts";
import { spokenStart } from "../log/spokenClock.ts";
import type { Protocol } from "../protocol/protocol.ts";
import type { Clock } from "./clock.ts";

/** Oxygen runs, until the patient stops breathing or has a tube. */
function preoxygenation(state: CaseState, { oxygen }: Protocol): readonly Clock[] {
  const start = spokenStart(state, "preoxygenation");
  const apnoea = selectApnoea(state);
  const { attempts, tube } = selectAirway(state);
  if (start === undefined || tube !== undefined || attempts.some((a) => a.startedAtMs >= start.atMs)) return [];
  if (apnoea !== undefined && apnoea.seq > start.seq) return [];
  const endsAtMs = start.atMs + oxygen.preoxygenateS.value * 1000;
  return [{ id: "preoxygenation", startedAtMs: start.atMs, endsAtMs }];
}

function apnoea(state: CaseState): readonly Clock[] {
  const start = selectApnoea(state);
  return start === undefined ? [] : [{ id: "apnoea", startedAtMs: start.atMs }];
}

function attempt(state: CaseState): readonly Clock[] {
  const last = selectAirway(state).attempts.at(-1);
  if (last?.outcome !== "running") return [];
  return [{ id: "attempt", startedAtMs: last.startedAtMs, subject: String(last.number) }];
}

/** A tube is in and no CO2 was called: also one that was called confirmed, since only a value proves it. */
function tubeToCo2(state: CaseState, { timers }: Protocol): readonly Clock[] {
  const { tube } = selectAirway(state);
  if (tube === undefined || hasCo2Since(state, tube)) return [];
  return [{ id: "tubeToCo2", startedAtMs: tube.atMs, endsAtMs: tube.atMs + timers.co2AfterTubeS.value * 1000 }];
}

/** Clocks of the airway that run: oxygen before, the apnoea, the attempt, and the tube without a CO2 value. */
export const airwayClocks = (state: CaseState, protocol: Protocol): readonly Clock[] => [
  ...preoxygenation(state, protocol),
  ...apnoea(state),
  ...attempt(state),
  ...tubeToCo2(state, protocol),
];
