import { sayAcknowledged, sayCause, sayNothingToAcknowledge } from "../../../language/sentences/talk.ts";
import { sayWatched } from "../../../language/sentences/alertNumber.ts";
import type { CaseState } from "../../../log/caseState.ts";
import type { NewFact } from "../../../log/facts.ts";
import type { Protocol } from "../../../protocol/protocol.ts";
import { acknowledgeable, type Acknowledgeable } from "../../../rules/alerts/acknowledgeable.ts";
import type { AlertCause } from "../../../rules/alerts/cause.ts";
import { answered, type Decision } from "../decision.ts";
import type { Source } from "../recordStatement.ts";

/** By its cause, which is how it was said; by its number where another of that cause waits beside it. */
function nameOf({ alerts }: Protocol, one: Acknowledgeable, others: readonly Acknowledgeable[]): string {
  const code = alerts.find(({ id }) => id === one.alertId)?.code;
  const isOnly = others.every(({ cause }) => cause !== one.cause);
  return isOnly || code === undefined ? sayCause(one.cause) : sayWatched(code, "computed");
}

/** What was said as one is meant as one. */
const saidTogether = (a: Acknowledgeable, b: Acknowledgeable): boolean =>
  a.cause === b.cause && a.saidAtMs === b.saidAtMs;

/**
 * "Heard": the alert said last, or all of the cause that is named. What else was said and nobody has acknowledged stays as
 * it is, and the newest of it is named.
 */
export function acknowledge(
  log: CaseState,
  protocol: Protocol,
  about: "last" | AlertCause,
  { heard }: Source,
  nowMs: number,
): Decision {
  const all = acknowledgeable(log, protocol, nowMs);
  const [newest] = all;
  const isMeant = (one: Acknowledgeable): boolean =>
    about === "last" ? newest !== undefined && saidTogether(one, newest) : one.cause === about;
  const meant = all.filter(isMeant);
  const left = all.filter((one) => !isMeant(one));
  const next = left[0] && nameOf(protocol, left[0], meant);
  const [first] = meant;
  if (first === undefined)
    return answered(sayNothingToAcknowledge(about === "last" ? undefined : sayCause(about), next));
  const facts = meant.map(({ alertId, key }): NewFact => {
    const occurrence = key === undefined ? {} : { key };
    return { type: "alert.acknowledged", alertId, ...occurrence, heard };
  });
  return answered(sayAcknowledged(about === "last" ? nameOf(protocol, first, left) : sayCause(about), next), facts);
}
