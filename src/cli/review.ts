import { createHash } from "node:crypto";
import { once } from "node:events";
import { createWriteStream, openSync, statSync } from "node:fs";
import { finished } from "node:stream/promises";
import type { Writable } from "node:stream";
import { markOf } from "../app/protocolFile.ts";
import type { Sha256Hex } from "../log/chain/sealFacts.ts";
import { readRecordFile } from "../log/recordFile/readRecordFile.ts";
import { fail, ok } from "../core/result.ts";
import { loadProtocol } from "./loadContext.ts";
import { Progress } from "./review/progress.ts";
import type { ReadCaseOptions } from "./review/readCase.ts";
import { whyNoRecord } from "./review/whyNoRecord.ts";
import { REVIEW_HELP, readReviewOptions } from "./review/reviewOptions.ts";
import { runReview, type Sink } from "./review/runReview.ts";
import { printable } from "./review/table.ts";

/**
 * A case of 29,000 entries, more than a day of talk. Broken JSON can take forty times its size in memory, so this, and not the
 * number of records, bounds a review.
 */
const MOST_BYTES = 16 * 1024 * 1024;

function quit(message: string): never {
  process.stderr.write(`${printable(message)}\n`);
  process.exit(2);
}

const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** Nothing piles up where the reader is slower than we are. */
const sinkOf =
  (out: Writable): Sink =>
  async (text) => {
    if (!out.write(text)) await once(out, "drain");
  };

/** A reader of standard output that has seen enough (`| head`) is not a failure; a CSV is still written to its end. */
function printer(csv: Writable | undefined): Sink {
  const print = sinkOf(process.stdout);
  let isRead = true;
  process.stdout.on("error", () => {
    if (csv === undefined) process.exit(0);
    isRead = false;
  });
  return async (text) => {
    // The wait for room ends with the error that was told above.
    if (isRead) await print(text).catch(() => undefined);
  };
}

/** Opened before anything is read, so that a path that cannot be written is known at once. */
function openCsv(path: string): Writable {
  try {
    return createWriteStream(path, { fd: openSync(path, "w") });
  } catch (error) {
    return quit(`--csv ${path}: ${messageOf(error)}`);
  }
}

function checkFolder(path: string): void {
  try {
    if (!statSync(path).isDirectory()) quit(`${path} is no folder`);
  } catch (error) {
    quit(messageOf(error));
  }
}

/** Several times as fast here as the digest that browsers have: ten thousand records hold a million entries. */
const sha256Hex: Sha256Hex = async (text) => ok(createHash("sha256").update(text).digest("hex"));

async function readRecord(text: string): ReturnType<ReadCaseOptions["readRecord"]> {
  const record = await readRecordFile(text, sha256Hex);
  return record.ok ? record : fail(whyNoRecord(record.error));
}

/** Reads a folder of exported records and prints how each case went, and how the service did. */
async function main(): Promise<void> {
  const options = readReviewOptions(process.argv.slice(2));
  if (!options.ok) quit(options.error);
  if (options.value.kind === "help") return void process.stdout.write(REVIEW_HELP);
  const { folder, csv: csvPath, rehearsals, protocol: paths } = options.value;
  checkFolder(folder);
  const loaded = await loadProtocol(paths);
  if (!loaded.ok) quit(loaded.error);
  const csv = csvPath === undefined ? undefined : openCsv(csvPath);
  csv?.on("error", (error) => quit(`--csv ${csvPath}: ${messageOf(error)}`));
  const done = await runReview({
    folder,
    judge: { protocol: loaded.value.protocol, mark: markOf(loaded.value) },
    mostBytes: MOST_BYTES,
    readRecord,
    rehearsals,
    print: printer(csv),
    ...(csv === undefined ? {} : { csv: sinkOf(csv) }),
    progressOf: (total) => new Progress(process.stderr, total, () => performance.now()),
  });
  if (!done.ok) quit(done.error);
  if (csv !== undefined) await finished(csv.end());
}

await main();
