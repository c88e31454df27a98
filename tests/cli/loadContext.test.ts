import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { loadContext } from "../../src/cli/loadContext.ts";
import { readGrammarSources } from "../../src/cli/readGrammars.ts";
import { defaultProtocol } from "../../src/protocol/defaultProtocol.ts";
import fileOne from "../protocol/fixtures/protocol-v1.json" with { type: "json" };

const folder = mkdtempSync(join(tmpdir(), "tragus-protocol-"));
afterAll(() => rmSync(folder, { recursive: true }));

function file(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}
const changed = (change: object): string => JSON.stringify({ ...defaultProtocol, ...change });

describe("loadContext", () => {
  it("takes the built-in protocol when none is named, with its hash", async () => {
    const context = await loadContext({});
    expect(context.ok && context.value.protocol).toBe(defaultProtocol);
    expect(context.ok && context.value.mark).toMatchObject({
      name: defaultProtocol.name,
      version: defaultProtocol.version,
    });
    expect(context.ok && context.value.mark.hash).toMatch(/^[0-9a-f]{64}$/);
  });

  it("takes a protocol file", async () => {
    const context = await loadContext({ protocol: file("named.json", changed({ name: "Another" })) });
    expect(context.ok && [context.value.protocol.name, context.value.mark.name]).toEqual(["Another", "Another"]);
  });

  it("upgrades one of schema 1", async () => {
    const context = await loadContext({ protocol: file("one.json", JSON.stringify(fileOne)) });
    expect(context.ok && context.value.protocol.name).toBe(fileOne.name);
  });

  it.each([
    ["that is not there", join(folder, "none.json")],
    ["that is a folder", folder],
    ["that is empty", file("empty.json", "")],
    ["that is no JSON", file("text.json", "oops")],
    ["of another kind", file("list.json", "[]")],
    ["that is null", file("null.json", "null")],
    ["that is cut short", file("cut.json", JSON.stringify(defaultProtocol).slice(0, 500))],
    ["of a later schema", file("schema.json", changed({ schema: 4 }))],
    ["without targets", file("targets.json", changed({ targets: {} }))],
    ["without a name", file("name.json", changed({ name: "" }))],
  ])("refuses a protocol %s, naming the file", async (_name, path) => {
    const context = await loadContext({ protocol: path });
    expect(context.ok).toBe(false);
    if (!context.ok) expect(context.error.startsWith(`protocol file ${path}: `)).toBe(true);
  });

  it("names the first fault and how many more there are", async () => {
    const path = file("faults.json", changed({ name: "", owner: "", fluids: 7 }));
    expect(await loadContext({ protocol: path })).toEqual({
      ok: false,
      error: `protocol file ${path}: name: must not be empty; and 2 more`,
    });
  });

  it("finds the grammars from anywhere", () => {
    expect(Object.keys(readGrammarSources())).toEqual(expect.arrayContaining(["case", "numbers", "vitals"]));
  });
});
