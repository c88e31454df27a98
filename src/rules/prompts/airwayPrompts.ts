import { attemptLength, selectAirway, selectRunningAttempt } from "../../log/attempt.ts";
import type { CaseState } from "../../log/caseState.ts";
import { selectLatest } from "../../log/selectors.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import { airwayClocks } from "../airwayClocks.ts";
import { isOver, runFor } from "../clock.ts";
import type { Prompt } from "./prompt.ts";

/** Steps of the preparation whose values count here once they are answered. */
const STOP_STEP = "stopSaturation";
const LIMIT_STEP = "attemptLimit";

const stepValue = ({ steps }: CaseState, id: string): number | undefined => steps[id]?.value?.value;

/** The saturation at which an attempt stops, %: the protocol's, or the one that was agreed if that is higher. */
const stopPct = (state: CaseState, { oxygen }: Protocol): number =>
  Math.max(oxygen.stopSpo2Pct.value, stepValue(state, STOP_STEP) ?? -Infinity);

/** An attempt goes on under the saturation at which it is to stop. A value from before the blade counts too. */
export function stopAttempt(state: CaseState, protocol: Protocol): readonly Prompt[] {
  const spo2 = selectLatest(state, "spo2");
  if (selectRunningAttempt(state) === undefined || spo2 === undefined) return [];
  if (spo2.value > stopPct(state, protocol)) return [];
  return [{ promptId: "stopAttempt", spo2Pct: spo2.value, key: spo2.id, priority: "high", repeats: false }];
}

/** Full intervals that have passed; the words give the length that was reached, not that of a late second. */
const passed = (forMs: number, everyS: number): number => Math.floor(forMs / (everyS * 1000));

/** A tube without a CO2 value; the length of the apnoea and of the attempt as they grow; enough oxygen beforehand. */
export function airwayTimePrompts(state: CaseState, protocol: Protocol, nowMs: number): readonly Prompt[] {
  const { attemptS, apnoeaEveryS } = protocol.timers;
  return airwayClocks(state, protocol).flatMap((clock): readonly Prompt[] => {
    const forMs = runFor(clock, nowMs);
    const said = (everyS: number) => {
      const count = passed(forMs, everyS);
      return { count, forMs: count * everyS * 1000, key: `${clock.startedAtMs}:${count}` };
    };
    switch (clock.id) {
      case "tubeToCo2": {
        if (!isOver(clock, nowMs)) return [];
        const key = String(clock.startedAtMs);
        // Nothing kills so surely as a tube in the wrong place: it is said until there is a value, whatever else was said.
        return [{ promptId: "noCo2", sinceMs: forMs, key, priority: "high", repeats: true, always: true }];
      }
      case "apnoea": {
        // The length of the attempt is spoken instead: two clocks in one breath are none.
        if (selectRunningAttempt(state) !== undefined) return [];
        const { count, ...rest } = said(apnoeaEveryS.value);
        return count === 0 ? [] : [{ promptId: "apnoea", ...rest, priority: "low", repeats: false, callOut: true }];
      }
      case "attempt": {
        const { count, ...rest } = said(attemptS.value);
        const number = Number(clock.subject);
        return count === 0
          ? []
          : [{ promptId: "attempt", number, ...rest, priority: "low", repeats: false, callOut: true }];
      }
      case "preoxygenation": {
        if (!isOver(clock, nowMs)) return [];
        const key = String(clock.startedAtMs);
        const enoughMs = protocol.oxygen.preoxygenateS.value * 1000;
        return [{ promptId: "preoxygenated", forMs: enoughMs, key, priority: "low", repeats: false, callOut: true }];
      }
      default:
        return [];
    }
  });
}

/** As many attempts as were agreed on have failed, and the airway was not called failed since. */
export function attemptLimit(state: CaseState, nowMs: number): readonly Prompt[] {
  const limit = stepValue(state, LIMIT_STEP);
  const { attempts, tube } = selectAirway(state);
  const last = attempts.at(-1);
  if (limit === undefined || last === undefined || tube !== undefined || last.outcome === "running") return [];
  if (attempts.length < limit || last.outcome === "confirmed") return [];
  const endedAtMs = last.startedAtMs + attemptLength(last, nowMs);
  if (state.care.failure !== undefined && state.care.failure.atMs >= endedAtMs) return [];
  const key = `${last.startedAtMs}:${attempts.length}`;
  return [{ promptId: "attemptLimit", attempts: attempts.length, key, priority: "medium", repeats: true }];
}
