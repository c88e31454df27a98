import { describe, expect, it } from "vitest";
import { Progress } from "../../../src/cli/review/progress.ts";

function shown(isTTY: boolean, total: number, stepMs: number, clearAfter?: number): readonly string[] {
  const written: string[] = [];
  let nowMs = 0;
  const progress = new Progress({ isTTY, write: (text) => written.push(text) }, total, () => nowMs);
  for (let i = 0; i < total; i++) {
    nowMs += stepMs;
    progress.step();
    if (i === clearAfter) progress.clear();
  }
  return written;
}

describe("progress", () => {
  it("is a bar in a terminal, drawn over itself", () => {
    expect(shown(true, 3, 200)).toEqual([
      "\r\u001b[K[##########....................] 1 of 3 files read",
      "\r\u001b[K[####################..........] 2 of 3 files read",
      "\r\u001b[K[##############################] 3 of 3 files read",
    ]);
  });

  it("is drawn ten times a second at most, and taken away once", () => {
    expect(shown(true, 100, 10, 10).length).toBe(11);
    expect(shown(true, 100, 10, 10)[1]).toBe("\r\u001b[K[###...........................] 11 of 100 files read");
  });

  it("is a line a thousand files where there is no terminal", () => {
    expect(shown(false, 2500, 1, 3)).toEqual(["1000 of 2500 files read\n", "2000 of 2500 files read\n"]);
  });
});
