import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { loadContext } from "../../src/cli/loadContext.ts";
import { readGrammarSources } from "../../src/cli/readGrammars.ts";
import { defaultProtocol } from "../../src/protocol/defaultProtocol.ts";

const folder = mkdtempSync(join(tmpdir(), "tragus-protocol-"));
afterAll(() => rmSync(folder, { recursive: true }));

function file(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}
const changed = (change: object): string => JSON.stringify({ ...defaultProtocol, ...change });

describe("loadContext", () => {
  it("takes the built-in protocol when none is named", () => {
    const context = loadContext(undefined);
    expect(context.ok && context.value.protocol).toBe(defaultProtocol);
  });

  it("takes a protocol file", () => {
    const context = loadContext(file("named.json", changed({ name: "Another" })));
    expect(context.ok && context.value.protocol.name).toBe("Another");
  });

  it.each([
    ["that is not there", join(folder, "none.json")],
    ["that is a folder", folder],
    ["that is empty", file("empty.json", "")],
    ["that is no JSON", file("text.json", "oops")],
    ["of another kind", file("list.json", "[]")],
    ["that is null", file("null.json", "null")],
    ["that is cut short", file("cut.json", JSON.stringify(defaultProtocol).slice(0, 500))],
    ["of a later schema", file("schema.json", changed({ schema: 2 }))],
    ["without targets", file("targets.json", changed({ targets: {} }))],
    ["without a name", file("name.json", changed({ name: "" }))],
  ])("refuses a protocol %s, naming the file", (_name, path) => {
    const context = loadContext(path);
    expect(context.ok).toBe(false);
    if (!context.ok) expect(context.error.startsWith(`protocol file ${path}: `)).toBe(true);
  });

  it("finds the grammars from anywhere", () => {
    expect(Object.keys(readGrammarSources())).toEqual(expect.arrayContaining(["case", "numbers", "vitals"]));
  });
});
