/**
 * Runs everything that judges the project, and does not stop at the first failure.
 *
 *   npm test                 everything
 *   npm test -- lint unit    these stages alone
 *
 * Two lines of work go on at the same time. The browser tests listen, speak and wait in real time, and use less than one
 * core; whatever only computes works beside them at the lowest priority, so that it takes what they leave.
 *
 * The last lines count what was run, one runner a line, and the exit status is 1 if anything failed
 * or if a runner that was asked for ran no test.
 */
import { spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { countsOf, slowestOf, verdictOf } from "./counts.mjs";

const CHECKS = {
  build: ["vite", "build"],
  format: ["prettier", "--check", "--log-level=warn", "."],
  lint: ["eslint", "--max-warnings=0", "."],
  types: ["tsc", "--noEmit", "-p", "tsconfig.json"],
  "types-inner": ["tsc", "--noEmit", "-p", "tsconfig.core.json"],
  unused: ["knip"],
  cycles: ["depcruise", "--config", ".ci/cycles.cjs", "src"],
  licences: ["node", ".ci/licences.mjs"],
  lock: ["node", ".ci/lock.mjs"],
  sizes: ["size-limit"],
};
/** vitest projects; the browser and the crash tests look at what the build stage wrote. */
const RUNNERS = ["unit", "browser", "crash"];

/** The first stage is done before any other; then each line does its own, one after the other. */
const FIRST = "build";
const LINES = [
  { stages: ["browser"], isCalm: false },
  { stages: [...Object.keys(CHECKS), ...RUNNERS].filter((name) => name !== FIRST && name !== "browser"), isCalm: true },
];
/** Lets a program, and whatever it starts, have only the time that nobody else wants. */
const CALMLY = process.platform === "win32" ? [] : ["nice", "-n", "19"];

const stages = [FIRST, ...LINES.flatMap((line) => line.stages)];
const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !stages.includes(name));
if (unknown.length > 0) {
  console.error(`unknown stage: ${unknown.join(", ")}; known: ${stages.join(", ")}`);
  process.exit(2);
}
const isAsked = (name) => asked.length === 0 || asked.includes(name);

const reportFolder = mkdtempSync(join(tmpdir(), "tragus-test-"));
const failed = [];

/** Settles when the program has ended. Its lines are printed as they come, with the stage that they are of. */
function runProgram(name, [command, ...args]) {
  const program = spawn(command, args, { stdio: ["ignore", "pipe", "pipe"] });
  for (const stream of [program.stdout, program.stderr])
    createInterface({ input: stream }).on("line", (line) => console.log(`${name} │ ${line}`));
  return new Promise((resolve) => {
    program.on("error", (error) => {
      console.error(`${name} │ ${error.message}`);
      resolve(false);
    });
    program.on("close", (status) => resolve(status === 0));
  });
}

async function runStage(name, command, isCalm) {
  console.log(`── ${name}`);
  const startedMs = performance.now();
  const isGood = await runProgram(name, isCalm ? [...CALMLY, ...command] : command);
  const seconds = ((performance.now() - startedMs) / 1000).toFixed(1);
  console.log(`── ${name}: ${isGood ? "passed" : "FAILED"} in ${seconds} s`);
  if (!isGood) failed.push(name);
  return isGood;
}

const checks = { passed: 0, failed: 0, skipped: 0 };
const runners = {};

async function runCheck(name, isCalm) {
  checks[(await runStage(name, CHECKS[name], isCalm)) ? "passed" : "failed"] += 1;
}

async function runTests(name, isCalm) {
  const report = join(reportFolder, `${name}.json`);
  const args = ["run", "--project", name, "--reporter=default", "--reporter=json", `--outputFile.json=${report}`];
  const isGood = await runStage(name, ["vitest", ...args], isCalm);
  let json;
  try {
    json = JSON.parse(readFileSync(report, "utf8"));
  } catch {
    json = undefined;
  }
  runners[name] = countsOf(json);
  console.log(`── ${name}: slowest ${slowestOf(json).join(", ")}`);
  if (isGood && runners[name].passed === 0) {
    console.error(`${name}: ran no test`);
    failed.push(name);
  }
}

const run = (name, isCalm) => (name in CHECKS ? runCheck(name, isCalm) : runTests(name, isCalm));

if (isAsked(FIRST)) await run(FIRST, false);
await Promise.all(
  LINES.map(async (line) => {
    for (const name of line.stages.filter(isAsked)) await run(name, line.isCalm);
  }),
);
rmSync(reportFolder, { recursive: true, force: true });

console.log(failed.length > 0 ? `\nfailed: ${failed.join(", ")}` : "\nnothing failed");
for (const [name, counts] of [["checks", checks], ...RUNNERS.filter(isAsked).map((name) => [name, runners[name]])]) {
  const line = verdictOf(name, counts);
  if (line !== undefined) console.log(line);
}
process.exitCode = failed.length > 0 ? 1 : 0;
