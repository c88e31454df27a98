import { execFileSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { examplesOf, npmScriptsOf, pathsOf } from "./readme.ts";

const ROOT = join(import.meta.dirname, "../..");
const read = (name: string) => readFileSync(join(ROOT, name), "utf8");
const scripts = (JSON.parse(read("package.json")) as { scripts: Record<string, string> }).scripts;
const DOCUMENTS = ["README.md", "DEVELOPERS.md"];

describe.each(DOCUMENTS)("%s", (name) => {
  const text = read(name);

  it.each(npmScriptsOf(text))("names an npm script that exists: %s", (script) => {
    expect(Object.keys(scripts)).toContain(script);
  });

  it.each(pathsOf(text))("names a file that exists: %s", (path) => {
    expect(existsSync(join(ROOT, path))).toBe(true);
  });
});

describe("the examples of the README", () => {
  const examples = examplesOf(read("README.md"));

  it("show a case in the terminal", () => {
    expect(examples.some(({ command }) => command.includes("npm run --silent talk"))).toBe(true);
  });

  it.each(examples)("$command", ({ command, output }) => {
    const printed = execFileSync("bash", ["-c", command], { cwd: ROOT, encoding: "utf8" });
    expect(printed.trim()).toBe(output);
  });
});

describe("reading a document", () => {
  it("finds commands with their output, scripts and files", () => {
    const text = [
      "Run `npm run build`, `npm test` and `npm run --silent talk`; see `src/core/result.ts` and [it](LICENSE).",
      "```console",
      "$ echo one",
      "one",
      "$ echo two; echo three",
      "two",
      "three",
      "```",
    ].join("\n");
    expect(examplesOf(text)).toEqual([
      { command: "echo one", output: "one" },
      { command: "echo two; echo three", output: "two\nthree" },
    ]);
    expect(npmScriptsOf(text)).toEqual(["build", "test", "talk"]);
    expect(pathsOf(text)).toEqual(["src/core/result.ts", "LICENSE"]);
  });
});
