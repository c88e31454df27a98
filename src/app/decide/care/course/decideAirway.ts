import { sayAirwayAlready, sayAirwayEvent } from "../../../../language/sentences/attempt.ts";
import type { AirwayEvent } from "../../../../log/careFacts.ts";
import { attemptLength, selectAirway, type Airway } from "../../../../log/attempt.ts";
import type { CaseState } from "../../../../log/caseState.ts";
import type { NewFact } from "../../../../log/facts.ts";
import { reduceFacts } from "../../../../log/reduceFact.ts";
import { answered, ignored, recorded, type Decision } from "../../decision.ts";
import type { Source } from "../../recordStatement.ts";
import { stamp } from "../../stamp.ts";

/** What was called changes nothing: it is so already, or there is nothing that could come out. */
function changesNothing(event: AirwayEvent, { attempts, tube }: Airway): boolean {
  const runs = attempts.at(-1)?.outcome === "running";
  switch (event) {
    case "bladeIn":
      return runs;
    case "out":
      return !runs;
    case "tubeIn":
      return tube !== undefined;
    case "tubeConfirmed":
      return tube?.confirmed === true;
    case "tubeOut":
      return tube === undefined;
  }
}

/** What was called at the airway. Out of order it counts with what it implies: a tube without a blade was an attempt. */
export function decideAirway(log: CaseState, event: AirwayEvent, source: Source, nowMs: number): Decision {
  const before = selectAirway(log);
  if (changesNothing(event, before)) {
    // "Out" is said of many things: without an attempt it was not said to us.
    if (event === "out") return ignored;
    return answered(sayAirwayAlready(event, before.attempts.length));
  }
  const facts: readonly NewFact[] = [{ type: "airway.event", event, ...source }];
  const { attempts } = selectAirway(reduceFacts(stamp(log, facts, nowMs), log));
  const last = attempts.at(-1);
  if (last === undefined || event === "tubeOut") return recorded(sayAirwayEvent(event), facts);
  if (event === "bladeIn") return recorded(sayAirwayEvent(event, { number: last.number }), facts);
  // A tube that is confirmed after it was called in ends nothing: its attempt was told then.
  if (event === "tubeConfirmed" && before.tube !== undefined) return recorded(sayAirwayEvent(event), facts);
  return recorded(sayAirwayEvent(event, { number: last.number, lengthMs: attemptLength(last, nowMs) }), facts);
}
