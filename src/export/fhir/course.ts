import type { Observation } from "@medplum/fhirtypes";
import { linksOf } from "../../log/chains.ts";
import { SPOKEN_CLOCKS, type SpokenClock } from "../../log/careFacts.ts";
import type { Fact } from "../../log/facts.ts";
import { CLOCKS, PHASES } from "../../log/courseWords.ts";
import { own } from "./codes.ts";
import { categoryOf, concept, notes, period, type Context, type Exported } from "./elements.ts";
import { resourceId } from "./resourceId.ts";

const base = (context: Context, key: string) => ({
  resourceType: "Observation" as const,
  id: resourceId(key),
  ...context.meta,
  status: "final" as const,
  category: [categoryOf("procedure")],
  subject: context.subject,
  encounter: context.encounter,
});

/** The phases in their order, each until the next: said by somebody, or brought about by what was done. */
function phases(context: Context): readonly Exported<Observation>[] {
  const { state, facts } = context.recorded;
  // A second fact that would have brought a phase about has a link of its own: the phase began with the first.
  const links = [...linksOf(state.care.phases)].reverse();
  const entries = links.filter(({ phase }, n) => links[n - 1]?.phase !== phase);
  return entries.map(({ phase, atMs, factId }, n) => {
    const fact = facts.find(({ id }) => id === factId);
    const isSaid = fact?.type === "phase.entered";
    const resource: Observation = {
      ...base(context, `${factId}/phase/${phase}`),
      code: concept("Phase of the case", own("phase")),
      effectivePeriod: period(context, atMs, entries[n + 1]?.atMs),
      valueCodeableConcept: concept(PHASES[phase], own(phase)),
      ...notes(context, isSaid ? fact : undefined),
    };
    return { resource, origins: [isSaid ? "spoken" : "computed"] };
  });
}

type Call = Extract<Fact, { readonly type: "clock.started" | "clock.stopped" }>;

/** A clock that was called out, from its start to its stop. */
function calledClocks(context: Context, clock: SpokenClock, calls: readonly Call[]): readonly Exported<Observation>[] {
  return calls.flatMap((call, n): readonly Exported<Observation>[] => {
    const runs = calls[n - 1]?.type === "clock.started";
    if (call.type === "clock.stopped" || runs) return [];
    const stop = calls.slice(n).find(({ type }) => type === "clock.stopped");
    const resource: Observation = {
      ...base(context, call.id),
      code: concept(`Called out: ${CLOCKS[clock]}`, own(clock)),
      effectivePeriod: period(context, call.atMs, stop?.atMs),
      valueBoolean: true,
      ...notes(context, call),
    };
    return [{ resource, origins: ["spoken"] }];
  });
}

const FAILURE = concept("Airway called a failed one", own("failedAirway"));

function failure(context: Context, fact: Extract<Fact, { readonly type: "failure.called" }>): Exported<Observation> {
  const resource: Observation = {
    ...base(context, fact.id),
    code: FAILURE,
    effectiveDateTime: context.time(fact.atMs),
    valueBoolean: true,
    ...notes(context, fact),
  };
  return { resource, origins: ["spoken"] };
}

type Struck = Extract<Fact, { readonly type: "phase.entered" | "failure.called" }> | Call;
const isCourse = (fact: Fact): fact is Struck =>
  ["phase.entered", "failure.called", "clock.started", "clock.stopped"].includes(fact.type);

/** What was called out and struck out again: when, and what it was. */
function ofStruck(context: Context, fact: Struck): Exported<Observation> {
  const said =
    fact.type === "phase.entered"
      ? { code: concept("Phase of the case", own("phase")), valueCodeableConcept: concept(PHASES[fact.phase]) }
      : fact.type === "failure.called"
        ? { code: FAILURE, valueBoolean: true }
        : { code: concept(`Called out: ${CLOCKS[fact.clock]}`), valueBoolean: fact.type === "clock.started" };
  const when = { status: "entered-in-error" as const, effectiveDateTime: context.time(fact.atMs) };
  return { resource: { ...base(context, fact.id), ...said, ...when, ...notes(context, fact) }, origins: ["spoken"] };
}

/** How the case went besides values and acts: its phases, clocks that were called, the failed airway. */
export function course(context: Context): readonly Exported<Observation>[] {
  const { facts, struckIds } = context.recorded;
  const standing = facts.filter(({ id }) => !struckIds.has(id));
  const clocks = SPOKEN_CLOCKS.flatMap((clock) => {
    const isCall = (fact: Fact): fact is Call =>
      (fact.type === "clock.started" || fact.type === "clock.stopped") && fact.clock === clock;
    return calledClocks(context, clock, standing.filter(isCall));
  });
  const failures = standing.flatMap((fact) => (fact.type === "failure.called" ? [failure(context, fact)] : []));
  const struck = facts.filter(isCourse).filter(({ id }) => struckIds.has(id));
  return [...phases(context), ...clocks, ...failures, ...struck.map((fact) => ofStruck(context, fact))];
}
