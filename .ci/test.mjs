/**
 * Runs everything that judges the project, in order, and does not stop at the first failure.
 *
 *   npm test                 everything
 *   npm test -- lint unit    these stages alone
 *
 * The last lines count what was run, one runner a line, and the exit status is 1 if anything failed
 * or if a runner that was asked for ran no test.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { countsOf, verdictOf } from "./counts.mjs";

const CHECKS = {
  format: ["prettier", "--check", "--log-level=warn", "."],
  lint: ["eslint", "--max-warnings=0", "."],
  types: ["tsc", "--noEmit", "-p", "tsconfig.json"],
  "types-inner": ["tsc", "--noEmit", "-p", "tsconfig.core.json"],
  unused: ["knip"],
  cycles: ["depcruise", "--config", ".ci/cycles.cjs", "src"],
  licences: ["node", ".ci/licences.mjs"],
  lock: ["node", ".ci/lock.mjs"],
  build: ["vite", "build"],
  sizes: ["size-limit"],
};
/** vitest projects; the browser tests look at what the build stage wrote. */
const RUNNERS = ["unit", "browser"];

const stages = [...Object.keys(CHECKS), ...RUNNERS];
const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !stages.includes(name));
if (unknown.length > 0) {
  console.error(`unknown stage: ${unknown.join(", ")}; known: ${stages.join(", ")}`);
  process.exit(2);
}
const isAsked = (name) => asked.length === 0 || asked.includes(name);

const reportFolder = mkdtempSync(join(tmpdir(), "tragus-test-"));
const failed = [];

function runStage(name, [command, ...args]) {
  console.log(`\n── ${name}`);
  const startedMs = performance.now();
  const { status, error } = spawnSync(command, args, { stdio: ["ignore", "inherit", "inherit"] });
  if (error) console.error(error.message);
  const seconds = ((performance.now() - startedMs) / 1000).toFixed(1);
  const isGood = status === 0;
  console.log(`── ${name}: ${isGood ? "passed" : "FAILED"} in ${seconds} s`);
  if (!isGood) failed.push(name);
  return isGood;
}

function runTests(name) {
  const report = join(reportFolder, `${name}.json`);
  const args = ["run", "--project", name, "--reporter=default", "--reporter=json", `--outputFile.json=${report}`];
  const isGood = runStage(name, ["vitest", ...args]);
  let json;
  try {
    json = JSON.parse(readFileSync(report, "utf8"));
  } catch {
    json = undefined;
  }
  const counts = countsOf(json);
  if (isGood && counts.passed === 0) {
    console.error(`${name}: ran no test`);
    failed.push(name);
  }
  return [name, counts];
}

const checks = { passed: 0, failed: 0, skipped: 0 };
for (const [name, command] of Object.entries(CHECKS)) {
  if (isAsked(name)) checks[runStage(name, command) ? "passed" : "failed"] += 1;
}
const results = [["checks", checks], ...RUNNERS.filter(isAsked).map(runTests)];
rmSync(reportFolder, { recursive: true, force: true });

console.log(failed.length > 0 ? `\nfailed: ${failed.join(", ")}` : "\nnothing failed");
for (const [name, counts] of results) {
  const line = verdictOf(name, counts);
  if (line !== undefined) console.log(line);
}
process.exitCode = failed.length > 0 ? 1 : 0;
