import { spawnSync } from "node:child_process";
import { randomBytes } from "node:crypto";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";

const ROOT = join(import.meta.dirname, "../..");
const made: string[] = [];

function scratch(files: Readonly<Record<string, string>>): string {
  const folder = mkdtempSync(join(tmpdir(), "tragus-checks-"));
  made.push(folder);
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(join(folder, name, ".."), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
  return folder;
}

afterAll(() => {
  for (const folder of made) rmSync(folder, { recursive: true, force: true });
});

const run = (folder: string, command: string, args: readonly string[]) => {
  const { status, stdout, stderr } = spawnSync(command, args, { cwd: folder, encoding: "utf8" });
  return { status, text: stdout + stderr };
};

describe("the cycle check", () => {
  const cruise = (files: Readonly<Record<string, string>>) =>
    run(scratch({ "tsconfig.json": "{}", ...files }), join(ROOT, "node_modules/.bin/depcruise"), [
      "--config",
      join(ROOT, ".ci/cycles.cjs"),
      "src",
    ]);

  it("catches a cycle made of types alone", () => {
    const { status, text } = cruise({
      "src/a.ts": `import type { B } from "./b.ts";\nexport type A = { b?: B };\n`,
      "src/b.ts": `import type { A } from "./a.ts";\nexport type B = { a?: A };\n`,
    });
    expect(text).toContain("no-cycles");
    expect(status).not.toBe(0);
  });

  it("passes a chain", () => {
    const { status } = cruise({
      "src/a.ts": `import type { B } from "./b.ts";\nexport type A = { b?: B };\n`,
      "src/b.ts": `export type B = number;\n`,
    });
    expect(status).toBe(0);
  });
});

describe("the lock check", () => {
  const manifest = { dependencies: { idb: "8.0.4" }, devDependencies: {} };
  const lock = (version: string, entry: object) => ({
    packages: { "": { dependencies: { idb: version } }, "node_modules/idb": { version, ...entry } },
  });
  const good = lock("8.0.4", { integrity: "sha512-x" });

  it.each([
    ["all in order", manifest, good, ""],
    [
      "a range",
      { dependencies: { idb: "^8.0.4" } },
      lock("^8.0.4", { integrity: "sha512-x" }),
      "not one exact version",
    ],
    ["an address", manifest, lock("8.0.4", { integrity: "sha512-x", resolved: "x" }), "download address"],
    ["no hash", manifest, lock("8.0.4", {}), "no integrity hash"],
    ["another version", manifest, lock("8.0.3", { integrity: "sha512-x" }), "is locked as"],
  ])("%s", (_name, packageJson, packageLock, complaint) => {
    const folder = scratch({
      "package.json": JSON.stringify(packageJson),
      "package-lock.json": JSON.stringify(packageLock),
    });
    const { status, text } = run(folder, "node", [join(ROOT, ".ci/lock.mjs")]);
    expect(status).toBe(complaint === "" ? 0 : 1);
    expect(text).toContain(complaint);
  });
});

describe("the licence check", () => {
  const withPackage = (name: string, license: string) => {
    const folder = scratch({
      "package.json": JSON.stringify({ name: "tragus", version: "0.0.0", dependencies: { [name]: "1.0.0" } }),
      [`node_modules/${name}/package.json`]: JSON.stringify({ name, version: "1.0.0", license }),
    });
    return run(ROOT, "node", [join(ROOT, ".ci/licences.mjs"), folder]);
  };

  it("refuses a licence that is not on the list", () => {
    const { status, text } = withPackage("planted", "GPL-3.0-only");
    expect(status).toBe(1);
    expect(text).toContain("planted@1.0.0: GPL-3.0-only");
  });

  it("refuses an exception whose licence has changed", () => {
    expect(withPackage("axe-core", "SSPL-1.0").text).toContain("axe-core@1.0.0: SSPL-1.0");
  });

  it("does not complain about an allowed one", () => {
    expect(withPackage("planted", "(MIT OR GPL-3.0-only)").text).not.toContain("planted@1.0.0");
  });
});

describe("the size limits", () => {
  const weigh = (appBytes: number) => {
    const folder = scratch({
      "package.json": readFileSync(join(ROOT, "package.json"), "utf8"),
      "dist/index.html": "<!doctype html>",
      "dist/assets/later/print.js": "invented",
      "dist/voice/flite.wasm": "invented",
    });
    symlinkSync(join(ROOT, "node_modules"), join(folder, "node_modules"));
    // Random bytes do not compress: what is written is what is weighed, within a thousandth.
    writeFileSync(join(folder, "dist/app.js"), randomBytes(appBytes));
    return run(folder, join(ROOT, "node_modules/.bin/size-limit"), []);
  };

  it("refuse app code above 300 kB", () => {
    const { status, text } = weigh(301_000);
    expect(text).toContain("limit has exceeded");
    expect(status).toBe(1);
  });

  it("pass app code below it", () => {
    expect(weigh(298_000).status).toBe(0);
  });
});
