/**
 * How much memory and time the review of a folder takes, by the number of records in it. Each size is a run of its own of
 * `npm run review`, whose peak of resident memory is read from the system while it runs.
 *
 *   npx tsx tests/bench/reviewStudy.ts [COUNT…]        100 1000 10000 without
 */
import { spawn } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { ok } from "../../src/core/result.ts";
import { sealFacts, type Sha256Hex } from "../../src/log/chain/sealFacts.ts";
import type { Fact } from "../../src/log/facts.ts";
import type { RecordFile } from "../../src/log/recordFile/recordFile.ts";
import { writeRecordFile } from "../../src/log/recordFile/writeRecordFile.ts";
import { machine, toMarkdown } from "./report.ts";

const ROOT = join(import.meta.dirname, "../..");
/** An invented case of a quarter of an hour; every record is it again under another id. */
const PATTERN = join(ROOT, "tests/cli/review/records/2026-05-first.json");
const KIB = 1024;
const MIB = 1024 * KIB;

const sha256Hex: Sha256Hex = async (text) => ok(createHash("sha256").update(text).digest("hex"));

async function fill(folder: string, from: number, to: number): Promise<number> {
  const pattern = JSON.parse(readFileSync(PATTERN, "utf8")) as RecordFile;
  let bytes = 0;
  for (let i = from; i < to; i++) {
    const caseId = `case-${String(i).padStart(6, "0")}`;
    const facts = pattern.entries.map(({ fact }): Fact => (fact.type === "case.opened" ? { ...fact, caseId } : fact));
    const sealed = await sealFacts(facts, undefined, sha256Hex);
    if (!sealed.ok) throw new Error(sealed.error);
    const { label, rehearsal } = pattern;
    const text = writeRecordFile({ caseId, label, rehearsal }, sealed.value.entries);
    writeFileSync(join(folder, `${caseId}.json`), text);
    bytes += text.length;
  }
  return bytes;
}

type Run = { readonly peakMiB: number; readonly seconds: number; readonly rows: number };

function review(folder: string): Promise<Run> {
  return new Promise((resolve, reject) => {
    const startedMs = performance.now();
    const args = ["--import", "tsx", "src/cli/review.ts", folder, "--csv", join(dirname(folder), "review.csv")];
    const child = spawn(process.execPath, args, { cwd: ROOT, stdio: ["ignore", "pipe", "inherit"] });
    let [peakMiB, rows] = [0, 0];
    child.stdout.setEncoding("utf8").on("data", (text: string) => (rows += text.match(/^case-/gmu)?.length ?? 0));
    const timer = setInterval(() => {
      try {
        const [, kib = "0"] = /^VmHWM:\s+(\d+) kB/mu.exec(readFileSync(`/proc/${child.pid}/status`, "utf8")) ?? [];
        peakMiB = Math.max(peakMiB, Number(kib) / KIB);
      } catch {
        // It has just ended: the last peak that was read stands.
      }
    }, 50);
    child.on("error", reject);
    child.on("close", (status) => {
      clearInterval(timer);
      if (status === 0) resolve({ peakMiB, rows, seconds: (performance.now() - startedMs) / 1000 });
      else reject(new Error(`the review ended with status ${status}`));
    });
  });
}

const counts = process.argv.slice(2).map(Number);
const place = mkdtempSync(join(tmpdir(), "tragus-review-study-"));
const folder = join(place, "records");
mkdirSync(folder);
try {
  const rows: string[][] = [];
  let [filled, bytes] = [0, 0];
  for (const count of (counts.length > 0 ? counts : [100, 1000, 10_000]).toSorted((a, b) => a - b)) {
    bytes += await fill(folder, filled, count);
    filled = count;
    const run = await review(folder);
    if (run.rows !== count) throw new Error(`${run.rows} rows for ${count} records`);
    rows.push([
      String(count),
      `${(bytes / MIB).toFixed(0)} MiB`,
      `${run.peakMiB.toFixed(0)} MiB`,
      `${run.seconds.toFixed(1)} s`,
      `${((run.seconds * 1000) / count).toFixed(1)} ms`,
    ]);
  }
  const columns = ["records", "their size", "peak of resident memory", "time", "a record"];
  process.stdout.write(`${toMarkdown({ title: "Review of a folder", notes: [], columns, rows })}\n\n${machine()}\n`);
} finally {
  rmSync(place, { recursive: true });
}
