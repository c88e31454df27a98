import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readTalkLine, showCaseTime } from "../../src/cli/talkLine.ts";

describe("readTalkLine", () => {
  it.each([
    ["status", undefined, "status"],
    ["  status  ", undefined, "status"],
    ["[2:05] status", 125_000, "status"],
    ["[2:05]status", 125_000, "status"],
    ["  [0:00]   status", 0, "status"],
    ["[90:00]", 5_400_000, ""],
    ["[1440:00] status", 86_400_000, "status"],
    ["status [2:05]", undefined, "status [2:05]"],
    ["", undefined, ""],
  ])("%j is said at %s", (line, atMs, text) => {
    expect(readTalkLine(line)).toEqual({ ok: true, value: { atMs, text } });
  });

  it.each(["[2:5] x", "[2:60] x", "[:30] x", "[2.05] x", "[-1:00] x", "[2:05 x", "[] x", "[1441:00] x", "[1e3:00] x"])(
    "%j is an error, not speech",
    (line) => {
      const read = readTalkLine(line);
      expect(read.ok).toBe(false);
      if (!read.ok) expect(read.error).toMatch(/^time (not understood|too late): /);
    },
  );

  it("reads back every time that is shown", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 86_400 }), (seconds) => {
        const read = readTalkLine(`[${showCaseTime(seconds * 1000)}] x`);
        expect(read).toEqual({ ok: true, value: { atMs: seconds * 1000, text: "x" } });
      }),
    );
  });
});

describe("showCaseTime", () => {
  it.each([
    [0, "0:00"],
    [999, "0:00"],
    [65_000, "1:05"],
    [3_600_000, "60:00"],
  ])("%d ms is %s", (ms, text) => {
    expect(showCaseTime(ms)).toBe(text);
  });
});
