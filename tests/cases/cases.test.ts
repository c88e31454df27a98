import { basename } from "node:path";
import { describe, expect, it } from "vitest";
import { HANDS_FREE_CASE, LAST_SAID } from "../browser/handsFreeCase.ts";
import { caseScripts, expectedIn, saidIn, talk } from "./script.ts";

describe("whole cases, said to the terminal", () => {
  const scripts = caseScripts();

  it("are seven, and say that they are invented", () => {
    expect(scripts.length).toBe(7);
    for (const { lines } of scripts) expect(lines.slice(0, 3).join(" ")).toContain("Invented.");
  });

  it("hold the one that a voice says to the page without a hand", () => {
    const written = scripts.find(({ path }) => basename(path) === "hands-free.txt");
    const said = written === undefined ? [] : saidIn(written).filter((line) => line !== "affirm");
    expect(said).toEqual([...HANDS_FREE_CASE.map(([line]) => line), LAST_SAID]);
  });

  it.each(scripts.map((script) => [basename(script.path, ".txt"), script] as const))("%s", (_name, script) => {
    expect(talk(saidIn(script))).toEqual(expectedIn(script));
  });
});
