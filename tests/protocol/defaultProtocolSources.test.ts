import { describe, expect, it } from "vitest";
import json from "../../src/protocol/defaultProtocol.json" with { type: "json" };

type Source = { readonly reference: string; readonly kind: string; readonly primaryRead: boolean };
type Leaf = { readonly path: string; readonly value: unknown; readonly source: Source | undefined };

/** Numbers and choices that claim nothing: the file's own version, how it is shown, and what an agent is. */
const CLAIMS_NOTHING = [/^schema$/u, /^osmotics\.\d+\.percent$/u];

/** Everything in the file, each with the nearest source around it. */
function leavesOf(node: unknown, path: string, around: Source | undefined): readonly Leaf[] {
  if (typeof node !== "object" || node === null) return [{ path, value: node, source: around }];
  const own = (node as { readonly source?: Source }).source ?? around;
  return Object.entries(node)
    .filter(([key]) => key !== "source")
    .flatMap(([key, value]) => leavesOf(value, path === "" ? key : `${path}.${key}`, own));
}

function sourcesOf(node: unknown, path: string): readonly (Source & { readonly path: string })[] {
  if (typeof node !== "object" || node === null) return [];
  return Object.entries(node).flatMap(([key, value]) => {
    const here = `${path}/${key}`;
    return key === "source" ? [{ ...(value as Source), path: here }] : sourcesOf(value, here);
  });
}

const leaves = leavesOf(json, "", undefined);
const sources = sourcesOf(json, "");

/** Words that decide something at the bedside, as numbers do. */
const DECIDES =
  /\.(?:weight|route|per|unit|under|soundAlike|population)$|^pressures\.transducerLevel\.value$|^targets\.unknownAge\.value$|regions\.value/u;

describe("every number, every yes or no and every word that decides something", () => {
  const claims = leaves.filter(
    ({ path, value }) =>
      (typeof value === "number" || typeof value === "boolean" || DECIDES.test(path)) &&
      !CLAIMS_NOTHING.some((pattern) => pattern.test(path)),
  );

  it("is one of many", () => expect(claims.length).toBeGreaterThan(1000));

  it("has a source of its own or around it", () => {
    expect(claims.filter(({ source }) => source === undefined).map(({ path }) => path)).toEqual([]);
  });
});

describe("every source", () => {
  it("says something", () => {
    expect(sources.filter(({ reference }) => reference.trim().length < 10).map(({ path }) => path)).toEqual([]);
  });

  it("is from memory where it says so, and nowhere else", () => {
    const wrong = sources.filter(
      ({ kind, reference }) => kind === "memory" && !reference.includes("from memory, verify"),
    );
    expect(wrong).toEqual([]);
  });

  it("is never called read where it speaks of memory, of a summary or of no source", () => {
    const read = sources.filter(({ primaryRead }) => primaryRead);
    const doubtful = /from memory, verify|summarised|^common practice|^this project's choice/u;
    expect(read.length).toBeGreaterThan(30);
    expect(read.filter(({ reference }) => doubtful.test(reference))).toEqual([]);
    expect(read.filter(({ kind }) => kind === "memory" || kind === "common-practice")).toEqual([]);
  });

  it("claims no document where practice or choice is all there is", () => {
    const practice = sources.filter(({ kind }) => kind === "common-practice");
    expect(practice.filter(({ reference }) => !/common practice|this project's choice/u.test(reference))).toEqual([]);
  });

  it("is named in full: no code for it and no note from elsewhere", () => {
    const text = JSON.stringify(json);
    expect(text).not.toMatch(/\bR\d{1,3}b?\b/u);
    expect(text).not.toMatch(/dossier|issue|session/iu);
  });

  it("says the same of a document wherever it is named alone", () => {
    const kinds = new Map<string, Set<string>>();
    for (const { reference, kind, primaryRead } of sources)
      kinds.set(reference, (kinds.get(reference) ?? new Set()).add(`${kind}, ${primaryRead ? "read" : "not read"}`));
    expect([...kinds].filter(([, said]) => said.size > 1)).toEqual([]);
  });
});

/** Documents whose numbers were seen in a summary only; a service that approves this file has to open them. */
it.each(["Carney N et al.", "Lulla A et al.", "Kochanek PM et al.", "Greenberg SM et al."])(
  "%s was not read",
  (author) => {
    const named = sources.filter(({ reference }) => reference.startsWith(author));
    expect(named.length).toBeGreaterThan(0);
    expect(named.filter(({ primaryRead }) => primaryRead)).toEqual([]);
  },
);
