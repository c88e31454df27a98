import { sayAcknowledged, sayCause, sayNothingToAcknowledge } from "../../../language/sentences/talk.ts";
import { sayWatched } from "../../../language/sentences/watched.ts";
import type { CaseState } from "../../../log/caseState.ts";
import type { NewFact } from "../../../log/facts.ts";
import type { Protocol } from "../../../protocol/protocol.ts";
import { acknowledgeable, type Acknowledgeable } from "../../../rules/alerts/acknowledgeable.ts";
import type { AlertCause } from "../../../rules/alerts/cause.ts";
import { answered, type Decision } from "../decision.ts";
import type { Source } from "../recordStatement.ts";

/** By its cause, which is how it was said; by its number where another of that cause waits beside it. */
function nameOf({ alerts }: Protocol, one: Acknowledgeable, all: readonly Acknowledgeable[]): string {
  const code = alerts.find(({ id }) => id === one.alertId)?.code;
  const isOnly = all.filter(({ cause }) => cause === one.cause).length === 1;
  return isOnly || code === undefined ? sayCause(one.cause) : sayWatched(code);
}

/**
 * "Heard": the alert said last, or all of the cause that is named. What else was said and nobody has acknowledged stays as
 * it is, and the newest of it is named.
 */
export function acknowledge(
  log: CaseState,
  protocol: Protocol,
  about: "last" | AlertCause,
  { heard }: Source,
): Decision {
  const all = acknowledgeable(log, protocol);
  const meant = about === "last" ? all.slice(0, 1) : all.filter(({ cause }) => cause === about);
  const [first] = meant;
  const [left] = all.filter((one) => !meant.includes(one));
  const next = left && nameOf(protocol, left, all);
  if (first === undefined)
    return answered(sayNothingToAcknowledge(about === "last" ? undefined : sayCause(about), next));
  const facts = meant.map(({ alertId, key }): NewFact => {
    const occurrence = key === undefined ? {} : { key };
    return { type: "alert.acknowledged", alertId, ...occurrence, heard };
  });
  return answered(sayAcknowledged(about === "last" ? nameOf(protocol, first, all) : sayCause(about), next), facts);
}
