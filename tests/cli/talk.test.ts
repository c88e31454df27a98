import { spawn } from "node:child_process";
import { generateKeyPairSync, sign } from "node:crypto";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, describe, expect, it } from "vitest";
import { defaultProtocol } from "../../src/protocol/defaultProtocol.ts";
import { linesOf, runTalk, type TalkRun } from "./runTalk.ts";

const folder = mkdtempSync(join(tmpdir(), "tragus-talk-"));
afterAll(() => rmSync(folder, { recursive: true }));

function file(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

const ANSWER_KEYS = ["at", "heard", "outcome", "facts", "reply"];
const SPOKE_KEYS = ["at", "spoke", "priority"];

const EXAMPLE = "Example protocol, not approved for patients.";
const heardIn = (run: TalkRun) => linesOf(run).filter((line) => "heard" in line);

describe("talk --json", () => {
  it("prints one object a line in the two fixed shapes, in the order of the case", async () => {
    const run = await runTalk("[0:05] BP 90/50\n[1:10]\n[1:20] sats ninety six\nroom talk here\n", "--json");
    expect([run.status, run.stderr]).toEqual([0, ""]);
    const lines = linesOf(run);
    for (const line of lines) expect(Object.keys(line)).toEqual("spoke" in line ? SPOKE_KEYS : ANSWER_KEYS);
    expect(lines.map((l) => [l.at, l.spoke ?? l.heard, l.outcome ?? l.priority])).toEqual([
      ["0:00", EXAMPLE, "none"],
      ["0:05", "BP 90/50", "recorded"],
      ["0:05", "MAP sixty three, twenty seven under ninety.", "high"],
      ["0:35", "MAP sixty three, twenty seven under ninety.", "high"],
      ["1:20", "sats ninety six", "recorded"],
      ["1:20", "room talk here", "ignored"],
    ]);
    expect(lines.at(-1)).toEqual({ at: "1:20", heard: "room talk here", outcome: "ignored", facts: [], reply: "" });
  });

  it("gives the facts in full, in stored units, with what was said beside them", async () => {
    const [, line] = linesOf(await runTalk("[2:03] end tidal 4.5 kPa\n", "--json"));
    const facts = line?.facts as readonly Record<string, unknown>[];
    expect(facts.length).toBe(1);
    expect(facts[0]).toMatchObject({
      v: 2,
      type: "vital.recorded",
      code: "etco2",
      unit: "mm[Hg]",
      said: { value: 4.5, unit: "kPa" },
      by: "typed",
    });
    // 4.5 kPa in mmHg by the definition of the conventional millimetre of mercury, 133.322 Pa (NIST SP 811).
    expect(facts[0]?.value).toBeCloseTo(4500 / 133.322, 3);
  });

  it("reads lines with any line end, blank ones, blanks around, a byte order mark, and no last line end", async () => {
    const run = await runTalk("\ufeffBP 120/80\r\n\n  \n\t heart rate 90 \t\r\nstatus", "--json");
    expect(run.status).toBe(0);
    expect(heardIn(run).map((l) => [l.heard, l.outcome])).toEqual([
      ["BP 120/80", "recorded"],
      ["heart rate 90", "recorded"],
      ["status", "answered"],
    ]);
  });

  it("prints for nothing only that the protocol is an example", async () => {
    const run = await runTalk("", "--json");
    expect([run.status, run.stderr]).toEqual([0, ""]);
    expect(linesOf(run)).toEqual([{ at: "0:00", spoke: EXAMPLE, priority: "none" }]);
  });

  it("answers ten thousand lines in order", async () => {
    const said = Array.from({ length: 10_000 }, (_, i) => `heart rate ${60 + (i % 40)}`);
    const run = await runTalk(said.join("\n"), "--json");
    expect(run.status).toBe(0);
    expect(heardIn(run).map((l) => l.heard)).toEqual(said);
  }, 120_000);

  it("is not disturbed by a very long line or by bytes that are no text", async () => {
    const junk = Uint8Array.from({ length: 4096 }, (_, i) => (i * 37 + 11) % 256).filter((b) => b !== 0x5b);
    const input = Buffer.concat([
      Buffer.from(`${"sats ninety six maybe ".repeat(20_000)}\n`),
      junk,
      Buffer.from("\nstatus\n"),
    ]);
    const run = await runTalk(input, "--json");
    expect([run.status, run.stderr]).toEqual([0, ""]);
    const lines = heardIn(run);
    expect(lines.slice(0, -1).every((l) => l.outcome === "ignored")).toBe(true);
    expect(lines.at(-1)).toMatchObject({ heard: "status", outcome: "answered", reply: "No pressure recorded yet." });
  });

  it("ends quietly when its reader goes away", async () => {
    const root = fileURLToPath(new URL("../../", import.meta.url));
    const lines = "heart rate 90\n".repeat(5000);
    const status = await new Promise<string>((resolve) => {
      const shell = spawn(
        "bash",
        ["-c", "set -o pipefail; node_modules/.bin/tsx src/cli/talk.ts --json | head -n 1 >/dev/null; echo $?"],
        { cwd: root },
      );
      let out = "";
      for (const stream of [shell.stdout, shell.stderr])
        stream.setEncoding("utf8").on("data", (t: string) => (out += t));
      shell.stdin.on("error", () => undefined);
      shell.on("close", () => resolve(out.trim()));
      shell.stdin.end(lines);
    });
    expect(status).toBe("0");
  });
});

describe("talk for people", () => {
  it("prints the time, what came of it and the words", async () => {
    const run = await runTalk("[0:05] BP 90/50\n[0:06] the weather\n");
    expect(run.stdout.split("\n")).toEqual([
      `0:00  » ${EXAMPLE}`,
      "0:05  recorded: Pressure ninety over fifty.",
      "0:05  [high] MAP sixty three, twenty seven under ninety.",
      "0:06  ignored",
      "",
    ]);
  });
});

describe("another protocol", () => {
  const { targets } = defaultProtocol;
  const populations = targets.populations.map((p) => ({
    ...p,
    mapMmHg: { ...p.mapMmHg, target: { ...p.mapMmHg.target, value: 100 } },
  }));
  const path = file("other.json", JSON.stringify({ ...defaultProtocol, targets: { ...targets, populations } }));
  const { publicKey, privateKey } = generateKeyPairSync("ed25519");
  const signature = join(folder, "other.json.sig");
  writeFileSync(signature, sign(null, readFileSync(path), privateKey));
  const key = file("owner.pem", publicKey.export({ type: "spki", format: "pem" }).toString());

  it("changes the numbers that are spoken", async () => {
    const run = await runTalk("map 95\n", "--json", "--protocol", path);
    expect([run.status, run.stderr]).toEqual([0, ""]);
    expect(linesOf(run).map((l) => l.spoke ?? l.reply)).toEqual([
      EXAMPLE,
      "MAP ninety five.",
      "Measured MAP ninety five, five under one hundred.",
    ]);
    expect(linesOf(await runTalk("map 95\n", "--json")).map((l) => l.spoke ?? l.reply)).toEqual([
      EXAMPLE,
      "Measured MAP ninety five, on target.",
    ]);
  });

  it("may be signed", async () => {
    const run = await runTalk("map 95\n", "--json", "--protocol", path, "--signature", signature, "--key", key);
    expect([run.status, run.stderr]).toEqual([0, ""]);
    expect(heardIn(run)[0]?.reply).toBe("MAP ninety five.");
  });

  it.each([
    [
      "a signature that does not hold",
      ["--protocol", file("x.json", "{}"), "--signature", signature, "--key", key],
      "signature is broken",
    ],
    ["a signature without a key", ["--protocol", path, "--signature", signature], "no key is trusted"],
    ["a key without a file", ["--key", key], "belong to a --protocol file"],
    ["a signature that is not there", ["--protocol", path, "--signature", join(folder, "none.sig")], "ENOENT"],
  ])("is refused with %s", async (_what, args, said) => {
    const run = await runTalk("status\n", "--json", ...args);
    expect([run.status, run.stdout]).toEqual([2, ""]);
    expect(run.stderr).toMatch(/^\S[^\n]*\n$/);
    expect(run.stderr).toContain(said);
  });
});

describe("bad input", () => {
  const bad = (change: object): string => JSON.stringify({ ...defaultProtocol, ...change });
  const rows: readonly (readonly [string, string, readonly string[], string])[] = [
    ["a time that is none", "[5] status\n", [], ""],
    ["a time past the end of any case", "[999999999:00] status\n", [], ""],
    ["a time that runs backwards", "[1:00] sats 96\n[0:59] status\n", [], "sats 96"],
    ["a long line in place of a time", `[${"x".repeat(100_000)}\n`, [], ""],
    ["an unknown option", "status\n", ["--loud"], ""],
    ["an argument over two lines", "status\n", ["two\nlines"], ""],
    ["a protocol file that is not there", "status\n", ["--protocol", join(folder, "none.json")], ""],
    ["a protocol that is no JSON", "status\n", ["--protocol", file("text.json", "{\n  oops\n}\n")], ""],
    ["a protocol without targets", "status\n", ["--protocol", file("targets.json", bad({ targets: {} }))], ""],
  ];
  it.each(rows)(
    "%s: status 2, one line on standard error, nothing more on standard output",
    async (_name, input, args, heard) => {
      const run = await runTalk(input, "--json", ...args);
      expect(run.status).toBe(2);
      expect(run.stderr).toMatch(/^\S[^\n\r]{0,400}\n$/);
      expect(run.stderr).not.toMatch(/\bat .*\.ts:|node:internal/);
      expect(
        heardIn(run)
          .map((l) => l.heard)
          .join(),
      ).toBe(heard);
    },
  );
});
