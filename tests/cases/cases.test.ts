import { basename } from "node:path";
import { describe, expect, it } from "vitest";
import { caseScripts, expectedIn, saidIn, talk } from "./script.ts";

describe("whole cases, said to the terminal", () => {
  const scripts = caseScripts();

  it("are six, and say that they are invented", () => {
    expect(scripts.length).toBe(6);
    for (const { lines } of scripts) expect(lines[0]).toMatch(/^# .*Invented\.$|^# /u);
    for (const { lines } of scripts) expect(lines.slice(0, 3).join(" ")).toContain("Invented.");
  });

  it.each(scripts.map((script) => [basename(script.path, ".txt"), script] as const))("%s", (_name, script) => {
    expect(talk(saidIn(script))).toEqual(expectedIn(script));
  });
});
