import type { CaseState } from "../log/caseState.ts";
import { selectMeasures } from "../log/rescue.ts";
import { spokenStart } from "../log/spokenClock.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { airwayClocks } from "./airwayClocks.ts";
import { fullSetClock, neuroClock, pressureClock } from "./checkClocks.ts";
import type { Clock } from "./clock.ts";
import { pushDoseClock, sedationClock } from "./drugClocks.ts";
import { supplyClocks } from "./supplyClocks.ts";

/** Measures that may only last so long: hyperventilation as called, and all that is done against herniation. */
export function measureClocks(state: CaseState, { timers }: Protocol): readonly Clock[] {
  const lastMs = timers.herniationMeasuresS.value * 1000;
  const blown = spokenStart(state, "hyperventilation");
  const measures = selectMeasures(state);
  const clock = (id: "hyperventilation" | "rescue", startedAtMs: number): Clock => ({
    id,
    startedAtMs,
    endsAtMs: startedAtMs + lastMs,
  });
  return [
    ...(blown === undefined ? [] : [clock("hyperventilation", blown.atMs)]),
    ...(measures === undefined ? [] : [clock("rescue", measures.atMs)]),
  ];
}

/**
 * The clocks that run, from the facts alone: striking a fact stops the clock that it started, and a reload finds them all
 * as they were.
 *
 * @param nowMs Unix ms.
 */
export function clocksRunning(state: CaseState, protocol: Protocol, nowMs: number): readonly Clock[] {
  const due = [
    pushDoseClock(state, protocol),
    sedationClock(state, protocol, nowMs),
    pressureClock(state, protocol, nowMs),
    neuroClock(state, protocol),
    fullSetClock(state, protocol),
  ];
  return [
    ...airwayClocks(state, protocol),
    ...measureClocks(state, protocol),
    ...due.flatMap((clock) => (clock === undefined ? [] : [clock])),
    ...supplyClocks(state, protocol, nowMs),
  ];
}
