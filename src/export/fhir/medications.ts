import type { Medication, MedicationAdministration } from "@medplum/fhirtypes";
import type { SaidAmount, SaidRate } from "../../log/careFacts.ts";
import type { Fact } from "../../log/facts.ts";
import { findMedicine } from "../../protocol/findMedicine.ts";
import type { Protocol, Step } from "../../protocol/protocol.ts";
import { infusionSegments, type InfusionSegment } from "../infusionSegments.ts";
import { toSixDigits, ucumOf } from "../ucum.ts";
import { concept, notes, period, quantity, referTo, type Context, type Exported } from "./elements.ts";
import { resourceId } from "./resourceId.ts";
import { strengthOf } from "./strengths.ts";

type Of<T extends Fact["type"]> = Extract<Fact, { readonly type: T }>;

const inWords = ({ value, unit }: SaidAmount | SaidRate): string => `${toSixDigits(value)} ${ucumOf(unit)}`;

/**
 * Drugs go by their names: no codes for them were checked. Nobody says the route, so none is given.
 *
 * @param from what holds the concentration that it was given from.
 */
const named = (context: Context, fact: Fact, name: string, from?: Of<"strength.affirmed">) => ({
  resourceType: "MedicationAdministration" as const,
  id: resourceId(fact.id),
  ...context.meta,
  ...(from === undefined
    ? { medicationCodeableConcept: concept(name) }
    : { medicationReference: { ...referTo<Medication>(from.id), display: name } }),
  subject: context.subject,
  context: context.encounter,
});

const statusOf = (struck: boolean) => (struck ? "entered-in-error" : "completed");
const nameOf = (protocol: Protocol, id: string): string => findMedicine(protocol, id)?.name ?? id;

function bolus(context: Context, fact: Of<"drug.given">): MedicationAdministration {
  const { protocol, struckIds } = context.recorded;
  const { amount, volumeMl } = fact;
  const volume = volumeMl === undefined || amount.unit === "mL" ? "" : `, ${toSixDigits(volumeMl)} mL`;
  return {
    ...named(context, fact, nameOf(protocol, fact.drugId), strengthOf(context, fact)),
    status: statusOf(struckIds.has(fact.id)),
    effectiveDateTime: context.time(fact.atMs),
    dosage: { text: `${inWords(amount)}${volume}`, dose: quantity(amount.value, ucumOf(amount.unit)) },
    ...notes(context, fact),
  };
}

function fluid(context: Context, fact: Of<"fluid.given">): MedicationAdministration {
  const { protocol, struckIds } = context.recorded;
  const name = protocol.fluids.find(({ id }) => id === fact.fluidId)?.label ?? fact.fluidId;
  return {
    ...named(context, fact, name),
    status: statusOf(struckIds.has(fact.id)),
    effectiveDateTime: context.time(fact.atMs),
    dosage: { dose: quantity(fact.volumeMl, "mL") },
    ...notes(context, fact),
  };
}

/** One segment. It is done where another rate or a stop followed, and goes on where the record ends before. */
function infusion(context: Context, { fact, untilMs, struck }: InfusionSegment): MedicationAdministration {
  const { rate, mlPerH, weightKg, strength } = fact;
  const more = [
    inWords(rate),
    weightKg === undefined ? undefined : `at ${toSixDigits(weightKg)} kg`,
    mlPerH === undefined ? undefined : `pump at ${toSixDigits(mlPerH)} mL/h`,
    strength && `${inWords({ value: strength.amount, unit: strength.unit })} in ${strength.volumeMl} mL`,
  ].filter((part) => part !== undefined);
  return {
    ...named(context, fact, nameOf(context.recorded.protocol, fact.drugId), strengthOf(context, fact)),
    status: struck ? "entered-in-error" : untilMs === undefined ? "in-progress" : "completed",
    effectivePeriod: period(context, fact.atMs, untilMs),
    dosage: { text: more.join(", "), rateQuantity: quantity(rate.value, ucumOf(rate.unit)) },
    ...notes(context, fact),
  };
}

const GIVES: readonly (string | undefined)[] = ["strength-affirmed", "infusion-running", "fluid-given"];
/** Steps about drugs that no record answers: their ids are those by which the grammar knows them. */
const GIVES_BY_ID: readonly string[] = ["sedationRunning", "rescueOsmotic", "rescueSedation"];

/**
 * Steps about something to be given: answered by it, known to be about drugs, or standing in a group with one whose syringe
 * is read back.
 */
function drugSteps({ groups }: Protocol): readonly Step[] {
  const gives = ({ id, satisfiedBy }: Step): boolean => GIVES.includes(satisfiedBy?.kind) || GIVES_BY_ID.includes(id);
  return groups.flatMap(({ steps }) => {
    const isOfDrugs = steps.some(({ satisfiedBy }) => satisfiedBy?.kind === "strength-affirmed");
    return steps.filter((step) => isOfDrugs || gives(step));
  });
}

/** What was passed over: the last answer to such a step, or one that was struck. */
function notDone(context: Context): readonly MedicationAdministration[] {
  const { facts, struckIds, protocol } = context.recorded;
  const steps = new Map(drugSteps(protocol).map((step) => [step.id, step]));
  const answers = facts.filter((f): f is Of<"step.answered"> => f.type === "step.answered");
  const last = new Map(answers.filter(({ id }) => !struckIds.has(id)).map((f) => [f.stepId, f]));
  return answers.flatMap((fact): readonly MedicationAdministration[] => {
    const step = steps.get(fact.stepId);
    const struck = struckIds.has(fact.id);
    const passedOver = fact.answer === "not-needed" || fact.answer === "waived";
    if (step === undefined || !passedOver || !(struck || last.get(fact.stepId) === fact)) return [];
    const why = fact.answer === "waived" ? "waived aloud" : "not needed";
    return [
      {
        ...named(context, fact, step.name),
        status: struck ? "entered-in-error" : "not-done",
        statusReason: [concept(fact.reason === undefined ? why : `${why}: ${fact.reason}`)],
        effectiveDateTime: context.time(fact.atMs),
        ...notes(context, fact),
      },
    ];
  });
}

/** What was given, what ran, and what was passed over; struck entries among them. */
export function medications(context: Context): readonly Exported<MedicationAdministration>[] {
  const { facts } = context.recorded;
  const given = facts.flatMap((fact) =>
    fact.type === "drug.given" ? [bolus(context, fact)] : fact.type === "fluid.given" ? [fluid(context, fact)] : [],
  );
  const ran = infusionSegments(context.recorded).map((segment) => infusion(context, segment));
  return [...given, ...ran, ...notDone(context)].map((resource) => ({ resource, origins: ["spoken"] }));
}
