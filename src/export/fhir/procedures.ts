import type { Annotation, Procedure } from "@medplum/fhirtypes";
import { selectAirway, type Attempt, type AttemptOutcome } from "../../log/attempt.ts";
import { linksOf } from "../../log/chains.ts";
import type { Fact } from "../../log/facts.ts";
import { AIRWAY_EVENTS } from "../../log/courseWords.ts";
import { INTUBATION, SUCCESSFUL, UNSUCCESSFUL } from "./codes.ts";
import { concept, notes, period, type Context, type Exported } from "./elements.ts";
import { resourceId } from "./resourceId.ts";

/** A tube that nobody called confirmed is no success yet, and no failure. */
const OUTCOMES: Readonly<Record<AttemptOutcome, Pick<Procedure, "status" | "outcome">>> = {
  running: { status: "in-progress" },
  out: { status: "stopped", outcome: concept("blade out without a tube", UNSUCCESSFUL) },
  tubeIn: { status: "completed", outcome: concept("tube in, not called confirmed") },
  confirmed: { status: "completed", outcome: concept("tube in and confirmed", SUCCESSFUL) },
  tubeOut: { status: "completed", outcome: concept("tube came out again unproved", UNSUCCESSFUL) },
};

const CODE = concept("Insertion of a tracheal tube", INTUBATION);

/** The calls at the airway from the beginning of an attempt to that of the next, each with its time. */
function callsOf({ recorded: { state }, time }: Context, fromMs: number, nextMs: number): readonly Annotation[] {
  const calls = [...linksOf(state.care.airway)].reverse();
  const own = calls.filter(({ atMs }) => atMs >= fromMs && atMs < nextMs);
  return own.map(({ event, atMs }) => ({ time: time(atMs), text: AIRWAY_EVENTS[event] }));
}

function ofAttempt(context: Context, attempt: Attempt, next: Attempt | undefined): Exported {
  const { number, startedAtMs, endedAtMs, outcome, implied } = attempt;
  const { note = [] } = notes(
    context,
    undefined,
    `Attempt ${number}`,
    ...(implied ? ["Nobody called the blade: start assumed"] : []),
  );
  const resource: Procedure = {
    resourceType: "Procedure",
    id: resourceId(`${context.recorded.caseId}/attempt/${number}`),
    ...context.meta,
    ...OUTCOMES[outcome],
    code: CODE,
    subject: context.subject,
    encounter: context.encounter,
    performedPeriod: period(context, startedAtMs, endedAtMs),
    note: [...note, ...callsOf(context, startedAtMs, next?.startedAtMs ?? Infinity)],
  };
  return { resource, origins: implied ? ["spoken", "assumed"] : ["spoken"] };
}

const ofStruck = (context: Context, fact: Extract<Fact, { readonly type: "airway.event" }>): Exported => {
  const resource: Procedure = {
    resourceType: "Procedure",
    id: resourceId(fact.id),
    ...context.meta,
    status: "entered-in-error",
    code: CODE,
    subject: context.subject,
    encounter: context.encounter,
    performedDateTime: context.time(fact.atMs),
    ...notes(context, fact, `Call at the airway: ${AIRWAY_EVENTS[fact.event]}`),
  };
  return { resource, origins: ["spoken"] };
};

/** Each attempt at the tube, with what came of it; and each call at the airway that was struck. */
export const procedures = (context: Context): readonly Exported[] => {
  const { state, facts, struckIds } = context.recorded;
  const { attempts } = selectAirway(state);
  const struck = facts.flatMap((f) => (f.type === "airway.event" && struckIds.has(f.id) ? [ofStruck(context, f)] : []));
  return [...attempts.map((attempt, n) => ofAttempt(context, attempt, attempts[n + 1])), ...struck];
};
