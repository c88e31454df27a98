import type {
  Annotation,
  CodeableConcept,
  Coding,
  Device,
  Encounter,
  Meta,
  Observation,
  Patient,
  Period,
  Quantity,
  Reference,
  Resource,
} from "@medplum/fhirtypes";
import type { Fact } from "../../log/facts.ts";
import { isoTime, type TellTime } from "../isoTime.ts";
import type { RecordedCase } from "../recordedCase.ts";
import { toSixDigits } from "../ucum.ts";
import { verbatim } from "../verbatim.ts";
import { CATEGORY_NAMES, hl7, TEST_DATA, UCUM_SYSTEM, type Category } from "./codes.ts";
import { resourceId } from "./resourceId.ts";

/** Where a resource comes from: said by a person, worked out, or partly taken for granted. */
export type Origin = "spoken" | "computed" | "assumed";

/** A resource with its origins: what is worked out may rest on something that was assumed. */
export type Exported<R extends Resource = Resource> = {
  readonly resource: R;
  readonly origins: readonly Origin[];
  /** When it was said, Unix ms, where the resource itself has no place for that. */
  readonly saidMs?: number;
};

/** What every part of an export needs, worked out once. */
export type Context = {
  readonly recorded: RecordedCase;
  readonly time: TellTime;
  readonly heard: (fact: Fact) => string | undefined;
  readonly subject: Reference<Patient>;
  readonly encounter: Reference<Encounter>;
  readonly device: Reference<Device>;
  /** On every resource: where the case was a rehearsal, none of them is about a patient. */
  readonly meta: { readonly meta?: Meta };
};

/** Resources refer to one another by the full address of their entry in the bundle. */
export const urnOf = (key: string): string => `urn:uuid:${resourceId(key)}`;
export const referTo = <R extends Resource>(key: string): Reference<R> => ({ reference: urnOf(key) });

export const patientKey = ({ caseId }: RecordedCase): string => `${caseId}/patient`;
export const encounterKey = ({ caseId }: RecordedCase): string => `${caseId}/encounter`;
export const deviceKey = ({ caseId }: RecordedCase): string => `${caseId}/device`;

export const createContext = (recorded: RecordedCase): Context => ({
  recorded,
  time: isoTime("UTC"),
  heard: verbatim(recorded.facts),
  subject: referTo(patientKey(recorded)),
  encounter: referTo(encounterKey(recorded)),
  device: referTo(deviceKey(recorded)),
  meta: recorded.rehearsal ? { meta: { security: [TEST_DATA] } } : {},
});

export const concept = (text: string, ...coding: readonly Coding[]): CodeableConcept => ({
  ...(coding.length === 0 ? {} : { coding: [...coding] }),
  text,
});

export const categoryOf = (category: Category): CodeableConcept =>
  concept(CATEGORY_NAMES[category], hl7("observation-category", category, CATEGORY_NAMES[category]));

/** @param code UCUM; people read it as the unit too. */
export const quantity = (value: number, code: string): Quantity => ({
  value: toSixDigits(value),
  unit: code,
  system: UCUM_SYSTEM,
  code,
});

export const absent = (code: "unknown" | "not-performed", text: string): CodeableConcept =>
  concept(text, hl7("data-absent-reason", code, code === "unknown" ? "Unknown" : "Not Performed"));

/** What was struck out stays in the record, and says that it does not count. */
export const statusOf = (struck: boolean): "entered-in-error" | "final" => (struck ? "entered-in-error" : "final");

/** A stretch of time; a clock that was set back makes none that ends before it begins. */
export const period = ({ time }: Context, startMs: number, endMs: number | undefined): Period => ({
  start: time(startMs),
  ...(endMs === undefined ? {} : { end: time(Math.max(startMs, endMs)) }),
});

/** When something holds: a moment, or the stretch between its oldest and its newest input. */
export const effective = (
  context: Context,
  startMs: number,
  endMs: number,
): Pick<Observation, "effectiveDateTime" | "effectivePeriod"> =>
  startMs === endMs ? { effectiveDateTime: context.time(endMs) } : { effectivePeriod: period(context, startMs, endMs) };

const HEARD_BY = { listener: "Spoken", browser: "Spoken, recognised by the browser", typed: "Typed" } as const;

/** Notes, and the words that were heard where they may be told. */
export function notes({ heard }: Context, fact: Fact | undefined, ...texts: readonly string[]) {
  const words = fact && heard(fact);
  const said = words !== undefined && fact !== undefined && "by" in fact ? [`${HEARD_BY[fact.by]}: "${words}"`] : [];
  const note: Annotation[] = [...texts, ...said].map((text) => ({ text }));
  return note.length === 0 ? {} : { note };
}
