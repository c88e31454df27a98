import type { Observation, ObservationComponent } from "@medplum/fhirtypes";
import { OLDEST_EXACT_A } from "../../core/age.ts";
import type { VitalCode } from "../../core/vitals.ts";
import type { Fact, VitalValue } from "../../log/facts.ts";
import { readingsOf, takenMs, type Reading, type TakenFact } from "../readings.ts";
import {
  BLOOD_PRESSURE_PANEL,
  loinc,
  OTHER_CODES,
  own,
  PRESSURE_CODES,
  PUPIL_REACTIONS,
  PUPIL_SITES,
  PUPIL_SIZE,
  VALUE_CODES,
} from "./codes.ts";
import { absent, categoryOf, concept, notes, quantity, statusOf, type Context, type Exported } from "./elements.ts";
import { resourceId } from "./resourceId.ts";

type Vital = Extract<Fact, { readonly type: "vital.recorded" }>;
type Background = Extract<Fact, { readonly type: "sex.recorded" | "cause.recorded" | "herniation.recorded" }>;

/** What kind of value this is, under every code that it has. Where there is none: our own code, and words. */
export function valueCode(code: keyof typeof VALUE_CODES, method?: VitalValue["method"]) {
  const [category, text, ...codes] = VALUE_CODES[code];
  const more = method && PRESSURE_CODES[method]?.[code as VitalCode];
  const coding = [...codes, ...(more === undefined ? [] : [more])].map(loinc);
  const other = OTHER_CODES[code];
  if (other !== undefined) coding.push(other);
  return {
    category: [categoryOf(category)],
    code: concept(text, ...(coding.length === 0 ? [own(code)] : coding)),
  };
}

/** How and where it was taken, in words: no codes for these were checked. */
function taken({ method, site, level, code }: Pick<VitalValue, "method" | "site" | "level" | "code">) {
  const isBody = code === "weight" || code === "height";
  const ways = [
    method ?? (isBody ? "measured, or told as such" : undefined),
    level && `transducer zeroed at the ${level}`,
  ].filter((way) => way !== undefined);
  return {
    ...(ways.length === 0 ? {} : { method: concept(ways.join(", ")) }),
    ...(site === undefined ? {} : { bodySite: concept(site) }),
  };
}

const valueOf = ({ code, value, unit }: VitalValue) =>
  code === "age" && value > OLDEST_EXACT_A
    ? { ...quantity(OLDEST_EXACT_A, unit), comparator: ">" as const }
    : quantity(value, unit);

const NOT_TESTABLE = absent("not-performed", "not testable");

type PupilFact = TakenFact & { readonly code: "pupilLeft" | "pupilRight" };
const isPupil = (fact: TakenFact): fact is PupilFact => fact.code === "pupilLeft" || fact.code === "pupilRight";

/** One pupil: its size with the reaction beside it, or the reaction alone. Which side it is stands in code, site and words. */
function pupil(fact: PupilFact): Partial<Observation> & Pick<Observation, "code"> {
  const { category, code } = valueCode(fact.code);
  const side = fact.code === "pupilLeft" ? "left" : "right";
  const reaction = fact.type === "vital.recorded" ? fact.reaction : fact.finding;
  const reactionCode = concept(`Reaction of the ${side} pupil`, PUPIL_REACTIONS[fact.code]);
  const said = reaction === undefined ? {} : { valueCodeableConcept: concept(reaction) };
  const site = { category, bodySite: concept(`${side} pupil`, PUPIL_SITES[fact.code]) };
  if (fact.type === "finding.recorded") return { ...site, code: reactionCode, ...said };
  return {
    ...site,
    code: { ...code, coding: [PUPIL_SIZE, ...(code.coding ?? [])] },
    valueQuantity: valueOf(fact),
    ...(reaction === undefined ? {} : { component: [{ code: reactionCode, ...said }] }),
  };
}

/** What was found; what was not testable has a reason and no value. */
function found(fact: Exclude<TakenFact, PupilFact>): Partial<Observation> & Pick<Observation, "code"> {
  const codes = valueCode(fact.code, "method" in fact ? fact.method : undefined);
  if (fact.type === "finding.recorded") return { ...codes, dataAbsentReason: NOT_TESTABLE };
  return { ...codes, valueQuantity: valueOf(fact), ...taken(fact) };
}

const base = ({ subject, encounter, time, meta }: Context, fact: Fact, struck: boolean) => ({
  resourceType: "Observation" as const,
  id: resourceId(fact.id),
  ...meta,
  status: statusOf(struck),
  subject,
  encounter,
  effectiveDateTime: time(takenMs(fact)),
});

const single = (context: Context, fact: TakenFact, struck: boolean): Observation => ({
  ...base(context, fact, struck),
  ...(isPupil(fact) ? pupil(fact) : found(fact)),
  ...notes(context, fact),
});

const half = (code: "sbp" | "dbp", fact: Vital | undefined, method: VitalValue["method"]): ObservationComponent => ({
  code: valueCode(code, method).code,
  ...(fact === undefined
    ? { dataAbsentReason: method === "palpated" ? absent("not-performed", "palpated") : absent("unknown", "not said") }
    : { valueQuantity: valueOf(fact) }),
});

/** One pressure. The profile of R4 asks for both halves, so one that was not said has a reason. */
function panel(context: Context, first: Vital, struck: boolean, halves: Readonly<Record<string, Vital>>): Observation {
  const { method } = first;
  return {
    ...base(context, first, struck),
    ...valueCode("sbp"),
    code: concept("Blood pressure", BLOOD_PRESSURE_PANEL),
    ...taken(first),
    component: [half("sbp", halves["sbp"], method), half("dbp", halves["dbp"], method)],
    ...notes(context, first),
  };
}

const isHalf = (fact: TakenFact): fact is Vital => fact.code === "sbp" || fact.code === "dbp";

function ofReading(context: Context, { facts, struck }: Reading): readonly Observation[] {
  const halves = facts.filter(isHalf);
  const [first] = halves;
  const byCode = Object.fromEntries(halves.map((fact) => [fact.code, fact]));
  const panels = first === undefined ? [] : [panel(context, first, struck, byCode)];
  return [...panels, ...facts.filter((f) => !isHalf(f)).map((f) => single(context, f, struck))];
}

/** The fact whose panel a pressure stands in: the first half of its reading. */
export function panelFactIds(context: Context): ReadonlyMap<string, string> {
  return new Map(
    readingsOf(context.recorded).flatMap(({ facts }) => {
      const halves = facts.filter(isHalf);
      return halves.map(({ id }): [string, string] => [id, halves[0]!.id]);
    }),
  );
}

const isBackground = (fact: Fact): fact is Background =>
  fact.type === "sex.recorded" || fact.type === "cause.recorded" || fact.type === "herniation.recorded";

/** What was said of the patient that is no number; no codes were checked. */
function background(context: Context, fact: Background): Observation {
  const struck = context.recorded.struckIds.has(fact.id);
  const said =
    fact.type === "sex.recorded"
      ? { code: concept("Sex, as said for doses", own("sex")), valueCodeableConcept: concept(fact.sex) }
      : fact.type === "cause.recorded"
        ? { code: concept("Cause of raised pressure", own("cause")), valueCodeableConcept: concept(fact.cause) }
        : { code: concept("Herniation suspected", own("herniation")), valueBoolean: fact.present };
  return {
    ...base(context, fact, struck),
    category: [categoryOf("exam")],
    ...said,
    ...notes(context, fact),
  };
}

/** Everything that a person measured, saw or said of the patient, struck or not. */
export function spokenObservations(context: Context): readonly Exported<Observation>[] {
  const { recorded } = context;
  const taken = readingsOf(recorded).flatMap((reading) => ofReading(context, reading));
  const said = recorded.facts.filter(isBackground).map((fact) => background(context, fact));
  return [...taken, ...said].map((resource) => ({ resource, origins: ["spoken"] }));
}
