import * as v from "valibot";
import type { Faults, Place } from "./fault.ts";

type Issue = v.BaseIssue<unknown>;

const LONGEST_SHOWN = 40;

/** A value of a file, as it is named in a sentence. */
function shown(value: unknown): string {
  if (typeof value === "string") {
    const text = value.length > LONGEST_SHOWN ? `${value.slice(0, LONGEST_SHOWN)}…` : value;
    return `the text ${JSON.stringify(text)}`;
  }
  if (Array.isArray(value)) return "a list";
  if (typeof value === "object" && value !== null) return "a group of entries";
  return String(value);
}

const WANTED: Readonly<Record<string, string>> = {
  number: "a number",
  string: "a text",
  boolean: "true or false",
  array: "a list",
  strict_object: "a group of entries",
};

/** "one of a, b": what a list of choices or a fixed value expects. */
const choices = (expected: string): string =>
  expected.includes(" | ") ? `one of ${expected.replace(/^\(|\)$/gu, "").replaceAll(" | ", ", ")}` : expected;

/** The one union with a group of entries in it is a number that may grow with age. */
const wantedUnion = (expected: string): string =>
  expected.includes("Object") ? "a number, or base and perYear" : choices(expected);

function messageOf(issue: Issue): string {
  const { kind, type, input, expected } = issue;
  if (kind === "validation") return typeof input === "number" ? `${ownWords(issue)}, not ${input}` : ownWords(issue);
  if (expected === "never") return "is not a known entry";
  if (input === undefined) return "is missing";
  const wanted = type === "union" ? wantedUnion(expected ?? "") : WANTED[type];
  return `must be ${wanted ?? choices(expected ?? "something else")}, not ${shown(input)}`;
}

/** The schema's own message, or one in its place where the schema has none. */
function ownWords({ type, message, requirement }: Issue): string {
  switch (type) {
    case "finite":
      return "must be a finite number";
    case "integer":
      return "must be a whole number";
    default:
      return message.startsWith("Invalid ") ? `must fit the limit ${String(requirement)}` : message;
  }
}

const keysOf = (issue: Issue): Place => (issue.path ?? []).map(({ key }) => key as string | number);

function faultsOf(issue: Issue, above: Place): Faults {
  const at = [...above, ...keysOf(issue)];
  const last = issue.path?.at(-1);
  // A list where a group of entries belongs: one fault there, not one for each entry that it lacks.
  if (issue.type === "strict_object" && last?.origin === "key" && Array.isArray(last.input))
    return [{ at: at.slice(0, -1), message: "must be a group of entries, not a list" }];
  const isGroup = typeof issue.input === "object" && issue.input !== null && !Array.isArray(issue.input);
  const inside = issue.type === "union" && isGroup ? (issue.issues ?? []).filter(({ path }) => path !== undefined) : [];
  if (inside.length > 0) return inside.flatMap((part) => faultsOf(part, at));
  return [{ at, message: messageOf(issue) }];
}

const isGroup = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null;

/** Every entry of the file that the schema left out of what it read. */
function unknownEntries(file: unknown, read: unknown, at: Place): Faults {
  if (!isGroup(file) || !isGroup(read) || file === read) return [];
  return Object.keys(file).flatMap((key): Faults => {
    const here = [...at, Array.isArray(file) ? Number(key) : key];
    if (!Object.hasOwn(read, key)) return [{ at: here, message: "is not a known entry" }];
    return unknownEntries(file[key], read[key], here);
  });
}

/** The schema and the search for unknown entries may find the same one. */
function withoutRepeats(faults: Faults): Faults {
  const seen = new Set<string>();
  return faults.filter(({ at, message }) => {
    const key = JSON.stringify([at, message]);
    return !seen.has(key) && seen.add(key);
  });
}

/** The shape of one file against one schema: what was read, or every fault of shape. */
export function readShape<S extends v.GenericSchema>(
  schema: S,
  json: unknown,
): { readonly output: v.InferOutput<S> } | { readonly faults: Faults } {
  const read = v.safeParse(schema, json);
  const issues = (read.issues ?? []).flatMap((issue) => faultsOf(issue, []));
  // The schema names the first unknown entry of a group only.
  const all = [...issues, ...unknownEntries(json, read.output, [])];
  const faults = withoutRepeats(all);
  return read.success && faults.length === 0 ? { output: read.output } : { faults };
}
