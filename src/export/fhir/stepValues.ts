import type { Coding, Observation, Quantity } from "@medplum/fhirtypes";
import type { StepValue } from "../../log/facts.ts";
import { findStep } from "../../protocol/findStep.ts";
import { toSixDigits } from "../ucum.ts";
import { loinc, own } from "./codes.ts";
import { categoryOf, concept, notes, quantity, referTo, statusOf, type Context, type Exported } from "./elements.ts";
import { resourceId } from "./resourceId.ts";
import { stepRuns, struckAnswerKey, type AnswerFact } from "./stepRuns.ts";

/** Units of step values in the protocol file, in UCUM. Counts and sizes have no unit there, only a word in braces. */
const UCUM: Readonly<Record<string, string>> = {
  mm: "mm",
  cm: "cm",
  min: "min",
  mL: "mL",
  "mL/h": "mL/h",
  "mcg/mL": "ug/mL",
  "%": "%",
  mmHg: "mm[Hg]",
  cmH2O: "cm[H2O]",
  "°C": "Cel",
  "mmol/L": "mmol/L",
  attempts: "{attempts}",
  size: "{size}",
};

/** A value in UCUM; in a unit of a local protocol that is not known here, as it is written there and without a code. */
export function stepQuantity({ value, unit }: StepValue): Quantity {
  const code = UCUM[unit];
  return code === undefined ? { value: toSixDigits(value), unit } : quantity(value, code);
}

/**
 * What a value is, by what the protocol says that the step carries, and its unit: a step of another protocol that carries
 * something else is not taken for it. Source: read under these names ("… setting Ventilator") in published FHIR profiles
 * and examples. For tube size and depth nothing was found, so they go by our code and their words.
 */
const CODES: Readonly<Record<string, Coding>> = {
  "tidal volume, mL": loinc("20112-9"),
  "positive end-expiratory pressure, cmH2O": loinc("20077-4"),
};

function ofAnswer(context: Context, fact: AnswerFact, from: string, struck: boolean): readonly Exported<Observation>[] {
  const { stepId, value } = fact;
  if (value === undefined) return [];
  const step = findStep(context.recorded.protocol, stepId);
  const what = step?.carries?.what ?? step?.name ?? stepId;
  const code = CODES[`${what}, ${value.unit}`];
  const resource: Observation = {
    resourceType: "Observation",
    id: resourceId(`${fact.id}/value`),
    ...context.meta,
    status: statusOf(struck),
    category: [categoryOf("procedure")],
    code: concept(`Said for the step "${step?.name ?? stepId}": ${what}`, ...(code ? [code] : []), own(stepId)),
    subject: context.subject,
    encounter: context.encounter,
    effectiveDateTime: context.time(fact.atMs),
    valueQuantity: stepQuantity(value),
    derivedFrom: [referTo(from)],
    ...notes(context, fact),
  };
  return [{ resource, origins: ["spoken"] }];
}

/** Every number that an answer to a step carried, from the answer it was said in: tube size and depth, pressures, rates. */
export function stepValues(context: Context): readonly Exported<Observation>[] {
  const { facts, struckIds } = context.recorded;
  const standing = stepRuns(context).flatMap(({ key, answers }) =>
    answers.flatMap((fact) => ofAnswer(context, fact, key, false)),
  );
  const struck = facts.flatMap((fact) =>
    fact.type === "step.answered" && struckIds.has(fact.id) ? ofAnswer(context, fact, struckAnswerKey(fact), true) : [],
  );
  return [...standing, ...struck];
}
