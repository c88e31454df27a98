import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { recordPaths } from "../../../src/cli/review/recordPaths.ts";

const folder = mkdtempSync(join(tmpdir(), "tragus-paths-"));
afterAll(() => rmSync(folder, { recursive: true }));

for (const inside of ["may", "may/31", ".hidden", "empty"]) mkdirSync(join(folder, inside));
for (const name of [
  "b.json",
  "A.JSON",
  "notes.txt",
  ".case.json",
  "may/c.json",
  "may/31/d.json",
  ".hidden/e.json",
  "json",
])
  writeFileSync(join(folder, name), "");
symlinkSync(folder, join(folder, "may", "round"));
symlinkSync(join(folder, "b.json"), join(folder, "link.json"));
mkdirSync(join(folder, "folder.json"));

describe("the records of a folder", () => {
  it("are its JSON files and those of the folders in it, in order; links and hidden ones are none", () => {
    const paths = ["A.JSON", "b.json", join("may", "31", "d.json"), join("may", "c.json")];
    expect(recordPaths(folder)).toEqual({ paths, unreadable: [] });
  });

  it.each(["none", "b.json"])("%s cannot be read as a folder", (name) => {
    expect(() => recordPaths(join(folder, name))).toThrow();
  });
});
