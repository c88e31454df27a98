import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";

const ROOT = join(import.meta.dirname, "../../..");
const TSX = "node_modules/.bin/tsx";
const RECORDS = "tests/cli/review/records";
const folder = mkdtempSync(join(tmpdir(), "tragus-review-run-"));
afterAll(() => rmSync(folder, { recursive: true }));

type Run = { readonly status: number | null; readonly stdout: string; readonly stderr: string };

function run(...args: readonly string[]): Promise<Run> {
  return new Promise((resolve, reject) => {
    const child = spawn(TSX, ["src/cli/review.ts", ...args], { cwd: ROOT });
    let [stdout, stderr] = ["", ""];
    child.stdout.setEncoding("utf8").on("data", (text: string) => (stdout += text));
    child.stderr.setEncoding("utf8").on("data", (text: string) => (stderr += text));
    child.on("error", reject);
    child.on("close", (status) => resolve({ status, stdout, stderr }));
  });
}

describe("review", () => {
  it("reads real records, and names those that are altered or cut off", async () => {
    const csv = join(folder, "out.csv");
    const { status, stdout, stderr } = await run(RECORDS, "--csv", csv);
    expect([status, stderr]).toEqual([0, ""]);
    expect(stdout).toMatch(/^2026-05-first\.json {2,}echo seven zero {2,}yes {2,}yes {2,}1 \(35 s\)/mu);
    expect(stdout).toMatch(/^2026-06-altered\.json {2}skipped: is damaged or was altered: Entry \d+ was altered\.$/mu);
    expect(stdout).toMatch(/^2026-06-cut-off\.json {2}skipped: is broken or cut off: it is no JSON$/mu);
    expect(stdout).toMatch(/^Cases: 2 \(rehearsals left out: 1\)\./mu);
    expect(stdout.endsWith("Files skipped: 2.\n")).toBe(true);
    const lines = readFileSync(csv, "utf8").split("\r\n");
    expect(lines.length).toBe(5);
    expect(lines.map((line) => line.split(",")[0])).toEqual([
      "file",
      "2026-05-first.json",
      "2026-05-second.json",
      "2026-05-taught.json",
      "",
    ]);
  });

  it.each([[[]], [["--csv", join(folder, "unread.csv")]]])(
    "is no failure where nobody reads what it prints: %j",
    async (more) => {
      const child = spawn(TSX, ["src/cli/review.ts", RECORDS, ...more], {
        cwd: ROOT,
        stdio: ["ignore", "pipe", "pipe"],
      });
      child.stdout.destroy();
      let stderr = "";
      child.stderr.setEncoding("utf8").on("data", (text: string) => (stderr += text));
      const [status] = (await once(child, "close")) as [number | null];
      expect([status, stderr]).toEqual([0, ""]);
      // A CSV is not left half written because of that.
      for (const path of more.slice(1)) expect(readFileSync(path, "utf8").split("\r\n").length).toBe(5);
    },
  );

  it("prints its help", async () => {
    const { status, stdout } = await run("--help");
    expect(status).toBe(0);
    expect(stdout).toContain("usage: npm run review");
  });

  it.each([
    [["tests/none"], "tests/none"],
    [["package.json"], "package.json is no folder"],
    [[RECORDS, "--csv", "tests/none/out.csv"], "--csv tests/none/out.csv"],
    [[RECORDS, "--protocol", "package.json"], "protocol file package.json"],
    [[RECORDS, "--odd"], "--odd"],
  ])("ends with status 2 and one line: %j", async (args, part) => {
    const { status, stdout, stderr } = await run(...args);
    expect([status, stdout, stderr.trimEnd().split("\n").length]).toEqual([2, "", 1]);
    expect(stderr).toContain(part);
  });
});
